package sealspan.app.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import sealspan.app.PublishedTables;

/** Waits for answers that change no more. */
final class Settled {
  private static final Duration PATIENCE = Duration.ofMinutes(1);

  /** Answers of everything settle later than one answer comes. */
  private static final Duration PATIENCE_WITH_ALL = Duration.ofMinutes(5);

  /** A fit is sent on to the assemblies little by little; those that it has not reached. */
  private static final String NOT_REACHED =
      """
      select count(*) from forecast, (select cut_id from fit where stratum = 'all') newest
      where fit_cut_id <> newest.cut_id or note = 'nothing has been fitted yet'
      """;

  private Settled() {}

  /** Fits at the end of the log, and gives the tables once they hold that fit and keep still. */
  static Map<String, List<String>> fitted(Path data) {
    Typed fit = Typed.at(data, "fit");
    assertEquals(ExitCode.DONE, fit.code(), fit.toString());
    Map<String, List<String>> last = PublishedTables.of(data);
    long deadline = System.nanoTime() + PATIENCE_WITH_ALL.toNanos();
    while (true) {
      pause(Duration.ofSeconds(3));
      Map<String, List<String>> next = PublishedTables.of(data);
      if (next.equals(last)
          && holdsItsLastFit(next)
          && PublishedTables.ask(data, NOT_REACHED).equals(List.of("0"))) {
        return next;
      }
      assertTrue(System.nanoTime() < deadline, "the answers do not settle");
      last = next;
    }
  }

  /** Waits until something is so, a minute at most; what is asked then tells. */
  static void until(BooleanSupplier reached) {
    long deadline = System.nanoTime() + PATIENCE.toNanos();
    while (!reached.getAsBoolean() && System.nanoTime() < deadline) {
      pause(Duration.ofMillis(300));
    }
  }

  private static boolean holdsItsLastFit(Map<String, List<String>> tables) {
    boolean watches =
        tables.get("fouling_coefficient").isEmpty() || !tables.get("watch_state").isEmpty();
    return watches
        && !tables.get("fit").isEmpty()
        && tables.get("ledger").stream().anyMatch(entry -> entry.contains("CUT_FITTED"));
  }

  static void pause(Duration d) {
    try {
      TimeUnit.MILLISECONDS.sleep(d.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}
