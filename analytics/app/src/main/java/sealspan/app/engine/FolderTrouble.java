package sealspan.app.engine;

import java.io.IOException;
import java.util.Optional;
import sealspan.app.Problem;

/** Says in words what a data folder lacks. */
final class FolderTrouble {
  private FolderTrouble() {}

  /** What is wrong with the disk of the folder; empty where something else went wrong. */
  static Optional<Problem> of(DataFolder folder, Throwable thrown) {
    for (Throwable cause = thrown; cause != null; cause = cause.getCause()) {
      String text = cause instanceof IOException ? cause.toString() : "";
      if (text.contains("No space left on device")) {
        return Optional.of(
            new Problem(
                "The disk that holds "
                    + folder.root()
                    + " is full. Nothing that was acknowledged is lost. Free some space and start"
                    + " again.",
                thrown));
      }
      if (text.contains("Read-only file system")) {
        return Optional.of(
            new Problem(
                "The disk that holds "
                    + folder.root()
                    + " may only be read. Nothing that was acknowledged is lost. Make it writable,"
                    + " or choose another folder with --data.",
                thrown));
      }
    }
    return Optional.empty();
  }
}
