package sealspan.ingest.source;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import sealspan.event.AssemblyEvent;
import sealspan.event.LoggedEvent;

/** Says how two versions of an event differ, and what to do. */
final class ConflictWords {
  private ConflictWords() {}

  /** The words for an event that holds and another of the same id that comes after it. */
  static String of(LoggedEvent holds, LoggedEvent comes) {
    String since = holds.recordedAt() == null ? "" : ", recorded " + holds.recordedAt();
    return "The log holds another version of this "
        + words(comes.event().getClass().getSimpleName())
        + " (id "
        + comes.id()
        + "): version "
        + digest(holds.event())
        + since
        + " holds, version "
        + digest(comes.event())
        + " of this row differs in "
        + differences(holds.event(), comes.event())
        + ". If the row is right, enter it as a correction: a row with corrects_event_id "
        + comes.id()
        + ", corrected_on, corrected_by and corrected_why. If it is another event, give it a number"
        + " or id of its own.";
  }

  /** The first 12 hexadecimal digits of the SHA-256 of the event's content. */
  private static String digest(AssemblyEvent event) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256")
              .digest(event.toString().getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(hash, 0, 6);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java platform has SHA-256.", e);
    }
  }

  private static String differences(AssemblyEvent a, AssemblyEvent b) {
    if (a.getClass() != b.getClass()) {
      return "its kind";
    }
    List<String> different = new ArrayList<>();
    for (RecordComponent component : a.getClass().getRecordComponents()) {
      try {
        Object one = component.getAccessor().invoke(a);
        Object other = component.getAccessor().invoke(b);
        if (!Objects.equals(one, other)) {
          different.add(words(component.getName()));
        }
      } catch (IllegalAccessException | InvocationTargetException e) {
        throw new IllegalStateException("The fields of an event can be read.", e);
      }
    }
    return different.isEmpty() ? "nothing that is shown" : String.join(", ", different);
  }

  private static String words(String name) {
    StringBuilder words = new StringBuilder();
    for (char c : name.toCharArray()) {
      if (Character.isUpperCase(c) && words.length() > 0) {
        words.append(' ');
      }
      words.append(Character.toLowerCase(c));
    }
    return words.toString();
  }
}
