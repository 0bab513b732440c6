package sealspan.app.engine;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class FitClockTest {
  private static final Instant T0 = Instant.parse("2026-01-01T00:00:00Z");

  @Test
  void anEmptyLogIsNeverFitted() {
    assertFalse(FitClock.starting("").looked(T0, "").isDue(T0.plusSeconds(3600)));
  }

  @Test
  void newEventsAreFittedOnceTheyHaveSettled() {
    FitClock clock = FitClock.starting("0:5").looked(T0, "0:6");
    assertFalse(clock.isDue(T0.plusMillis(999)));
    assertTrue(clock.isDue(T0.plusMillis(1000)));
    assertFalse(clock.looked(T0.plusMillis(900), "0:7").isDue(T0.plusMillis(1000)));
  }

  @Test
  void whatWasFittedIsNotFittedAgain() {
    FitClock clock = FitClock.starting("0:6").looked(T0, "0:6");
    assertFalse(clock.isDue(T0.plusSeconds(3600)));
    FitClock after = clock.looked(T0, "0:7").fittedAt("0:7", T0, T0.plusSeconds(1));
    assertFalse(after.isDue(T0.plusSeconds(3600)));
  }

  @Test
  void eventsThatNeverCeaseAreFittedAfterTheLongestWait() {
    FitClock clock = FitClock.starting("").looked(T0, "0:1");
    Instant last = T0.plus(FitClock.WAIT_OF_FEW);
    clock = clock.looked(last, "0:900");
    assertTrue(clock.isDue(last));
  }

  @Test
  void anImportThatPausesIsNotFittedInTheMiddle() {
    FitClock few = FitClock.starting("0:5").looked(T0, "0:20005");
    assertTrue(few.isDue(T0.plusSeconds(1)));
    FitClock more = FitClock.starting("0:5").looked(T0, "0:100005,1:100000");
    assertFalse(more.isDue(T0.plusMillis(9_999)));
    assertTrue(more.isDue(T0.plusSeconds(10)));
    FitClock most = FitClock.starting("").looked(T0, "0:2000000");
    assertFalse(most.isDue(T0.plusMillis(29_999)));
    assertTrue(most.isDue(T0.plusSeconds(30)));
  }

  @Test
  void manyEventsThatNeverCeaseAreFittedLater() {
    Instant last = T0.plusSeconds(500);
    FitClock clock = FitClock.starting("").looked(T0, "0:1").looked(last, "0:1000000");
    assertTrue(clock.isDue(last));
    assertFalse(clock.isDue(last.minusMillis(1)));
    Instant halfAnHour = T0.plusSeconds(1_800);
    clock = clock.looked(halfAnHour, "0:10000000");
    assertTrue(clock.isDue(halfAnHour));
    assertFalse(clock.isDue(halfAnHour.minusMillis(1)));
  }

  @Test
  void aLongFitIsFollowedByALongerRest() {
    Instant end = T0.plusSeconds(60);
    FitClock clock = FitClock.starting("").looked(T0, "0:1").fittedAt("0:1", T0, end);
    clock = clock.looked(end, "0:2");
    assertFalse(clock.isDue(end.plus(Duration.ofSeconds(239))));
    assertTrue(clock.isDue(end.plus(Duration.ofSeconds(240))));
  }

  @Test
  void eventsThatCameDuringAFitGetTheNext() {
    FitClock clock = FitClock.starting("").looked(T0, "0:1").looked(T0.plusSeconds(2), "0:2");
    clock = clock.fittedAt("0:1", T0, T0.plusSeconds(3));
    assertTrue(clock.isDue(T0.plusSeconds(60)));
  }

  @Test
  void aFitThatFailedIsTriedAgainAfterARest() {
    FitClock clock = FitClock.starting("").looked(T0, "0:1").failedAt(T0.plusSeconds(5));
    assertFalse(clock.isDue(T0.plusSeconds(34)));
    assertTrue(clock.isDue(T0.plusSeconds(35)));
  }
}
