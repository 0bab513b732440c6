package sealspan.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class SendPaceTest {
  private final SendPace pace = new SendPace();

  @Test
  void restsThreeTimesAsLongAsItWorkedWithinLimits() {
    assertEquals(100, pace.pauseMillis());
    pace.took(2_000_000_000L);
    assertEquals(6_000, pace.pauseMillis());
    pace.took(60_000_000_000L);
    assertEquals(30_000, pace.pauseMillis());
    pace.took(1_000);
    assertEquals(100, pace.pauseMillis());
  }

  @Test
  void whatPeopleRecordIsNotHeld() {
    assertFalse(pace.holds(1_000));
    arrive(50);
    assertFalse(pace.holds(2_000));
  }

  @Test
  void aFloodIsHeldUntilItIsOver() {
    assertFalse(pace.holds(1_000));
    arrive(300);
    assertTrue(pace.holds(1_100));
    arrive(300);
    assertTrue(pace.holds(1_200));
    arrive(5);
    assertTrue(pace.holds(1_300), "the reading may only falter");
    assertTrue(pace.holds(3_199));
    assertFalse(pace.holds(3_200));
    assertFalse(pace.holds(3_300));
  }

  @Test
  void aFloodThatDoesNotEndIsHeldForAQuarterOfAnHourAtATime() {
    assertFalse(pace.holds(1_000));
    long sent =
        IntStream.rangeClosed(1, 3_000)
            .filter(
                second -> {
                  arrive(2_000);
                  return !pace.holds(1_000 + 1_000L * second);
                })
            .count();
    assertEquals(3, sent);
  }

  private void arrive(int events) {
    for (int i = 0; i < events; i++) {
      pace.arrived();
    }
  }
}
