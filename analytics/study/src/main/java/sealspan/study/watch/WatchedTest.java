package sealspan.study.watch;

import java.time.Instant;
import java.util.Comparator;
import java.util.Objects;

/**
 * A test on its way into the watch.
 *
 * @param knownAt when its outcome became known: when the log took in the event that told whether it
 *     was a fouling failure
 * @param assemblyId the assembly
 * @param eventId event id of the round
 * @param asKnown its outcome as it was known then; later corrections do not change it
 * @param standing its outcome as it holds now; null where it was voided or no longer counts
 */
public record WatchedTest(
    Instant knownAt,
    String assemblyId,
    String eventId,
    WatchedOutcome asKnown,
    WatchedOutcome standing) {
  /**
   * Knowledge order: when it became known, then by event id; ids of two assemblies may be alike.
   */
  static final Comparator<WatchedTest> ORDER =
      Comparator.comparing(WatchedTest::knownAt)
          .thenComparing(WatchedTest::eventId)
          .thenComparing(WatchedTest::assemblyId);

  public WatchedTest {
    Objects.requireNonNull(knownAt, "knownAt");
    Objects.requireNonNull(assemblyId, "assemblyId");
    Objects.requireNonNull(eventId, "eventId");
    Objects.requireNonNull(asKnown, "asKnown");
  }
}
