package sealspan.study.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sealspan.avro.EventCodec;
import sealspan.event.AssemblyEvent;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyType;
import sealspan.event.ComponentAt;
import sealspan.event.EventCorrected;
import sealspan.event.LoggedEvent;
import sealspan.event.ServiceStateChanged;
import sealspan.event.TestPerformed;

class PracticeFleetTest {
  private static final PracticeParameters USUAL = PracticeParameters.usual(20_160_101, 400);

  @Test
  void sameParametersGiveTheSameEvents() {
    assertEquals(
        new PracticeFleet(USUAL).events().toList(), new PracticeFleet(USUAL).events().toList());
    assertNotEquals(
        new PracticeFleet(USUAL).events().toList(),
        new PracticeFleet(PracticeParameters.usual(1, 400)).events().toList());
  }

  @Test
  void neitherThreadsNorOrderChangeAnything() {
    PracticeFleet fleet = new PracticeFleet(USUAL);
    List<LoggedEvent> events = fleet.events().toList();
    assertEquals(events, fleet.events().parallel().toList());
    List<List<LoggedEvent>> forwards = IntStream.range(0, 100).mapToObj(fleet::eventsAt).toList();
    List<List<LoggedEvent>> backwards = new ArrayList<>();
    for (int i = 99; i >= 0; i--) {
      backwards.add(0, fleet.eventsAt(i));
    }
    assertEquals(forwards, backwards);
  }

  @Test
  void aSmallFleetIsTheBeginningOfALargeOne() {
    List<LoggedEvent> small = new PracticeFleet(USUAL.ofSize(10)).events().toList();
    List<LoggedEvent> large = new PracticeFleet(USUAL.ofSize(100)).events().toList();
    assertTrue(small.size() > 100);
    assertEquals(small, large.subList(0, small.size()));
  }

  @Test
  void everyEventHasAWireForm() {
    Set<Class<?>> kinds = new HashSet<>();
    new PracticeFleet(USUAL)
        .events()
        .forEach(
            logged -> {
              AssemblyEvent event = logged.event();
              assertEquals(event, EventCodec.decode(EventCodec.encode(event)));
              kinds.add(event.getClass());
            });
    assertEquals(Set.of(AssemblyEvent.class.getPermittedSubclasses()), kinds);
  }

  @Test
  void allTypesStandThereAndAllTestableOnesAreTested() {
    Set<AssemblyType> installed = EnumSet.noneOf(AssemblyType.class);
    Set<AssemblyType> testedWithBypass = EnumSet.noneOf(AssemblyType.class);
    PracticeFleet fleet = new PracticeFleet(USUAL);
    for (int position = 0; position < 400; position++) {
      AssemblyType type = null;
      for (LoggedEvent logged : fleet.eventsAt(position)) {
        if (logged.event() instanceof AssemblyInstalled event) {
          type = event.type();
          installed.add(type);
        }
        if (logged.event() instanceof TestPerformed test
            && test.readings().stream().anyMatch(r -> r.at().line() == ComponentAt.Line.BYPASS)) {
          testedWithBypass.add(type);
        }
        if (logged.event() instanceof ServiceStateChanged) {
          assertTrue(type == AssemblyType.PVB || type == AssemblyType.SVB, "lay-up of a " + type);
        }
        if (type == AssemblyType.AVB || type == AssemblyType.AG) {
          assertTrue(!(logged.event() instanceof TestPerformed), type + " is never tested");
        }
      }
    }
    assertEquals(EnumSet.allOf(AssemblyType.class), installed);
    assertEquals(
        EnumSet.of(
            AssemblyType.DCDA, AssemblyType.DCDA_II, AssemblyType.RPDA, AssemblyType.RPDA_II),
        testedWithBypass);
  }

  @Test
  void aCorrectionNamesTheEventThatItPutsRight() {
    Set<String> ids = new HashSet<>();
    List<String> targets = new ArrayList<>();
    new PracticeFleet(USUAL)
        .events()
        .forEach(
            logged -> {
              ids.add(logged.id());
              if (logged.event() instanceof EventCorrected corrected) {
                targets.add(corrected.targetEventId());
              }
            });
    assertTrue(targets.size() > 20, "corrections: " + targets.size());
    assertTrue(ids.containsAll(targets));
  }

  @Test
  void aSealThatNeverFailsReadsTheSameEveryYear() {
    // By hand: new on 2012-01-01, double check, no drift, no error: 1.9 at both checks, always.
    PracticeParameters parameters =
        PracticeParameters.plain(7, 1, TrueWear.plain(1, 1e12), TrueRepairs.plain(1, 0))
            .overYears(4);
    List<TestPerformed> tests =
        new PracticeFleet(parameters)
            .eventsAt(0).stream()
                .filter(e -> e.event() instanceof TestPerformed)
                .map(e -> (TestPerformed) e.event())
                .toList();
    assertEquals(TestPerformed.Purpose.INSTALLATION, tests.get(0).purpose());
    assertTrue(tests.size() == 4 || tests.size() == 5, "one a year after installation: " + tests);
    for (TestPerformed test : tests) {
      assertEquals(
          List.of("1.9", "1.9"), test.readings().stream().map(r -> r.value().entered()).toList());
      assertEquals(TestPerformed.IssuedVerdict.PASSED, test.verdictIssued());
    }
  }

  @Test
  void theTruthIsWrittenWithItsMeaning() {
    List<String> lines = TruthText.parameters(USUAL);
    assertTrue(lines.contains("wear.checkShape,1.8,Weibull shape of check seals"));
    assertTrue(lines.contains("seed,20160101,seed of all draws"));
    long failures = new PracticeFleet(USUAL).truths().mapToLong(t -> t.failures().size()).sum();
    assertEquals(failures + 1, TruthText.failures(new PracticeFleet(USUAL)).count());
  }
}
