package sealspan.app.engine;

import java.util.ArrayList;
import java.util.List;
import sealspan.ingest.log.Cut;

/**
 * The two forms of a cut of the log of events: the log's own, and the text {@code 0:12,1:7} in
 * which jobs and answers tell it.
 */
public final class Cuts {
  private Cuts() {}

  /** The text; partitions without events are left out, so an empty log gives an empty text. */
  public static String text(Cut cut) {
    List<String> parts = new ArrayList<>();
    for (int partition = 0; partition < cut.offsets().size(); partition++) {
      if (cut.offset(partition) > 0) {
        parts.add(partition + ":" + cut.offset(partition));
      }
    }
    return String.join(",", parts);
  }

  /** Reads the text back. */
  public static Cut parse(String text) {
    List<Long> offsets = new ArrayList<>();
    for (String part : text.isEmpty() ? new String[0] : text.split(",")) {
      int colon = part.indexOf(':');
      int partition = Integer.parseInt(part.substring(0, colon));
      while (offsets.size() <= partition) {
        offsets.add(0L);
      }
      offsets.set(partition, Long.parseLong(part.substring(colon + 1)));
    }
    return new Cut(offsets);
  }

  /** Number of events before the cut. */
  public static long events(Cut cut) {
    return cut.offsets().stream().mapToLong(Long::longValue).sum();
  }
}
