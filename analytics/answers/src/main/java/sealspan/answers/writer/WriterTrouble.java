package sealspan.answers.writer;

import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Set;
import org.apache.kafka.common.KafkaException;
import sealspan.answers.AnswersException;

/** What went wrong in the writer, in words that say what to do. */
final class WriterTrouble {
  private static final String NOTHING_LOST =
      " Nothing is lost: the log has everything, and the writer tries again by itself.";

  private WriterTrouble() {}

  static String explain(Throwable failure, WriterSettings settings) {
    Path folder = settings.dataFolder().resolve("answers");
    String said = messages(failure);
    if (has(said, "No space left", "disk full", "Disk quota exceeded", "not enough space")) {
      return "The disk of " + folder + " is full: free some space." + NOTHING_LOST;
    }
    if (has(said, "Read-only file system", "Permission denied", "AccessDeniedException")) {
      return "The folder "
          + folder
          + " cannot be written: make it writable for this user."
          + NOTHING_LOST;
    }
    if (failure instanceof AnswersException) {
      return failure.getMessage() + NOTHING_LOST;
    }
    if (failure instanceof KafkaException) {
      return "The log at "
          + settings.bootstrapServers()
          + " does not answer as it should ("
          + said
          + ")."
          + NOTHING_LOST;
    }
    return "The answers in "
        + folder
        + " cannot be brought up to date: "
        + said
        + "."
        + NOTHING_LOST
        + " If this stays, stop the engine and delete that folder: it is made anew from the log.";
  }

  private static boolean has(String text, String... signs) {
    for (String sign : signs) {
      if (text.contains(sign)) {
        return true;
      }
    }
    return false;
  }

  private static String messages(Throwable failure) {
    Set<String> messages = new LinkedHashSet<>();
    for (Throwable t = failure; t != null; t = t.getCause()) {
      String said = t.getMessage() == null ? "" : ": " + t.getMessage().strip();
      messages.add(t.getClass().getSimpleName() + said.lines().findFirst().orElse(""));
    }
    return String.join("; ", messages);
  }
}
