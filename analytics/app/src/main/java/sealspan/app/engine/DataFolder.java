package sealspan.app.engine;

import java.nio.file.Path;

/**
 * The one folder that holds everything of one record: the log, the answers, and what runs.
 *
 * @param root the folder; absolute
 */
public record DataFolder(Path root) {
  public DataFolder {
    root = root.toAbsolutePath().normalize();
  }

  /** The folder used where none is named: {@code $HOME/.sealspan}. */
  public static DataFolder usual() {
    return new DataFolder(home().resolve(".sealspan"));
  }

  /** A folder apart for the demonstration, so that it never mixes with a real record. */
  public static DataFolder ofDemo() {
    return new DataFolder(home().resolve(".sealspan-demo"));
  }

  /** Where the shell says that home is; Java alone would ask the list of users. */
  private static Path home() {
    String home = System.getenv("HOME");
    return Path.of(home == null || home.isBlank() ? System.getProperty("user.home") : home);
  }

  /** What the engine writes down about itself, and the letters it is sent. */
  public Path engine() {
    return root.resolve("engine");
  }

  /** Program logs; not the log of events. */
  public Path logs() {
    return root.resolve("logs");
  }

  /** Checkpoints of the continuous job, one folder per generation; disposable. */
  public Path checkpoints(int generation) {
    return root.resolve("checkpoints").resolve("generation-" + generation);
  }

  /** The index of ids of the log; disposable. */
  public Path index() {
    return root.resolve("index");
  }

  /** Scratch files of the jobs; disposable. */
  public Path scratch() {
    return root.resolve("scratch");
  }

  /** The limits that the user put in force; the shipped ones hold where it is missing. */
  public Path criteria() {
    return root.resolve("criteria.csv");
  }

  /** Address and settings of the user's own Kafka; a local broker is run where it is missing. */
  public Path kafkaSettings() {
    return root.resolve("kafka.properties");
  }

  /** There while a restore into this folder is not done; names the export. */
  Path restoring() {
    return root.resolve("restoring");
  }
}
