package sealspan.jobs;

import java.nio.file.Path;
import java.util.Objects;

/**
 * The cluster inside this process.
 *
 * @param workFolder for files that need not outlive the process
 * @param parallelism the largest parallelism of a job; both jobs run side by side
 */
public record RuntimeSettings(Path workFolder, int parallelism) {
  public RuntimeSettings {
    Objects.requireNonNull(workFolder, "workFolder");
    if (parallelism < 1) {
      throw new IllegalArgumentException("The parallelism is 1 or more, not " + parallelism);
    }
  }
}
