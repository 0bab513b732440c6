package sealspan.jobs;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Objects;

/**
 * How the continuous job secures its state.
 *
 * @param folder URI of a folder that all machines of the cluster reach; the job owns what is in it
 * @param pause time between two checkpoints; results are complete up to the last one
 * @param stateKept where the state lives between them
 */
public record CheckpointSettings(String folder, Duration pause, StateKept stateKept) {
  public CheckpointSettings {
    Objects.requireNonNull(folder, "folder");
    Objects.requireNonNull(stateKept, "stateKept");
    if (pause.toMillis() < 100) {
      throw new IllegalArgumentException(
          "The pause between two checkpoints is at least a tenth of a second, not " + pause);
    }
  }

  /** A checkpoint a second into a folder of this machine. */
  public static CheckpointSettings everySecond(Path folder, StateKept stateKept) {
    return new CheckpointSettings(
        folder.toAbsolutePath().toUri().toString(), Duration.ofSeconds(1), stateKept);
  }
}
