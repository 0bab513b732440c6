package sealspan.assembly;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import sealspan.event.AssemblyType;
import sealspan.event.RepairPerformed;
import sealspan.event.TestPerformed;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.TestPerformed.Purpose;

/** Makes the steps of a history: each test round is judged in the context of its day. */
final class RoundFold {
  private final AssemblyContext context;
  private final AcceptanceCriteria criteria;
  private final LocalDate installedOn;
  private final Set<String> visitsWithRound = new HashSet<>();
  private final Set<String> visitsWithRepair = new HashSet<>();

  private RoundFold(AssemblyContext context, AcceptanceCriteria criteria) {
    this.context = context;
    this.criteria = criteria;
    this.installedOn = context.firstInstalledOn();
  }

  /** The steps in canonical order. */
  static List<HistoryStep> of(
      List<StandingEvent> ordered, AssemblyContext context, AcceptanceCriteria criteria) {
    RoundFold fold = new RoundFold(context, criteria);
    List<HistoryStep> steps = new ArrayList<>(ordered.size());
    for (StandingEvent event : ordered) {
      TestRound round = null;
      if (event.event() instanceof TestPerformed test) {
        round = fold.round(event, test);
      } else if (event.event() instanceof RepairPerformed repair) {
        fold.visitsWithRepair.add(EventOrder.visitId(repair));
      }
      steps.add(new HistoryStep(event, round));
    }
    return steps;
  }

  private TestRound round(StandingEvent source, TestPerformed test) {
    LocalDate day = test.when().day();
    String visit = EventOrder.visitId(test);
    boolean repaired = visitsWithRepair.contains(visit);
    boolean again = !visitsWithRound.add(visit);
    Phase phase =
        test.phase() != null ? test.phase() : again || repaired ? Phase.AS_LEFT : Phase.AS_FOUND;
    Place place = context.place(day);
    AssemblyType type = context.type(day);
    Verdict verdict =
        Judgement.of(test, phase, type, context.mainlines(day), place.jurisdiction(), criteria);
    List<Finding> compliance = Compliance.of(source, test, place, context, criteria);
    return new TestRound(
        source,
        test,
        visit,
        phase,
        place,
        type,
        context.sizeInch(day),
        installedOn == null || day.isBefore(installedOn)
            ? null
            : (int) ChronoUnit.DAYS.between(installedOn, day),
        verdict,
        outcome(verdict, compliance),
        compliance,
        counting(test, phase, verdict, again, repaired),
        Compliance.calibratedOn(test, context));
  }

  private static Outcome outcome(Verdict verdict, List<Finding> compliance) {
    if (verdict.test() == Verdict.Testability.NOT_TESTABLE) {
      return Outcome.NOT_TESTABLE;
    }
    if (verdict.performance() == Result.FAILED) {
      return Outcome.FAILED;
    }
    if (!compliance.isEmpty() || verdict.installation() == Result.FAILED) {
      return Outcome.FAILED_COMPLIANCE;
    }
    return verdict.performance() == Result.PASSED ? Outcome.PASSED : Outcome.UNDECIDED;
  }

  private Counting counting(
      TestPerformed test, Phase phase, Verdict verdict, boolean again, boolean repaired) {
    if (again) {
      return Counting.RETEST;
    }
    if (phase == Phase.AS_LEFT || repaired) {
      return Counting.AS_LEFT;
    }
    if (verdict.test() == Verdict.Testability.NOT_TESTABLE) {
      return Counting.NOT_TESTABLE;
    }
    Purpose purpose = test.purpose();
    if (purpose == null && test.when().day().equals(installedOn)) {
      return Counting.INSTALLATION;
    }
    if (purpose != null && purpose != Purpose.ROUTINE) {
      return switch (purpose) {
        case INSTALLATION, REPLACEMENT, RELOCATION -> Counting.INSTALLATION;
        default -> Counting.NOT_ROUTINE;
      };
    }
    return verdict.performance() == Result.PASSED || verdict.performance() == Result.FAILED
        ? Counting.COUNTED
        : Counting.UNDECIDED;
  }
}
