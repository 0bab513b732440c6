package sealspan.jobs;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletionException;
import org.apache.flink.api.common.JobID;
import org.apache.flink.runtime.minicluster.MiniCluster;
import org.apache.flink.util.FlinkException;
import org.apache.flink.util.OptionalFailure;
import org.apache.flink.util.SerializedValue;

/**
 * How far the continuous job has come since it last began or resumed, as it was a second or so ago.
 *
 * @param eventsRead events read from the log
 * @param historiesChanged how often a history had something new, be it only a new fit
 * @param historiesSent how often the rows of one that had were sent on
 */
public record JobProgress(long eventsRead, long historiesChanged, long historiesSent) {
  static final String READ = "events-read";
  static final String CHANGED = "histories-changed";
  static final String SENT = "histories-sent";

  /** Empty where the job is no more, or the cluster ends or does not answer in time. */
  static Optional<JobProgress> of(MiniCluster cluster, JobID job) {
    Map<String, SerializedValue<OptionalFailure<Object>>> counts;
    try {
      counts =
          cluster
              .getExecutionGraphInfo(job)
              .join()
              .getArchivedExecutionGraph()
              .getAccumulatorsSerialized();
    } catch (CompletionException | IllegalStateException e) {
      return Optional.empty();
    }
    return Optional.of(
        new JobProgress(count(counts, READ), count(counts, CHANGED), count(counts, SENT)));
  }

  private static long count(
      Map<String, SerializedValue<OptionalFailure<Object>>> counts, String name) {
    SerializedValue<OptionalFailure<Object>> count = counts.get(name);
    if (count == null) {
      return 0; // None of the tasks that count have told yet.
    }
    try {
      return (Long) count.deserializeValue(JobProgress.class.getClassLoader()).get();
    } catch (IOException | ClassNotFoundException | FlinkException e) {
      throw new JobException("Flink's own count cannot be read: " + e.getMessage(), e);
    }
  }
}
