package sealspan.answers.writer;

import java.sql.SQLException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.function.IntConsumer;

/**
 * Takes batches in, one after the other, while the next one is being read. Whoever uses the file
 * otherwise awaits it first. For one thread.
 */
final class TakingIn implements AutoCloseable {
  private final ExecutorService hands =
      Executors.newSingleThreadExecutor(task -> new Thread(task, "taking in"));
  private Future<?> last = CompletableFuture.completedFuture(null);

  /**
   * Begins to take a batch in, once the one before is.
   *
   * @param taken told how many bundles and rows were, in a thread of its own
   * @throws SQLException what kept the one before from being taken in
   */
  void begin(PrivateStore store, Batch batch, IntConsumer taken) throws SQLException {
    await();
    last =
        hands.submit(
            () -> {
              store.apply(batch);
              taken.accept(batch.upsertsRead());
              return null;
            });
  }

  /**
   * Waits until everything is taken in.
   *
   * @throws SQLException what kept a batch from it
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

  /** Ends it once the batch that is under way is taken in or has failed. */
  @Override
  public void close() {
    hands.shutdown();
    boolean interrupted = false;
    while (!hands.isTerminated()) {
      try {
        hands.awaitTermination(1, TimeUnit.MINUTES);
      } catch (InterruptedException e) {
        interrupted = true; // The file must not be closed under a batch.
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
