package sealspan.jobs;

import java.time.Duration;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import org.apache.flink.api.common.JobID;
import org.apache.flink.core.execution.CheckpointType;
import org.apache.flink.runtime.checkpoint.CheckpointStatsSnapshot;
import org.apache.flink.runtime.minicluster.MiniCluster;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Triggers the checkpoints of a job: soon after events have come, and every now and then where none
 * do. Before each, all changed rows are sent on; so while very many events wait to be read, a long
 * log or a large import, none comes before they are, and the events of a history are sent on
 * together. The pauses grow with what a checkpoint costs.
 */
final class CheckpointPacer implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(CheckpointPacer.class);
  private static final long REST_PER_WORK = 3;
  private static final long LONGEST_MILLIS = 20_000;

  /** At least so long from one checkpoint to the next where events come. */
  private static final long SOON_MILLIS = 250;

  private static final long GLANCE_MILLIS = 50;

  /** The longest that the reading of a long log is waited for. */
  private static final long LONGEST_CATCH_UP_MILLIS = 900_000;

  /** So many events that wait are waited for; more than come live while progress gets here. */
  private static final long MUCH_BEHIND = 10_000;

  /** A job that has read nothing for so long has caught up with what it resumed from. */
  private static final long STANDSTILL_MILLIS = 10_000;

  private static final long PROGRESS_MILLIS = 500;

  private final MiniCluster cluster;
  private final JobID job;
  private final LogEnd log;
  private final long usualMillis;
  private final long eventsToCatchUp;
  private final Thread thread;

  /** Events that the log had more than the job had read when least was waiting. */
  private long notForJob = Long.MAX_VALUE;

  private CheckpointPacer(
      MiniCluster cluster, JobID job, LogEnd log, Duration pause, long eventsToCatchUp) {
    this.cluster = cluster;
    this.job = job;
    this.log = log;
    this.usualMillis = pause.toMillis();
    this.eventsToCatchUp = eventsToCatchUp;
    this.thread = new Thread(this::run, "sealspan-checkpoints");
    this.thread.setDaemon(true);
  }

  /**
   * Begins.
   *
   * @param log where it tells that events have come; closed with the pacer
   * @param pause from one checkpoint to the next where none have
   * @param eventsToCatchUp events that are to be read before the first one
   */
  static CheckpointPacer start(
      MiniCluster cluster, JobID job, LogEnd log, Duration pause, long eventsToCatchUp) {
    CheckpointPacer pacer = new CheckpointPacer(cluster, job, log, pause, eventsToCatchUp);
    pacer.thread.start();
    return pacer;
  }

  /** Whether a job has made a checkpoint since it began. Flink has it make one at once. */
  static boolean hasMadeOne(MiniCluster cluster, JobID job) {
    CheckpointStatsSnapshot made =
        cluster
            .getExecutionGraphInfo(job)
            .join()
            .getArchivedExecutionGraph()
            .getCheckpointStatsSnapshot();
    return made != null && made.getCounts().getNumberOfCompletedCheckpoints() > 0;
  }

  /** Makes a checkpoint now and waits for it, or until the job cannot make one. */
  static void trigger(MiniCluster cluster, JobID job) {
    try {
      cluster.triggerCheckpoint(job, CheckpointType.CONFIGURED).get();
    } catch (ExecutionException e) {
      LOG.debug("No checkpoint of job {} was made.", job, e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void run() {
    try {
      TimeUnit.MILLISECONDS.sleep(usualMillis);
      awaitRead(eventsToCatchUp);
      boolean caughtUp = false;
      while (!Thread.currentThread().isInterrupted()) {
        awaitFloodRead();
        long begin = System.nanoTime();
        trigger(cluster, job);
        long tookMillis = (System.nanoTime() - begin) / 1_000_000;
        // What the first took to catch up tells nothing of the next; a rest would hold live events.
        rest(caughtUp ? tookMillis : 0);
        caughtUp = true;
      }
    } catch (InterruptedException e) {
      // Closed.
    }
  }

  /**
   * Waits until most of what is in the log is read, also of what comes meanwhile; notes its end.
   */
  private void awaitFloodRead() throws InterruptedException {
    long until = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(LONGEST_CATCH_UP_MILLIS);
    long read = read(0);
    long waiting = log.note() - read;
    // After a resume the job has not read what came before.
    notForJob = Math.min(notForJob, waiting);
    boolean reading = true;
    while (reading && waiting - notForJob > MUCH_BEHIND && System.nanoTime() < until) {
      reading = awaitRead(read + waiting - notForJob);
      read = read(read);
      waiting = log.note() - read;
    }
    if (!reading) { // It began anew, and counts from there.
      notForJob = waiting;
    }
  }

  private long read(long before) {
    return JobProgress.of(cluster, job).map(JobProgress::eventsRead).orElse(before);
  }

  /** Waits until the job has read so many events; false where it stands still before. */
  private boolean awaitRead(long events) throws InterruptedException {
    long read = 0;
    long stoodStillMillis = 0;
    for (long waited = 0;
        read < events && waited < LONGEST_CATCH_UP_MILLIS && stoodStillMillis < STANDSTILL_MILLIS;
        waited += PROGRESS_MILLIS) {
      TimeUnit.MILLISECONDS.sleep(PROGRESS_MILLIS);
      long before = read;
      read = read(before);
      stoodStillMillis = read == before ? stoodStillMillis + PROGRESS_MILLIS : 0;
    }
    return read >= events;
  }

  private void rest(long tookMillis) throws InterruptedException {
    if (tookMillis > usualMillis) {
      TimeUnit.MILLISECONDS.sleep(Math.min(LONGEST_MILLIS, REST_PER_WORK * tookMillis));
    } else {
      long rested = Math.max(SOON_MILLIS, tookMillis);
      TimeUnit.MILLISECONDS.sleep(rested);
      for (; rested < usualMillis && !log.hasMoved(); rested += GLANCE_MILLIS) {
        TimeUnit.MILLISECONDS.sleep(GLANCE_MILLIS);
      }
    }
  }

  @Override
  public void close() {
    thread.interrupt();
    try {
      thread.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    log.close();
  }
}
