package sealspan.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import org.junit.jupiter.api.Test;

class TimePerEventTest {
  /** R 4.2.2, poisson.test(3, 10)$conf.int: .06186721 to .8767273. */
  @Test
  void isTheReciprocalOfTheExactRate() {
    TimePerEvent time = TimePerEvent.of(3, 10);
    assertEquals(10 / 3.0, time.perEvent(), 1e-12);
    assertEquals(1 / .8767273, time.lower(), 1e-6);
    assertEquals(1 / .06186721, time.upper(), 1e-5);
  }

  /** By hand: no event in 10 years; the rate is at most -ln(.025) / 10. */
  @Test
  void withoutEventsHasALowerEndAlone() {
    TimePerEvent time = TimePerEvent.of(0, 10);
    assertNull(time.perEvent());
    assertEquals(10 / -Math.log(.025), time.lower(), 1e-12);
    assertNull(time.upper());
  }
}
