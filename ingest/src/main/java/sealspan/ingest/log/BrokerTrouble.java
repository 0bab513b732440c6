package sealspan.ingest.log;

import java.nio.file.Path;
import java.util.List;

/** Says in words why a broker did not start or went away, from what it wrote. */
final class BrokerTrouble {
  private BrokerTrouble() {}

  /**
   * @param lines last lines of the broker's console and log
   * @param brokerFolder where the whole log can be read
   */
  static String explain(List<String> lines, Path dataFolder, Path brokerFolder) {
    String reason = reason(String.join("\n", lines), dataFolder);
    String end = " The whole log of the broker is in " + brokerFolder + ".";
    if (lines.isEmpty()) {
      return reason + " It wrote nothing." + end;
    }
    return reason + " Its last lines:\n  " + String.join("\n  ", lines) + "\n" + end.strip();
  }

  private static String reason(String text, Path dataFolder) {
    if (text.contains("No space left on device") || text.contains("not enough space on the disk")) {
      return "The disk that holds " + dataFolder + " is full. Free some space and start again.";
    }
    if (text.contains("Read-only file system") || text.contains("AccessDeniedException")) {
      return "The broker may not write to " + dataFolder + ". Allow it, or choose another folder.";
    }
    if (text.contains("Failed to acquire lock on file")) {
      return "Another broker already uses "
          + dataFolder
          + ". Stop the program that started it, then start again.";
    }
    if (text.contains("Address already in use")) {
      return "The port of the broker was taken by another program. Start again.";
    }
    if (text.contains("ClassNotFoundException") || text.contains("NoClassDefFoundError")) {
      return "A jar of the broker is missing or damaged. Build the project again (mvn package).";
    }
    if (text.contains("OutOfMemoryError") || text.contains("Could not reserve enough space")) {
      return "The broker ran out of memory. Close other programs or give it a larger heap.";
    }
    return "The broker stopped by itself.";
  }
}
