package sealspan.assembly;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sealspan.assembly.Story.dc;
import static sealspan.assembly.Story.logged;
import static sealspan.assembly.Story.report;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sealspan.event.EventVoided;
import sealspan.event.LoggedEvent;
import sealspan.event.Subject;
import sealspan.event.TestPerformed;
import sealspan.event.TestPerformed.Phase;

class EventResolutionTest {
  private static final Instant T0 = Instant.parse("2024-01-01T00:00:00Z");

  private static TestPerformed with(String check1) {
    return report("2020-01-10", 1, Phase.AS_FOUND, dc(check1, "1.5")).event();
  }

  private static String check1(StandingEvent event) {
    return ((TestPerformed) event.event()).readings().get(0).value().entered();
  }

  /** Id to reading of what stands, the same for every order of the events. */
  private static TreeMap<String, String> standing(List<LoggedEvent> events) {
    TreeMap<String, String> expected = null;
    Random random = new Random(11);
    for (int i = 0; i < 40; i++) {
      List<LoggedEvent> shuffled = new ArrayList<>(events);
      shuffled.add(events.get(random.nextInt(events.size())));
      Collections.shuffle(shuffled, random);
      TreeMap<String, String> found = new TreeMap<>();
      for (StandingEvent event : EventResolution.of(shuffled).standing()) {
        found.put(event.id(), check1(event));
      }
      expected = expected == null ? found : expected;
      assertEquals(expected, found);
    }
    return expected;
  }

  @Test
  void aCopyWithTheSameContentIsCountedAndChangesNothing() {
    List<LoggedEvent> events =
        List.of(
            logged("t", with("1.5"), T0),
            logged("t", with("1.5"), T0),
            logged("t", with("1.5"), T0.plusSeconds(9)));
    EventResolution resolved = EventResolution.of(events);
    assertEquals(1, resolved.standing().size());
    assertEquals(T0, resolved.standing().get(0).logged().recordedAt());
    assertEquals(1, resolved.duplicates().get(Subject.assembly(Story.ASSEMBLY)));
    assertEquals(List.of(), resolved.conflicts());
  }

  @Test
  void ofTwoContentsTheEarliestRecordedHolds() {
    List<LoggedEvent> events =
        List.of(
            logged("t", with("0.5"), T0.plusSeconds(1)),
            logged("t", with("1.5"), T0),
            logged("t", with("1.6"), T0.plusSeconds(2)));
    assertEquals("{t=1.5}", standing(events).toString());
    assertEquals(2, EventResolution.of(events).conflicts().size());
  }

  @Test
  void twoContentsOfOneMomentAreStillDecidedAlike() {
    List<LoggedEvent> events = List.of(logged("t", with("0.5"), T0), logged("t", with("1.5"), T0));
    assertEquals("{t=0.5}", standing(events).toString());
  }

  @Test
  void theLastRecordedCorrectionHoldsUnderTheIdOfItsTarget() {
    Story story =
        new Story()
            .log("t", with("1.5"))
            .correct("c1", "t", with("1.6"))
            .correct("c2", "t", with("1.7"));
    assertEquals("{t=1.7}", standing(story.events()).toString());
  }

  @Test
  void aCorrectionMayCorrectACorrection() {
    Story story =
        new Story()
            .log("t", with("1.5"))
            .correct("c1", "t", with("1.6"))
            .correct("c2", "c1", with("1.7"));
    assertEquals("{t=1.7}", standing(story.events()).toString());
    assertEquals("{t=1.5}", standing(story.voided("v", "c1").events()).toString());
  }

  @Test
  void aVoidTakesBackAnEventWithItsCorrections() {
    Story story =
        new Story()
            .log("t", with("1.5"))
            .log("u", with("1.9"))
            .correct("c1", "t", with("1.6"))
            .voided("v", "t");
    assertEquals("{u=1.9}", standing(story.events()).toString());
    assertEquals(List.of(), EventResolution.of(story.events()).targetless());
  }

  @Test
  void aVoidOfACorrectionBringsBackWhatWasBefore() {
    Story story =
        new Story()
            .log("t", with("1.5"))
            .correct("c1", "t", with("1.6"))
            .correct("c2", "t", with("1.7"))
            .voided("v", "c2");
    assertEquals("{t=1.6}", standing(story.events()).toString());
  }

  @Test
  void aVoidOfAVoidBringsTheEventBack() {
    Story story = new Story().log("t", with("1.5")).voided("v1", "t").voided("v2", "v1");
    assertEquals("{t=1.5}", standing(story.events()).toString());
    assertEquals("{}", standing(story.voided("v3", "v2").events()).toString());
  }

  @Test
  void voidsInACircleTakeBackNothing() {
    Story story =
        new Story().log("t", with("1.5")).voided("v1", "v2").voided("v2", "v1").voided("w", "w");
    assertEquals("{t=1.5}", standing(story.events()).toString());
  }

  @Test
  void anAmendmentWithoutTargetIsSaidAndChangesNothing() {
    Story story =
        new Story().log("t", with("1.5")).correct("c", "lost", with("0.1")).voided("v", "gone");
    assertEquals("{t=1.5}", standing(story.events()).toString());
    assertEquals(2, EventResolution.of(story.events()).targetless().size());
    List<Finding> findings = story.history().findings();
    assertEquals(2, findings.size());
    assertTrue(
        findings.get(0).words().contains("lost") || findings.get(1).words().contains("lost"));
  }

  @Test
  void aCorrectionSettlesAConflict() {
    Story story = new Story().log("t", with("1.5")).log("t", with("0.5"));
    assertEquals(1, EventResolution.of(story.events()).conflicts().size());
    assertEquals(Finding.Kind.CONFLICT, story.history().findings().get(0).kind());
    story.correct("c", "t", with("0.5"));
    assertEquals(List.of(), EventResolution.of(story.events()).conflicts());
    assertEquals("{t=0.5}", standing(story.events()).toString());
  }

  @Test
  void aVoidOfAnotherSubjectsEventStillCounts() {
    LoggedEvent voided =
        logged(
            "v",
            new EventVoided("t", Subject.site("S-1"), Story.on("2024-01-01"), "clerk", "wrong"),
            T0);
    assertEquals(
        List.of(), EventResolution.of(List.of(logged("t", with("1"), T0), voided)).standing());
  }
}
