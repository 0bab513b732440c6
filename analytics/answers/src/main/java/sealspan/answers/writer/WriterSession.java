package sealspan.answers.writer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.IntConsumer;
import org.apache.kafka.common.TopicPartition;
import sealspan.answers.AnswersFolder;
import sealspan.answers.tables.Publication;

/** One run of the writer from opening its file to the first trouble or the end. */
final class WriterSession implements AutoCloseable {
  private static final Duration WAIT = Duration.ofMillis(100);
  private static final long LOOK_FOR_PARTITIONS_NANOS = Duration.ofSeconds(2).toNanos();

  /** Rest after publishing by how long it took. */
  private static final double REST_PER_WORK = .5;

  /** The same while much comes in after a fit, among it live events, which someone waits for. */
  private static final double REST_PER_WORK_OF_MUCH = 1;

  /** The same while the log is caught up with: that is needed whole rather than soon. */
  private static final double REST_PER_WORK_CATCHING_UP = 9;

  /** So long after anything came in, no more is expected. */
  private static final long QUIET_NANOS = Duration.ofSeconds(1).toNanos();

  private final WriterSettings settings;
  private final AnswersFolder folder;
  private final SnapshotPublisher publisher;
  private PrivateStore store;
  private final LogReader log;
  private final Consumer<Path> published;
  private final IntConsumer taken;

  private Map<Integer, Long> publishedCut;
  private Map<Integer, Long> holdUntil;
  private final Hand takingIn = new Hand("taking in");
  private Batch pending = new Batch();
  private boolean changed = true;
  private volatile long eventsLeft;
  private long lookedForPartitions;

  /** When the next snapshot may come, and when it may where nothing comes in any more. */
  private long publishFrom;

  private long publishQuietFrom;
  private long cameLast;

  /**
   * Opens the private file and goes to the place where it stopped.
   *
   * @param published told of every snapshot
   * @param taken told how many bundles and rows were taken in
   */
  WriterSession(WriterSettings settings, Consumer<Path> published, IntConsumer taken)
      throws IOException, SQLException {
    this.settings = settings;
    this.published = published;
    this.taken = taken;
    folder = new AnswersFolder(settings.dataFolder());
    publisher = new SnapshotPublisher(folder);
    Files.createDirectories(folder.folder());
    publisher.removeParts();
    publisher.removeOtherGenerations(settings.generation());
    store = openStore();
    try {
      log = new LogReader(settings, store.places());
    } catch (RuntimeException e) {
      store.close();
      throw e;
    }
  }

  private PrivateStore openStore() throws SQLException {
    return PrivateStore.open(folder, settings.generation(), publisher.layersOfNewest());
  }

  /** Reads and publishes until told to stop. */
  void run(BooleanSupplier stopping) throws IOException, SQLException {
    lookedForPartitions = System.nanoTime();
    cameLast = lookedForPartitions;
    publishFrom = lookedForPartitions;
    publishQuietFrom = lookedForPartitions;
    log.findPartitions();
    while (!stopping.getAsBoolean()) {
      if (System.nanoTime() - lookedForPartitions > LOOK_FOR_PARTITIONS_NANOS) {
        log.findPartitions();
        lookedForPartitions = System.nanoTime();
      }
      poll();
      if (log.hasEventsAndRows() && mayPublish()) {
        publish(stopping);
      } else if (!log.hasEventsAndRows()) {
        pause();
      }
    }
  }

  /** Reads on. What came is taken in when it is enough, or to be published. */
  private void poll() throws SQLException {
    int before = pending.records();
    log.poll(WAIT, pending);
    if (pending.records() > before) {
      cameLast = System.nanoTime();
    }
    if (pending.isFull()) {
      takeIn();
    }
  }

  private boolean mayPublish() {
    long now = System.nanoTime();
    boolean quiet = now - cameLast >= QUIET_NANOS;
    return now - (quiet ? publishQuietFrom : publishFrom) >= 0;
  }

  private void takeIn() throws SQLException {
    if (pending.records() > 0) {
      Batch batch = pending;
      pending = new Batch();
      takingIn.begin(
          () -> {
            store.apply(batch);
            taken.accept(batch.upsertsRead());
          });
      changed = true;
    }
  }

  /**
   * Publishes, where something changed or layers wait to be united, the newest cut that is complete
   * in every table. The next time comes after the interval of the settings, or later where
   * publishing itself takes long: it shall not take more than two thirds of the time, half of it
   * while much comes in, or a tenth while the log is caught up with.
   */
  private void publish(BooleanSupplier stopping) throws IOException, SQLException {
    long from = System.nanoTime() + settings.publishInterval().toNanos();
    publishFrom = from;
    publishQuietFrom = from;
    Map<Integer, Long> cut = log.historiesCut();
    takingIn.await();
    store.expect(cut);
    boolean news =
        changed || pending.records() > 0 || !cut.equals(publishedCut) || store.isUnsettled();
    if (isHeld(cut)) {
      layDown(cut);
    } else if (news) {
      Map<TopicPartition, Long> goal = log.goal(cut);
      while (!log.reached(goal)) {
        if (stopping.getAsBoolean()) {
          return;
        }
        poll();
        eventsLeft = log.eventsLeft(goal);
      }
      takeIn();
      takingIn.await();
      boolean much = store.takesMuch();
      long settling = System.nanoTime();
      Publication publication =
          new Publication(settings.generation(), settings.codeVersion(), Instant.now());
      publisher.retire(store.settle(cut, publication));
      Path snapshot = publisher.publish(store.file());
      promote(snapshot);
      changed = false;
      publishedCut = cut;
      published.accept(snapshot);
      long ended = System.nanoTime();
      long work = ended - settling;
      double restPerWork =
          !much
              ? REST_PER_WORK
              : log.isFarBehind() ? REST_PER_WORK_CATCHING_UP : REST_PER_WORK_OF_MUCH;
      publishFrom = Math.max(from, ended + (long) (restPerWork * work));
      publishQuietFrom = Math.max(from, ended + (long) (REST_PER_WORK * work));
    }
  }

  /** What is held and much already moves to a layer, lest the private file holds the record. */
  private void layDown(Map<Integer, Long> cut) throws IOException, SQLException {
    if (store.takesMuch()) {
      for (Path layer : store.gather(cut)) {
        Files.deleteIfExists(layer);
      }
      Path copy = publisher.copy(store.file());
      CompleteFile.flush(copy);
      promote(copy);
      publisher.removeParts();
    }
  }

  private void promote(Path copy) throws IOException, SQLException {
    if (store.promote(copy)) {
      store.close();
      LoosePages.leaveOut(store.file());
      store = openStore();
    }
  }

  /**
   * While another generation's answers are there, the first snapshot of this one waits until it has
   * taken in all events that were in the log when it began: readers shall not see half a history.
   */
  private boolean isHeld(Map<Integer, Long> cut) {
    if (holdUntil == null) {
      boolean otherIsCurrent =
          publisher.currentGeneration().filter(g -> !g.equals(settings.generation())).isPresent();
      holdUntil = otherIsCurrent ? log.eventsEnd() : Map.of();
    }
    return holdUntil.entrySet().stream()
        .anyMatch(end -> cut.getOrDefault(end.getKey(), 0L) < end.getValue());
  }

  private static void pause() {
    try {
      Thread.sleep(WAIT.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Events that are still to be taken in before the next snapshot; for any thread. */
  long eventsLeft() {
    return eventsLeft;
  }

  /** Ends a wait from another thread. */
  void wakeUp() {
    log.wakeUp();
  }

  @Override
  public void close() throws SQLException {
    try (PrivateStore closing = store;
        Hand first = takingIn) {
      log.close();
    }
  }
}
