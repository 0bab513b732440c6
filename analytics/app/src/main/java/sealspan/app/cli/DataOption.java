package sealspan.app.cli;

import java.nio.file.Path;
import picocli.CommandLine.Option;
import sealspan.app.engine.DataFolder;

/** The option that every command with a data folder has. */
final class DataOption {
  @Option(
      names = "--data",
      paramLabel = "DIR",
      description = "folder of the log and the answers; without it $HOME/.sealspan")
  private Path dir;

  DataFolder folder() {
    return dir == null ? DataFolder.usual() : new DataFolder(dir);
  }

  boolean isGiven() {
    return dir != null;
  }

  DataFolder folderOr(DataFolder other) {
    return dir == null ? other : new DataFolder(dir);
  }

  /** How the option must be typed in commands that we suggest; empty for the usual folder. */
  static String typed(DataFolder folder) {
    return folder.equals(DataFolder.usual()) ? "" : " --data " + folder.root();
  }
}
