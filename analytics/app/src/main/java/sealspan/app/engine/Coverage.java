package sealspan.app.engine;

import java.time.Duration;
import java.util.Optional;
import java.util.function.Predicate;
import sealspan.answers.Published;
import sealspan.app.Problem;
import sealspan.ingest.log.Cut;

/**
 * Waits until something is in the answers of the running engine. Answers that an engine of another
 * build has left do not count, however much they hold: the running one is making its own.
 */
public final class Coverage {
  private static final Duration GLANCE = Duration.ofMillis(150);
  private static final Duration REPORT_EVERY = Duration.ofSeconds(2);

  /** A snapshot that could not be read for a passing reason is opened again after so long. */
  private static final Duration SECOND_SIGHT = Duration.ofSeconds(20);

  private final DataFolder folder;
  private final EngineDoor door;

  public Coverage(DataFolder folder) {
    this.folder = folder;
    this.door = new EngineDoor(folder);
  }

  /** Hears how far the answers are while one waits. */
  public interface Listener {
    /**
     * Called every two seconds.
     *
     * @param published events in the answers
     * @param goal events waited for
     * @param meanwhile how far the engine is with what is not in the answers yet, in words; empty
     *     where it does not say
     */
    void at(long published, long goal, String meanwhile);
  }

  /**
   * Waits until the answers hold every event before a cut.
   *
   * @throws Problem when the engine ends meanwhile
   */
  public void await(Cut goal, Listener listener) {
    awaitThat(p -> Cuts.parse(p.cut().offsets()).covers(goal), goal, listener);
  }

  /**
   * Waits until the answers hold a fit of every event before a cut, and every assembly is scored
   * with it.
   *
   * @throws Problem when the engine ends meanwhile
   */
  public void awaitFit(Cut goal, Listener listener) {
    awaitThat(
        p -> p.fitOffsets() != null && Cuts.parse(p.fitOffsets()).covers(goal) && p.isScored(),
        goal,
        listener);
  }

  private void awaitThat(Predicate<Published> enough, Cut goal, Listener listener) {
    long nextReport = System.nanoTime() + REPORT_EVERY.toNanos();
    long nextSecondSight = System.nanoTime() + SECOND_SIGHT.toNanos();
    Published newest = null;
    Optional<EngineState> before = Optional.empty();
    while (true) {
      Optional<EngineState> engine = door.running();
      boolean again = !engine.equals(before) || System.nanoTime() > nextSecondSight;
      before = engine;
      Optional<Published> newer = Published.newer(folder.root(), again ? null : newest);
      if (again) {
        nextSecondSight = System.nanoTime() + SECOND_SIGHT.toNanos();
      }
      if (newer
          .filter(p -> engine.isEmpty() || engine.get().codeStamp().equals(p.cut().codeVersion()))
          .filter(enough)
          .isPresent()) {
        return;
      }
      newest = newer.orElse(newest);
      if (engine.isEmpty()) {
        throw new Problem(
            "The engine has ended before the answers were up to date. Nothing is lost; start it"
                + " again with: sealspan start");
      }
      if (System.nanoTime() > nextReport) {
        listener.at(
            newest == null ? 0 : newest.cut().events(),
            Cuts.events(goal),
            CatchingUp.read(folder).orElse(""));
        nextReport = System.nanoTime() + REPORT_EVERY.toNanos();
      }
      EngineDoor.pause(GLANCE);
    }
  }
}
