package sealspan.answers.writer;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import java.time.Duration;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.kafka.common.errors.WakeupException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sealspan.answers.AnswersFolder;

/**
 * Keeps the answers of a data folder up to date: reads the topics of rows, quarantine, ledger and
 * events, and publishes snapshots. Run it in a thread of its own. Where something goes wrong it
 * says so, by {@link #trouble()} and to the log of the program, waits, and goes on from the last
 * checkpoint of its file.
 */
public final class ReadModelWriter implements Runnable {
  private static final Logger LOG = LoggerFactory.getLogger(ReadModelWriter.class);
  private static final Duration FIRST_WAIT = Duration.ofSeconds(1);
  private static final Duration LONGEST_WAIT = Duration.ofSeconds(15);

  private final WriterSettings settings;
  private final Consumer<Path> published;
  private final Object turn = new Object();
  private volatile boolean stopping;
  private volatile String trouble;
  private volatile long bundlesTaken;
  private WriterSession session;

  /**
   * A writer that does not run yet.
   *
   * @param published told of every snapshot, in the writer's thread
   */
  public ReadModelWriter(WriterSettings settings, Consumer<Path> published) {
    this.settings = settings;
    this.published = published;
  }

  /** Works until {@link #stop()}; returns at once where another writer has the folder. */
  @Override
  public void run() {
    Duration wait = FIRST_WAIT;
    while (!stopping) {
      long began = System.nanoTime();
      try {
        work();
      } catch (FolderTaken e) {
        report(e);
        return;
      } catch (WakeupException e) {
        // Only stop() wakes the reader up.
      } catch (IOException | SQLException | RuntimeException e) {
        report(e);
      }
      boolean ranForLong = System.nanoTime() - began > LONGEST_WAIT.toNanos();
      wait = ranForLong ? FIRST_WAIT : min(wait.multipliedBy(2), LONGEST_WAIT);
      await(wait);
    }
  }

  private void work() throws IOException, SQLException {
    Path lockFile = new AnswersFolder(settings.dataFolder()).folder().resolve("lock");
    Files.createDirectories(lockFile.getParent());
    try (FileChannel channel =
            FileChannel.open(lockFile, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        FileLock lock = lock(channel);
        WriterSession open = open()) {
      open.run(() -> stopping);
    } finally {
      synchronized (turn) {
        session = null;
      }
    }
  }

  private FileLock lock(FileChannel channel) throws IOException {
    FileLock lock;
    try {
      lock = channel.tryLock();
    } catch (OverlappingFileLockException e) {
      lock = null;
    }
    if (lock == null) {
      throw new FolderTaken(
          "Another engine already writes the answers of "
              + settings.dataFolder()
              + ". Stop it first, or use another data folder.");
    }
    return lock;
  }

  private WriterSession open() throws IOException, SQLException {
    WriterSession opened =
        new WriterSession(settings, this::publishedOne, bundles -> bundlesTaken += bundles);
    synchronized (turn) {
      session = opened;
    }
    return opened;
  }

  private void publishedOne(Path snapshot) {
    trouble = null;
    published.accept(snapshot);
  }

  private void report(Exception e) {
    trouble = e instanceof FolderTaken ? e.getMessage() : WriterTrouble.explain(e, settings);
    LOG.warn("{}", trouble, e);
  }

  private void await(Duration wait) {
    synchronized (turn) {
      long until = System.nanoTime() + wait.toNanos();
      for (long left = wait.toMillis(); !stopping && left > 0; ) {
        try {
          turn.wait(left);
        } catch (InterruptedException e) {
          stopping = true;
          Thread.currentThread().interrupt();
        }
        left = (until - System.nanoTime()) / 1_000_000;
      }
    }
  }

  private static Duration min(Duration a, Duration b) {
    return a.compareTo(b) < 0 ? a : b;
  }

  /** How many bundles and rows were read and taken in since the writer was made. */
  public long bundlesTaken() {
    return bundlesTaken;
  }

  /** How many events are still to be read and taken in before the next snapshot. */
  public long eventsLeft() {
    synchronized (turn) {
      return session == null ? 0 : session.eventsLeft();
    }
  }

  /** What is wrong now, in words; empty while all is well. */
  public Optional<String> trouble() {
    return Optional.ofNullable(trouble);
  }

  /** Ends {@link #run()} soon; what was read and not yet taken in is read again next time. */
  public void stop() {
    synchronized (turn) {
      stopping = true;
      turn.notifyAll();
      if (session != null) {
        session.wakeUp();
      }
    }
  }

  /** Another writer has the folder. */
  private static final class FolderTaken extends RuntimeException {
    FolderTaken(String message) {
      super(message);
    }
  }
}
