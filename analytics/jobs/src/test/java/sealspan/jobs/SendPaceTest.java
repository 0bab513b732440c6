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
    assertEquals(1_100, pace.dueMillis(1_000));
    pace.took(2_000_000_000L);
    assertEquals(7_000, pace.dueMillis(1_000));
    pace.took(60_000_000_000L);
    assertEquals(31_000, pace.dueMillis(1_000));
    pace.took(1_000);
    assertEquals(1_100, pace.dueMillis(1_000));
  }

  @Test
  void whatPeopleRecordIsNotHeld() {
    assertFalse(heldAfter(1_000, 1));
    assertFalse(heldAfter(5_000, 50));
  }

  @Test
  void aFloodIsHeldFromItsFirstMomentUntilItIsOver() {
    assertTrue(heldAfter(1_000, 300), "also where nothing came before");
    assertTrue(heldAfter(1_100, 300));
    assertTrue(heldAfter(1_200, 5), "the reading may only falter");
    assertTrue(heldAfter(2_900, 0));
    assertFalse(heldAfter(3_100, 0));
    assertFalse(heldAfter(3_200, 1));
  }

  @Test
  void aFloodThatDoesNotEndIsHeldForAQuarterOfAnHourAtATime() {
    long sent = IntStream.rangeClosed(1, 30_000).filter(i -> !heldAfter(100L * i, 200)).count();
    assertEquals(3, sent);
  }

  /** Begins to wait, takes in so many events, and tells whether they are held when it is due. */
  private boolean heldAfter(long nowMillis, int events) {
    long due = pace.dueMillis(nowMillis);
    for (int i = 0; i < events; i++) {
      pace.arrived();
    }
    return pace.holds(due);
  }
}
