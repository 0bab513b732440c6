package sealspan.answers.writer;

import java.sql.SQLException;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;

/**
 * A second thread that does one piece of work after the other for the thread that owns it. Whoever
 * uses otherwise what it works on awaits it first.
 */
final class Hand implements AutoCloseable {
  /** Of fewer things a second thread makes nothing quicker. */
  private static final int WORTH_HALVING = 500;

  /** Something to do. */
  interface Work {
    void run() throws SQLException;
  }

  /** Something to do with each part of a list. */
  interface WorkOnPart<T> {
    void run(List<T> part) throws SQLException;
  }

  private final ExecutorService thread;
  private Future<?> last = CompletableFuture.completedFuture(null);

  /** A hand whose thread has a name. */
  Hand(String name) {
    thread = Executors.newSingleThreadExecutor(task -> new Thread(task, name));
  }

  /**
   * Begins a piece of work, once the one before is done.
   *
   * @throws SQLException what kept the one before from being done
   */
  void begin(Work work) throws SQLException {
    await();
    last =
        thread.submit(
            () -> {
              work.run();
              return null;
            });
  }

  /**
   * Waits until everything is done.
   *
   * @throws SQLException what kept it from being done
   */
  void await() throws SQLException {
    try {
      last.get();
    } catch (ExecutionException e) {
      if (e.getCause() instanceof SQLException sql) {
        throw sql;
      }
      if (e.getCause() instanceof RuntimeException unchecked) {
        throw unchecked;
      }
      throw new IllegalStateException(e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new SQLException("Interrupted while rows were taken in", e);
    }
  }

  /**
   * Does something with both halves of a long list at once, one here and one by this hand, and
   * waits for both; with a short list all of it here.
   *
   * @throws SQLException what kept one of them from being done
   */
  <T> void halve(List<T> all, WorkOnPart<T> work) throws SQLException {
    int half = all.size() < WORTH_HALVING ? all.size() : all.size() / 2;
    if (half < all.size()) {
      begin(() -> work.run(all.subList(half, all.size())));
    }
    try {
      work.run(all.subList(0, half));
    } finally {
      await();
    }
  }

  /** Ends it once the work that is under way is done or has failed. */
  @Override
  public void close() {
    thread.shutdown();
    boolean interrupted = false;
    while (!thread.isTerminated()) {
      try {
        thread.awaitTermination(1, TimeUnit.MINUTES);
      } catch (InterruptedException e) {
        interrupted = true; // What it works on must not be closed under it.
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
