package sealspan.jobs;

import java.io.IOException;
import java.nio.file.Files;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import org.apache.flink.api.common.JobID;
import org.apache.flink.api.common.JobStatus;
import org.apache.flink.configuration.Configuration;
import org.apache.flink.runtime.jobmaster.JobResult;
import org.apache.flink.runtime.minicluster.MiniCluster;
import org.apache.flink.runtime.minicluster.MiniClusterConfiguration;
import org.apache.flink.streaming.api.environment.StreamExecutionEnvironment;
import sealspan.study.FitCut;

/**
 * A Flink cluster inside this process, which runs the continuous job and, beside it, fits. It
 * listens to this machine only.
 */
public final class FlinkRuntime implements AutoCloseable {
  /** The job's own timer is not used: the pacer triggers checkpoints. */
  private static final Duration NEVER = Duration.ofDays(3650);

  private static final Duration POLL = Duration.ofMillis(50);

  /** After so many without one it is asked for: one that a job declined Flink does not repeat. */
  private static final int LOOKS_AT_FIRST_CHECKPOINT = 40;

  /** Failures before the first checkpoint after which the state resumed from is given up. */
  private static final int RESUME_ATTEMPTS = 2;

  /** Failures before the first checkpoint after which a job that began anew is given up. */
  private static final int BEGIN_ATTEMPTS = 3;

  private final MiniCluster cluster;
  private volatile JobID histories;
  private CheckpointPacer pacer;

  private FlinkRuntime(MiniCluster cluster) {
    this.cluster = cluster;
  }

  /**
   * Starts the cluster, without a job.
   *
   * @throws JobException when it cannot start
   */
  public static FlinkRuntime start(RuntimeSettings settings) {
    try {
      Files.createDirectories(settings.workFolder());
    } catch (IOException e) {
      throw new JobException(
          "The folder %s cannot be made or written. Check its rights."
              .formatted(settings.workFolder()),
          e);
    }
    MiniCluster cluster =
        new MiniCluster(
            new MiniClusterConfiguration.Builder()
                .setConfiguration(FlinkConfiguration.cluster(settings.workFolder()))
                .setNumTaskManagers(1)
                .setNumSlotsPerTaskManager(2 * settings.parallelism())
                .build());
    try {
      cluster.start();
    } catch (Exception e) {
      throw new JobException("Flink does not start: " + JobTrouble.words(e), e);
    }
    return new FlinkRuntime(cluster);
  }

  /**
   * Starts the continuous job and returns when it has made its first checkpoint. It resumes from
   * the newest checkpoint in the folder that this version of the program made for this generation
   * and these criteria; if there is none, or it cannot be read, from the first event.
   *
   * @throws JobException when the log cannot be used or the job fails at once
   */
  public synchronized void startHistories(JobSettings job, CheckpointSettings checkpoints) {
    startHistories(job, checkpoints, 0);
  }

  /**
   * As {@link #startHistories(JobSettings, CheckpointSettings)}, for a log that will take a while
   * to catch up with: every checkpoint sends all rows that have changed, so the next one, the
   * second, comes once the log was read.
   *
   * @param events number of events that are to be caught up with
   */
  public synchronized void startHistories(
      JobSettings job, CheckpointSettings checkpoints, long events) {
    stopHistories();
    TopicSetup.make(job);
    CheckpointFolder folder = new CheckpointFolder(checkpoints, job);
    folder.deleteForeign();
    Optional<String> resumeFrom = folder.newest();
    boolean begun = begin(job, checkpoints, folder, resumeFrom);
    if (!begun && resumeFrom.isPresent()) {
      stopHistories();
      folder.deleteAll();
      begun = begin(job, checkpoints, folder, Optional.empty());
    }
    if (!begun) {
      String why = JobTrouble.last(cluster, histories);
      stopHistories();
      throw new JobException("The histories cannot be kept up to date: " + why);
    }
    pacer = CheckpointPacer.start(cluster, histories, new LogEnd(job), checkpoints.pause(), events);
  }

  private boolean begin(
      JobSettings job,
      CheckpointSettings checkpoints,
      CheckpointFolder folder,
      Optional<String> resumeFrom) {
    Configuration c =
        FlinkConfiguration.histories(job, checkpoints.stateKept(), folder.uri(), NEVER, resumeFrom);
    StreamExecutionEnvironment env = new StreamExecutionEnvironment(c);
    HistoriesGraph.build(env, job);
    histories = submit(env);
    int attempts = resumeFrom.isPresent() ? RESUME_ATTEMPTS : BEGIN_ATTEMPTS;
    for (int looks = 1;
        !status(histories).isGloballyTerminalState()
            && JobTrouble.failures(cluster, histories) < attempts;
        looks++) {
      if (CheckpointPacer.hasMadeOne(cluster, histories)) {
        return true;
      }
      if (looks % LOOKS_AT_FIRST_CHECKPOINT == 0) {
        CheckpointPacer.trigger(cluster, histories);
      }
      pause();
    }
    return false;
  }

  /** Stops the continuous job, if it runs; its last checkpoint stays. */
  public synchronized void stopHistories() {
    if (pacer != null) {
      pacer.close();
      pacer = null;
    }
    if (histories != null) {
      if (!status(histories).isGloballyTerminalState()) {
        cluster.cancelJob(histories).join();
        cluster.requestJobResult(histories).join();
      }
      histories = null;
    }
  }

  /**
   * Fits at a cut, and waits for it. The fits are then on the topics of the generation. A cut
   * without events gives none.
   *
   * @throws JobException when it fails; the message says why
   */
  public void fit(JobSettings job, FitCut cut) {
    if (LogConnections.offsets(cut).isEmpty()) {
      return;
    }
    TopicSetup.make(job);
    StreamExecutionEnvironment env =
        new StreamExecutionEnvironment(FlinkConfiguration.fitting(job));
    FittingGraph.build(env, job, cut);
    JobResult result = await(cluster.requestJobResult(submit(env)));
    result
        .getSerializedThrowable()
        .ifPresent(
            e -> {
              throw new JobException("The fit failed: " + JobTrouble.words(e), e);
            });
  }

  /** How far the continuous job has come; empty when none runs, or it does not say. */
  public Optional<JobProgress> progress() {
    JobID job = histories;
    return job == null ? Optional.empty() : JobProgress.of(cluster, job);
  }

  /** Whether the continuous job was started and has given up. */
  public synchronized boolean hasStopped() {
    return histories != null && status(histories).isGloballyTerminalState();
  }

  /**
   * Whether the log has results under the name of a generation, be it another data folder's.
   *
   * @throws JobException when the log does not answer or refuses
   */
  public static boolean hasResults(JobSettings job) {
    return TopicSetup.isThere(job);
  }

  /**
   * Deletes what the jobs of a generation that is out of use have left in the log.
   *
   * @throws JobException when the log does not answer or refuses
   */
  public static void forget(JobSettings job) {
    TopicSetup.delete(job);
  }

  /**
   * What is wrong with the continuous job, in words; empty when all is well or none was started.
   */
  public synchronized Optional<String> trouble() {
    return histories == null ? Optional.empty() : JobTrouble.of(cluster, histories);
  }

  /** Stops the jobs and the cluster. */
  @Override
  public void close() {
    stopHistories();
    try {
      cluster.close();
    } catch (Exception e) {
      throw new JobException("Flink does not stop cleanly: " + JobTrouble.words(e), e);
    }
  }

  private JobID submit(StreamExecutionEnvironment env) {
    return await(cluster.submitJob(env.getStreamGraph().getJobGraph())).getJobID();
  }

  private JobStatus status(JobID job) {
    return await(cluster.getJobStatus(job));
  }

  private static <T> T await(CompletableFuture<T> future) {
    try {
      return future.get();
    } catch (ExecutionException e) {
      throw new JobException("Flink refuses a job: " + JobTrouble.words(e), e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new JobException("Stopped while a job was running.", e);
    }
  }

  private static void pause() {
    try {
      TimeUnit.MILLISECONDS.sleep(POLL.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new JobException("Stopped while a job was starting.", e);
    }
  }
}
