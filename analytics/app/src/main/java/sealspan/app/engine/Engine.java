package sealspan.app.engine;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sealspan.app.Problem;
import sealspan.app.engine.Letters.Answer;
import sealspan.app.engine.Letters.Letter;
import sealspan.app.engine.Letters.Outcome;
import sealspan.app.engine.Letters.Wish;
import sealspan.jobs.FlinkRuntime;

/**
 * The engine of a data folder, from the taking of its lock to its end: it starts what runs, opens
 * letters and watches; what takes long is done by the {@link Workshop}.
 */
public final class Engine {
  private static final Logger LOG = LoggerFactory.getLogger(Engine.class);
  private static final Duration GLANCE = Duration.ofMillis(100);
  private static final Duration NOTE_EVERY = Duration.ofSeconds(2);
  private static final Duration END_LIMIT = Duration.ofSeconds(75);

  private final DataFolder folder;
  private final Diary diary;
  private final Letters letters;
  private final CatchingUp catchingUp;
  private volatile boolean stopping;
  private Instant nextNote = Instant.MIN;

  private Engine(DataFolder folder) throws IOException {
    this.folder = folder;
    this.diary = new Diary(folder);
    this.letters = new Letters(folder);
    this.catchingUp = new CatchingUp(folder);
  }

  /**
   * Runs the engine until it is asked to stop.
   *
   * @throws Problem when another engine has the folder, or it cannot start
   */
  public static void run(DataFolder folder) throws IOException {
    try (EngineLock lock = EngineLock.take(folder)) {
      LOG.info("The engine of {} begins, {}.", folder.root(), lock);
      new Engine(folder).live();
      LOG.info("The engine of {} has ended.", folder.root());
    }
  }

  private void live() {
    CountDownLatch ended = new CountDownLatch(1);
    Runtime.getRuntime().addShutdownHook(new Thread(() -> endOnSignal(ended), "on-signal"));
    letters.clear();
    diary.began();
    Trees.delete(folder.scratch());
    CompletableFuture<FlinkRuntime> flink =
        CompletableFuture.supplyAsync(() -> Workshop.startFlink(folder));
    try (LogHome log = LogHome.open(folder);
        Workshop workshop = Workshop.open(folder, log, diary, flink)) {
      GivingWay.fromNow();
      diary.running(log.address());
      log.whenGone(words -> endWithoutBroker(words, workshop));
      LOG.info("Takes events; the log is at {}.", log.address());
      while (!stopping) {
        letters.take().forEach(letter -> open(letter, workshop));
        requireBroker(log);
        diary.trouble(workshop.trouble().orElse(""));
        note(workshop);
        workshop.look();
        EngineDoor.pause(GLANCE);
      }
      diary.stopping("");
    } catch (RuntimeException e) {
      Problem problem = FolderTrouble.of(folder, e).orElse(null);
      diary.failed(problem == null ? Workshop.words(e) : problem.getMessage());
      throw problem == null ? e : problem;
    } finally {
      ended.countDown();
    }
  }

  /** Without its broker an engine can do nothing; the next start begins with a new one. */
  private static void requireBroker(LogHome log) {
    log.trouble()
        .ifPresent(
            words -> {
              throw new Problem(withoutBroker(words));
            });
  }

  /** Says so at once, whatever the engine is waiting for. */
  private void endWithoutBroker(String words, Workshop workshop) {
    diary.stopping(withoutBroker(words));
    workshop.giveUpLooking();
  }

  private static String withoutBroker(String words) {
    return "Nothing that was acknowledged is lost; start again. " + words;
  }

  /** Notes now and then how far the results are. */
  private void note(Workshop workshop) {
    Instant now = Instant.now();
    if (now.isBefore(nextNote)) {
      return;
    }
    nextNote = now.plus(NOTE_EVERY);
    try {
      catchingUp.note(workshop.catchingUp());
    } catch (IOException e) {
      LOG.debug("How far the results are could not be written down.", e);
    }
  }

  private void open(Letter letter, Workshop workshop) {
    if (letter.wish() == Wish.STOP) {
      stopping = true;
      return;
    }
    CompletableFuture<String> done =
        letter.wish() == Wish.FIT ? workshop.fit() : workshop.rebuild();
    done.whenComplete(
        (words, failure) ->
            letters.reply(
                letter,
                failure == null
                    ? new Answer(Outcome.DONE, words)
                    : new Answer(Outcome.REFUSED, Workshop.words(failure))));
  }

  /** A signal ends the virtual machine when this returns: so it waits for the orderly end. */
  private void endOnSignal(CountDownLatch ended) {
    stopping = true;
    try {
      if (!ended.await(END_LIMIT.toSeconds(), TimeUnit.SECONDS)) {
        LOG.warn("The engine could not end in an orderly way in time.");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
