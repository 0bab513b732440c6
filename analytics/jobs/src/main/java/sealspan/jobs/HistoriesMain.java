package sealspan.jobs;

import java.time.Duration;
import java.util.Locale;
import java.util.Set;
import org.apache.flink.configuration.Configuration;
import org.apache.flink.streaming.api.environment.StreamExecutionEnvironment;

/**
 * The continuous job as a program for a Flink cluster of the user's. It resumes from the newest
 * checkpoint of its generation, else from the first event.
 */
public final class HistoriesMain {
  private static final Set<String> ARGUMENTS =
      Set.of("checkpoints", "checkpoint-every-seconds", "state");

  private HistoriesMain() {}

  /**
   * Submits the job.
   *
   * @param arguments beside those of every job: {@code --checkpoints URI} of a folder that every
   *     machine of the cluster reaches, {@code --checkpoint-every-seconds N} (1), {@code --state
   *     heap|rocksdb} (rocksdb)
   */
  public static void main(String[] arguments) throws Exception {
    JobArguments given = new JobArguments(arguments, ARGUMENTS);
    JobSettings job = given.settings();
    CheckpointSettings checkpoints =
        new CheckpointSettings(
            given.required("checkpoints"),
            Duration.ofSeconds(given.number("checkpoint-every-seconds", 1)),
            state(given.or("state", "rocksdb")));
    TopicSetup.make(job);
    CheckpointFolder folder = new CheckpointFolder(checkpoints, job);
    Configuration configuration =
        FlinkConfiguration.histories(
            job, checkpoints.stateKept(), folder.uri(), checkpoints.pause(), folder.newest());
    StreamExecutionEnvironment env =
        StreamExecutionEnvironment.getExecutionEnvironment(configuration);
    HistoriesGraph.build(env, job);
    env.executeAsync("sealspan histories " + job.generation());
  }

  private static StateKept state(String name) {
    for (StateKept kept : StateKept.values()) {
      if (kept.name().equals(name.toUpperCase(Locale.ROOT))) {
        return kept;
      }
    }
    throw new JobException("--state is heap or rocksdb, not '" + name + "'.");
  }
}
