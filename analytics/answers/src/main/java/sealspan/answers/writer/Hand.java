package sealspan.answers.writer;

import java.sql.SQLException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;

/**
 * Does one piece of work after the other in a thread of its own, while whoever gives it goes on.
 * Whoever needs what it works on awaits it first. For one giver.
 */
final class Hand implements AutoCloseable {
  private final ExecutorService thread;
  private Future<?> last = CompletableFuture.completedFuture(null);

  /**
   * A hand that has nothing to do.
   *
   * @param name name of its thread
   */
  Hand(String name) {
    thread = Executors.newSingleThreadExecutor(task -> new Thread(task, name));
  }

  /** Something to do. */
  interface Work {
    void run() throws SQLException;
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
   * @throws SQLException what kept it from that
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

  /** Ends it once the work that is under way is done or has failed. */
  @Override
  public void close() {
    thread.shutdown();
    boolean interrupted = false;
    while (!thread.isTerminated()) {
      try {
        thread.awaitTermination(1, TimeUnit.MINUTES);
      } catch (InterruptedException e) {
        interrupted = true; // The file must not be closed under its work.
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
