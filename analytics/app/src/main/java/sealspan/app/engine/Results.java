package sealspan.app.engine;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import sealspan.answers.writer.ReadModelWriter;
import sealspan.answers.writer.WriterSettings;
import sealspan.app.Problem;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.jobs.CheckpointSettings;
import sealspan.jobs.FlinkRuntime;
import sealspan.jobs.JobSettings;
import sealspan.study.FitCut;

/**
 * What keeps one generation of results up to date: the jobs, and while it is the one in use, the
 * writer of the answers.
 */
final class Results implements AutoCloseable {
  /** From the begin of one snapshot to that of the next. */
  private static final Duration SHORTEST_PAUSE = Duration.ofMillis(300);

  private final DataFolder folder;
  private final Generation generation;
  private final JobSettings job;
  private final FlinkRuntime flink;
  private volatile ReadModelWriter writer;
  private Thread writing;
  private CountDownLatch firstSnapshot;

  /**
   * Results that are not kept up yet.
   *
   * @param flink a cluster of their own; closed with them
   */
  Results(
      DataFolder folder,
      LogHome log,
      Generation generation,
      AcceptanceCriteria criteria,
      FlinkRuntime flink) {
    this.folder = folder;
    this.generation = generation;
    this.flink = flink;
    this.job = job(log, generation, criteria);
  }

  private static JobSettings job(LogHome log, Generation generation, AcceptanceCriteria criteria) {
    return new JobSettings(
        log.address(),
        log.clientSettings(),
        generation.name(),
        generation.codeStamp(),
        criteria,
        parallelism());
  }

  /** Whether the log has results of a generation of this number, be it another folder's. */
  static boolean areInLog(LogHome log, Generation generation, AcceptanceCriteria criteria) {
    return FlinkRuntime.hasResults(job(log, generation, criteria));
  }

  /** Tasks side by side in one job. */
  static int parallelism() {
    return Math.min(4, Runtime.getRuntime().availableProcessors());
  }

  Generation generation() {
    return generation;
  }

  /**
   * Follows the log from where the last checkpoint was, or from its first event.
   *
   * @param events number of events that are to be caught up with
   */
  void keepUp(long events) {
    CheckpointSettings checkpoints =
        CheckpointSettings.everySecond(
            folder.checkpoints(generation.number()), generation.stateKept());
    flink.startHistories(job, checkpoints, events);
  }

  /** Fits at a cut and waits for it. */
  void fit(FitCut cut) {
    flink.fit(job, cut);
  }

  /** Publishes answers from now on. */
  void publish() {
    firstSnapshot = new CountDownLatch(1);
    WriterSettings settings =
        new WriterSettings(
            folder.root(),
            job.bootstrapServers(),
            generation.name(),
            generation.codeStamp(),
            SHORTEST_PAUSE,
            job.clientProperties());
    writer = new ReadModelWriter(settings, snapshot -> firstSnapshot.countDown());
    writing = new Thread(writer, "writer");
    writing.start();
  }

  /** Waits until answers of this generation are published. */
  void awaitPublished() {
    try {
      while (!firstSnapshot.await(500, TimeUnit.MILLISECONDS)) {
        if (!writing.isAlive()) {
          throw new Problem(trouble().orElse("The writer of the answers has stopped."));
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new Problem("Stopped while the answers were being made.", e);
    }
  }

  /** Publishes no more; the last snapshot stays. */
  void stopPublishing() {
    if (writer != null) {
      writer.stop();
      joinWriter();
      writer = null;
    }
  }

  /** Whether the jobs have given up, so that {@link #keepUp()} is called for again. */
  boolean haveStopped() {
    return flink.hasStopped();
  }

  /** Deletes what another generation has left that is out of use. */
  void forget(Generation old) {
    FlinkRuntime.forget(
        new JobSettings(
            job.bootstrapServers(),
            job.clientProperties(),
            old.name(),
            old.codeStamp(),
            job.criteria(),
            job.parallelism()));
    Trees.delete(folder.checkpoints(old.number()));
  }

  private void joinWriter() {
    try {
      writing.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** How far they are, in words; empty where they are up to date but for little. */
  String catchingUp() {
    ReadModelWriter now = writer;
    long taken = now == null ? 0 : now.bundlesTaken();
    long eventsLeft = now == null ? 0 : now.eventsLeft();
    return flink.progress().map(p -> CatchingUp.words(p, taken, eventsLeft)).orElse("");
  }

  /** What is wrong now, in words; empty while all is well. */
  Optional<String> trouble() {
    Optional<String> ofWriter = writer == null ? Optional.empty() : writer.trouble();
    return ofWriter.isPresent() ? ofWriter : flink.trouble();
  }

  @Override
  public void close() {
    try {
      stopPublishing();
    } finally {
      flink.close();
    }
  }
}
