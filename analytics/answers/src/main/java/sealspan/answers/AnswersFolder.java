package sealspan.answers;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/**
 * Where the answers lie in a data folder. Everything in it can be made again from the log.
 *
 * @param dataFolder the data folder
 */
public record AnswersFolder(Path dataFolder) {
  /** The folder of the answers. */
  public Path folder() {
    return dataFolder.resolve("answers");
  }

  /** The file that names the newest snapshot. */
  public Path currentFile() {
    return folder().resolve("current");
  }

  /** The snapshot of a number, from 1. */
  public Path snapshot(long number) {
    return folder().resolve("snapshot-%06d.duckdb".formatted(number));
  }

  /** Number of a snapshot file; -1 where the name is not that of a snapshot. */
  public static long numberOf(Path file) {
    String name = file.getFileName().toString();
    return name.matches("snapshot-\\d{6,18}\\.duckdb")
        ? Long.parseLong(name.substring("snapshot-".length(), name.indexOf('.')))
        : -1;
  }

  /** The writer's own file of a generation. */
  public Path privateFile(String generation) {
    return folder().resolve("model-" + generation + ".duckdb");
  }

  /** Folder of the layers of a generation. */
  public Path layers(String generation) {
    return folder().resolve("layers-" + generation);
  }

  /** Folder of the event segments of a generation. */
  public Path segments(String generation) {
    return folder().resolve("events-" + generation);
  }

  /**
   * The newest snapshot.
   *
   * @throws AnswersException where nothing was published yet, or the folder cannot be read
   */
  public Path newestSnapshot() {
    try {
      return folder().resolve(Files.readString(currentFile()).strip());
    } catch (NoSuchFileException e) {
      throw new AnswersException(
          "There are no answers in "
              + dataFolder
              + " yet. Import events or start the engine on this folder first, or name another"
              + " folder.",
          e);
    } catch (IOException e) {
      throw new AnswersException(
          "The folder " + folder() + " cannot be read: " + e.getMessage() + ".", e);
    }
  }
}
