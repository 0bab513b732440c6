package sealspan.app.engine;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sealspan.answers.AnswersException;
import sealspan.answers.Published;
import sealspan.app.Problem;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.ingest.log.Cut;
import sealspan.ingest.log.KafkaEventLog;
import sealspan.ingest.log.KafkaLedger;
import sealspan.ingest.log.LogException;
import sealspan.jobs.FlinkRuntime;
import sealspan.jobs.JobException;
import sealspan.jobs.RuntimeSettings;
import sealspan.study.FitCut;

/**
 * Keeps the results up to date: starts the generation in use or a new one, fits when new events
 * have settled, and rebuilds. What takes long is done one after the other in a thread of its own.
 */
final class Workshop implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Workshop.class);
  private static final Duration LOOK_INTERVAL = Duration.ofMillis(500);
  private static final Duration RESTART_PAUSE = Duration.ofSeconds(15);
  private static final Duration END_LIMIT = Duration.ofSeconds(45);

  /** While more events than this are not in the answers yet, a fit of them can wait. */
  private static final long FEW_BEHIND = 50_000;

  private final DataFolder folder;
  private final LogHome log;
  private final Diary diary;
  private final KafkaEventLog events;
  private final KafkaLedger ledger;
  private final Decisions decisions;
  private final ForecastDesk forecasts;
  private final AlarmDesk alarms;
  private final ExecutorService hands =
      Executors.newSingleThreadExecutor(task -> new Thread(task, "workshop"));

  private volatile Results results;

  /** What is being made to take the place of the results; null while nothing is. */
  private volatile Results anew;

  private volatile String failure = "";
  private volatile FitClock clock;
  private CompletableFuture<?> atWork = CompletableFuture.completedFuture(null);
  private Instant nextLook = Instant.MIN;

  /** The newest snapshot that was looked at for how far it has come; null before the first. */
  private Published shown;

  private Workshop(DataFolder folder, LogHome log, Diary diary) {
    this.folder = folder;
    this.log = log;
    this.diary = diary;
    this.events = new KafkaEventLog(log.kafka(), folder.index());
    this.ledger = new KafkaLedger(log.kafka(), folder.index());
    this.decisions = new Decisions(ledger);
    this.forecasts = new ForecastDesk(folder.root(), decisions);
    this.alarms = new AlarmDesk(folder.root(), decisions);
    this.clock = FitClock.starting(decisions.lastCutFitted());
  }

  /**
   * Opens the log and begins to make results in the background.
   *
   * @param flink the cluster for the first generation, which may still be starting
   * @throws Problem when the criteria cannot be read
   */
  static Workshop open(
      DataFolder folder, LogHome log, Diary diary, CompletableFuture<FlinkRuntime> flink) {
    AcceptanceCriteria criteria = CriteriaInForce.of(folder);
    LOG.info("The log is reachable.");
    Workshop workshop = new Workshop(folder, log, diary);
    LOG.info("The log is open.");
    workshop.decisions.adopt(criteria);
    workshop.submit(
        () -> {
          workshop.begin(criteria, flink.join());
          return "";
        });
    return workshop;
  }

  /** A cluster for one generation. */
  static FlinkRuntime startFlink(DataFolder folder) {
    return FlinkRuntime.start(new RuntimeSettings(folder.scratch(), Results.parallelism()));
  }

  /** Looks at the log now and then, and fits when it is time. */
  void look() {
    Instant now = Instant.now();
    if (now.isBefore(nextLook) || !atWork.isDone()) {
      return;
    }
    nextLook = now.plus(LOOK_INTERVAL);
    try {
      String end = Cuts.text(events.end());
      clock = clock.looked(now, end);
      alarms.looked(now, end);
    } catch (LogException e) {
      failure = e.getMessage();
      return;
    }
    if (results == null) {
      return;
    }
    if (results.haveStopped()) {
      nextLook = now.plus(RESTART_PAUSE);
      LOG.warn("The jobs have stopped and are started again.");
      submit(
          () -> {
            results.keepUp(0);
            return "";
          });
    } else if (clock.isDue(now) && !isFarBehind()) {
      fit();
    } else if (forecasts.isDue(now)) {
      submit(
          () -> {
            forecasts.issue(clock.fitted());
            return "";
          });
    } else if (alarms.isDue(now)) {
      submit(
          () -> {
            alarms.work(clock.fitted());
            return "";
          });
    }
  }

  /** Breaks off a look at the log that waits for an answer; for any thread. */
  void giveUpLooking() {
    events.giveUp();
  }

  /** Whether a long log is being caught up with: people want its answers before a fit of it. */
  private boolean isFarBehind() {
    long there = Cuts.events(Cuts.parse(clock.seen()));
    if (there <= FEW_BEHIND) {
      return false;
    }
    try {
      shown = Published.newer(folder.root(), shown).orElse(shown);
      return there - (shown == null ? 0 : shown.cut().events()) > FEW_BEHIND;
    } catch (AnswersException e) {
      LOG.info("Whether most of the log is in the answers cannot be told: {}", e.getMessage());
      return true;
    }
  }

  /** Fits at the present end of the log; gives the words that say so. */
  CompletableFuture<String> fit() {
    return submit(this::fitNow);
  }

  /** Makes all results anew beside the ones in use, and puts them in their place. */
  CompletableFuture<String> rebuild() {
    return submit(this::rebuildNow);
  }

  /** How far the results are that are being made, in words; empty while there is little to do. */
  String catchingUp() {
    Results now = anew == null ? results : anew;
    return now == null ? "" : now.catchingUp();
  }

  /** What is wrong now, in words; empty while all is well. */
  Optional<String> trouble() {
    Results now = results;
    return failure.isEmpty()
        ? Optional.ofNullable(now).flatMap(Results::trouble)
        : Optional.of(failure);
  }

  private CompletableFuture<String> submit(Supplier<String> task) {
    CompletableFuture<String> done =
        CompletableFuture.supplyAsync(task, hands)
            .whenComplete(
                (words, e) -> {
                  failure = e == null ? "" : words(e);
                  if (e != null) {
                    LOG.warn("{}", failure, e);
                  }
                });
    atWork = done;
    return done;
  }

  private void begin(AcceptanceCriteria criteria, FlinkRuntime flink) {
    String stamp = CodeStamp.running();
    String digest = CriteriaInForce.digest(criteria);
    Optional<Generation> inUse = Generation.read(folder);
    boolean asBefore = inUse.filter(g -> g.isMadeBy(stamp, digest)).isPresent();
    Generation generation = asBefore ? inUse.get() : newGeneration(criteria);
    LOG.info("Begins {}; Flink is up.", generation);
    Results begun = new Results(folder, log, generation, criteria, flink);
    results = begun;
    diary.generation(generation.number(), stamp);
    if (!asBefore) {
      replayLastFit(begun);
    }
    begun.keepUp(asBefore ? 0 : Cuts.events(events.end()));
    begun.publish();
    LOG.info("Histories are kept up to date and published.");
    if (!asBefore) {
      begun.awaitPublished();
      putInUse(begun, inUse);
    }
  }

  /** One whose number is new to this folder, and to the log: another folder may use that too. */
  private Generation newGeneration(AcceptanceCriteria criteria) {
    Generation next;
    do {
      next =
          new Generation(
              Generation.takeNumber(folder),
              CodeStamp.running(),
              CriteriaInForce.digest(criteria),
              Generation.STATE_KEPT);
    } while (Results.areInLog(log, next, criteria));
    return next;
  }

  /** Puts a generation in use, whose answers are published, and deletes what others left. */
  private void putInUse(Results fresh, Optional<Generation> before) {
    fresh.generation().write(folder);
    for (Generation old : before.map(b -> b.upTo(fresh.generation(), folder)).orElse(List.of())) {
      fresh.forget(old);
    }
  }

  private void replayLastFit(Results fresh) {
    String cut = decisions.lastCutFitted();
    if (!cut.isEmpty()) {
      fresh.fit(fitCut(cut));
    }
  }

  private String fitNow() {
    Instant began = Instant.now();
    String cut = Cuts.text(events.end());
    if (cut.isEmpty()) {
      return "There are no events to fit yet.";
    }
    String words = Cuts.events(Cuts.parse(cut)) + " events.";
    if (cut.equals(clock.fitted())) {
      return "The last fit is of all " + words;
    }
    try {
      results.fit(fitCut(cut));
    } catch (RuntimeException e) {
      clock = clock.failedAt(Instant.now());
      throw e;
    }
    clock = clock.fittedAt(cut, began, Instant.now());
    decisions.fitted(cut);
    forecasts.reopen();
    alarms.reopen();
    diary.fitted(Instant.now());
    return "Fitted " + words;
  }

  private String rebuildNow() {
    Results old = results;
    AcceptanceCriteria criteria = CriteriaInForce.of(folder);
    decisions.adopt(criteria);
    Generation generation = newGeneration(criteria);
    Results fresh = new Results(folder, log, generation, criteria, startFlink(folder));
    anew = fresh;
    try {
      replayLastFit(fresh);
      fresh.keepUp(Cuts.events(events.end()));
      old.stopPublishing();
      fresh.publish();
      fresh.awaitPublished();
    } catch (RuntimeException e) {
      fresh.close();
      old.publish();
      throw e;
    } finally {
      anew = null;
    }
    results = fresh;
    forecasts.reopen();
    alarms.reopen();
    diary.generation(generation.number(), generation.codeStamp());
    old.close();
    putInUse(fresh, Optional.of(old.generation()));
    return "All answers were made anew from "
        + Cuts.events(events.end())
        + " events, by generation "
        + generation.number()
        + ".";
  }

  private FitCut fitCut(String text) {
    Cut cut = Cuts.parse(text);
    return new FitCut(text, text, newestRecordedAt(cut), Cuts.events(cut));
  }

  /** Recorded times do not decrease within a partition: its last event has the newest. */
  private Instant newestRecordedAt(Cut cut) {
    Cut lastOnes = new Cut(cut.offsets().stream().map(o -> Math.max(0, o - 1)).toList());
    Instant[] newest = {Instant.EPOCH};
    events.read(
        lastOnes,
        cut,
        recorded -> {
          if (recorded.recordedAt().isAfter(newest[0])) {
            newest[0] = recorded.recordedAt();
          }
        });
    return newest[0];
  }

  /** What went wrong, for people. */
  static String words(Throwable e) {
    Throwable cause = e instanceof CompletionException && e.getCause() != null ? e.getCause() : e;
    boolean forPeople =
        cause instanceof Problem
            || cause instanceof LogException
            || cause instanceof JobException
            || cause instanceof AnswersException;
    return forPeople
        ? cause.getMessage()
        : "Something unexpected went wrong (" + cause + "); the engine's log has the details.";
  }

  @Override
  public void close() {
    hands.shutdownNow();
    try {
      if (!hands.awaitTermination(END_LIMIT.toSeconds(), TimeUnit.SECONDS)) {
        LOG.warn("Work in progress could not be broken off in time.");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    try {
      if (results != null) {
        results.close();
      }
    } finally {
      ledger.close();
      events.close();
    }
  }
}
