package sealspan.app.engine;

import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.util.Optional;
import sealspan.app.Problem;

/** Says in words what a data folder lacks. */
public final class FolderTrouble {
  /** With less room than this on its disk, an engine can neither go on nor say so. */
  private static final long LEAST_ROOM_BYTES = 1 << 20;

  private FolderTrouble() {}

  /** What is wrong with the disk of the folder; empty where something else went wrong. */
  static Optional<Problem> of(DataFolder folder, Throwable thrown) {
    for (Throwable cause = thrown; cause != null; cause = cause.getCause()) {
      String text = cause instanceof IOException ? cause.toString() : "";
      if (text.contains("No space left on device")) {
        return Optional.of(new Problem(full(folder), thrown));
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

  /** What to say when the disk of the folder has no room left; empty while it has. */
  public static Optional<String> ofRoom(DataFolder folder) {
    try {
      FileStore disk = Files.getFileStore(folder.root());
      boolean tells = disk.getTotalSpace() > 0; // some that are not disks say nothing
      return tells && disk.getUsableSpace() < LEAST_ROOM_BYTES
          ? Optional.of(full(folder))
          : Optional.empty();
    } catch (IOException cannotBeTold) {
      return Optional.empty();
    }
  }

  private static String full(DataFolder folder) {
    return "The disk that holds "
        + folder.root()
        + " is full. Nothing that was acknowledged is lost. Free some space and start again.";
  }
}
