package sealspan.jobs;

import java.util.Optional;
import java.util.regex.Pattern;
import org.apache.flink.api.common.JobID;
import org.apache.flink.api.common.JobStatus;
import org.apache.flink.runtime.minicluster.MiniCluster;
import org.apache.flink.runtime.scheduler.ExecutionGraphInfo;
import org.apache.flink.runtime.scheduler.exceptionhistory.RootExceptionHistoryEntry;
import org.apache.flink.util.SerializedThrowable;

/** What has gone wrong with a job, in words. */
final class JobTrouble {
  private JobTrouble() {}

  /** Why a job does not run; empty while it does. */
  static Optional<String> of(MiniCluster cluster, JobID job) {
    ExecutionGraphInfo info = cluster.getExecutionGraphInfo(job).join();
    JobStatus status = info.getArchivedExecutionGraph().getState();
    if (status == JobStatus.RUNNING || status == JobStatus.CREATED) {
      return Optional.empty();
    }
    String last = last(cluster, job);
    return Optional.of(
        status.isGloballyTerminalState()
            ? "The job has stopped: " + last
            : "The job is starting again after a failure: " + last);
  }

  /** The reason of the last failure. */
  static String last(MiniCluster cluster, JobID job) {
    String last = "no reason is known.";
    for (RootExceptionHistoryEntry entry :
        cluster.getExecutionGraphInfo(job).join().getExceptionHistory()) {
      last = words(entry.getException());
    }
    return last;
  }

  /** How often a job has failed. */
  static int failures(MiniCluster cluster, JobID job) {
    int failures = 0;
    for (RootExceptionHistoryEntry entry :
        cluster.getExecutionGraphInfo(job).join().getExceptionHistory()) {
      failures += entry == null ? 0 : 1;
    }
    return failures;
  }

  /** What our own code said, else the innermost reason. */
  static String words(Throwable failure) {
    String last = failure.getClass().getSimpleName();
    for (Throwable t = failure; t != null; t = t.getCause()) {
      String type = t.getClass().getName();
      String message = t.getMessage();
      if (t instanceof SerializedThrowable serialized) {
        type = serialized.getOriginalErrorClassName();
        // Flink puts the class before the message.
        message =
            message == null ? null : message.replaceFirst("^" + Pattern.quote(type) + ": ", "");
      }
      if (message != null && !message.isBlank()) {
        last = message.strip();
        if (type.equals(JobException.class.getName())) {
          return last;
        }
      }
    }
    return last;
  }
}
