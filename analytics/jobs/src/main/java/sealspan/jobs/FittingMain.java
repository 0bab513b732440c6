package sealspan.jobs;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.Set;
import org.apache.flink.streaming.api.environment.StreamExecutionEnvironment;
import sealspan.study.FitCut;

/** The bounded job as a program for a Flink cluster of the user's: one fit at a cut. */
public final class FittingMain {
  private static final Set<String> ARGUMENTS = Set.of("cut", "newest-recorded-at", "revision");

  private FittingMain() {}

  /**
   * Fits and waits for it.
   *
   * @param arguments beside those of every job: {@code --cut 0:12,1:7} offset after the last event
   *     of each partition that is in, {@code --newest-recorded-at TIME} of the newest of them, ISO
   *     8601 in UTC, {@code --revision N} that grows with every fit
   */
  public static void main(String[] arguments) throws Exception {
    JobArguments given = new JobArguments(arguments, ARGUMENTS);
    JobSettings job = given.settings();
    String offsets = given.required("cut");
    FitCut cut =
        new FitCut(
            offsets,
            offsets,
            time(given.required("newest-recorded-at")),
            given.number("revision", 1));
    if (LogConnections.offsets(cut).isEmpty()) {
      throw new JobException("The cut " + offsets + " holds no event.");
    }
    TopicSetup.make(job);
    StreamExecutionEnvironment env =
        StreamExecutionEnvironment.getExecutionEnvironment(FlinkConfiguration.fitting(job));
    FittingGraph.build(env, job, cut);
    env.execute("sealspan fitting " + job.generation());
  }

  private static Instant time(String text) {
    try {
      return Instant.parse(text);
    } catch (DateTimeException e) {
      throw new JobException(
          "--newest-recorded-at is a time such as 2026-01-31T08:00:00Z, not '" + text + "'.", e);
    }
  }
}
