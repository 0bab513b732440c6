package sealspan.app.engine;

import java.io.IOException;
import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sealspan.app.Problem;
import sealspan.app.engine.EngineState.Phase;
import sealspan.app.engine.Letters.Letter;
import sealspan.app.engine.Letters.Wish;

/**
 * The engine of a data folder, from the taking of its lock to its end. One thread does everything
 * that has an order; jobs, broker and writer have threads and processes of their own.
 */
public final class Engine {
  private static final Logger LOG = LoggerFactory.getLogger(Engine.class);
  private static final Duration GLANCE = Duration.ofMillis(100);

  private final Diary diary;
  private final Letters letters;
  private final DataFolder folder;
  private volatile boolean stopping;

  private Engine(DataFolder folder) {
    this.folder = folder;
    this.diary = new Diary(folder);
    this.letters = new Letters(folder);
  }

  /**
   * Runs the engine until it is asked to stop.
   *
   * @throws Problem when another engine has the folder, or it cannot start
   */
  public static void run(DataFolder folder) throws IOException {
    try (EngineLock lock = EngineLock.take(folder)) {
      LOG.info("The engine of {} begins, {}", folder.root(), lock);
      new Engine(folder).live();
    }
  }

  private void live() throws IOException {
    letters.clear();
    diary.began();
    CountDownLatch ended = new CountDownLatch(1);
    Runtime.getRuntime().addShutdownHook(new Thread(() -> endOnSignal(ended), "on-signal"));
    try (LogHome log = LogHome.open(folder)) {
      diary.running(log.address());
      while (!stopping) {
        for (Letter letter : letters.take()) {
          stopping |= letter.wish() == Wish.STOP;
        }
        log.trouble().ifPresent(diary::trouble);
        EngineDoor.pause(GLANCE);
      }
      diary.phase(Phase.STOPPING);
    } catch (RuntimeException e) {
      diary.failed(e.getMessage());
      throw e;
    } finally {
      ended.countDown();
    }
  }

  /** A signal ends the virtual machine when this returns: so it waits for the orderly end. */
  private void endOnSignal(CountDownLatch ended) {
    stopping = true;
    try {
      ended.await(60, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
