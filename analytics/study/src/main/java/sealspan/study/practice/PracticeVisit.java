package sealspan.study.practice;

import java.util.List;
import sealspan.event.RepairItem;
import sealspan.event.TestPerformed;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.TestPerformed.Purpose;
import sealspan.study.practice.TestRound.Extent;

/** One visit to one unit: the test as found, repairs, and retests until it passes. */
final class PracticeVisit {
  /** How a visit ended. */
  enum Ending {
    DONE,
    LEFT_FAILED,
    ASSEMBLY_TO_BE_REPLACED
  }

  private static final int MOST_ATTEMPTS = 6;
  private static final double OLD_YEARS = 20;
  private static final double REBUILD_YEARS = 5;

  private final PracticeUnit unit;
  private final Crew crew;
  private final int day;
  private final int visitNumber;
  private final VisitPaper paper;
  private final TruthNotes truth;
  private final double biasPsi;

  PracticeVisit(
      PracticeUnit unit, Crew crew, int day, int visitNumber, VisitPaper paper, TruthNotes truth) {
    this.unit = unit;
    this.crew = crew;
    this.day = day;
    this.visitNumber = visitNumber;
    this.paper = paper;
    this.truth = truth;
    this.biasPsi = crew.biasPsi(crew.calibration(day));
    for (PartLife part : unit.parts) {
      part.advance(day);
    }
  }

  /** The test as found, and all that follows from it. */
  Ending asFound(Purpose purpose) {
    ReportHabits habits = unit.parameters.reports();
    TrueRepairs repairs = unit.parameters.repairs();
    Draws draws = unit.draws(Draws.Purpose.VISIT, 0, visitNumber);
    final boolean notTestable = draws.happens(habits.notTestable());
    final boolean copies = crew.copying() && draws.happens(0.5);
    final boolean claims = draws.happens(habits.claimedPass());
    final boolean flushes = draws.happens(repairs.flushedToPass());
    final boolean replaces = draws.happens(repairs.assemblyReplaced());
    final boolean leaves = draws.happens(repairs.leftFailed());
    truth.visited(unit, day);
    if (notTestable) {
      paper.notTestable(purpose);
      return Ending.DONE;
    }
    if (copies && unit.lastPassed != null) {
      paper.test(Phase.AS_FOUND, purpose, unit.lastPassed);
      return Ending.DONE;
    }
    Extent extent = crew.stopping() ? Extent.UNTIL_FIRST_DEFICIENCY : Extent.FULL;
    TestRound round = round(0, extent);
    if (round.passed()) {
      unit.lastPassed = round;
      paper.test(Phase.AS_FOUND, purpose, round);
      return rebuildIsDue() ? rebuild() : Ending.DONE;
    }
    if (claims) {
      paper.test(Phase.AS_FOUND, purpose, round, TestPerformed.IssuedVerdict.PASSED, null);
      return Ending.DONE;
    }
    if (flushes && isFouledOnly(round)) {
      return flush(purpose);
    }
    paper.test(Phase.AS_FOUND, purpose, round);
    if (replaces && unit.ageYears(day) > OLD_YEARS) {
      return Ending.ASSEMBLY_TO_BE_REPLACED;
    }
    if (leaves) {
      unit.leftFailed = round;
      return Ending.LEFT_FAILED;
    }
    return repairUntilPassed(round);
  }

  /** A second visit to a unit that was left failed: repair first, then the test. */
  Ending repairLeftFailed() {
    TestRound round = unit.leftFailed;
    unit.leftFailed = null;
    return repairUntilPassed(round);
  }

  /** The test of a unit that was put in on this day. */
  void installation(Purpose purpose) {
    TestRound round = round(0, Extent.FULL);
    if (round.passed()) {
      unit.lastPassed = round;
    }
    paper.test(Phase.AS_LEFT, purpose, round);
  }

  private TestRound round(int number, Extent extent) {
    long counter = 10L * visitNumber + number;
    truth.read(unit, day);
    return TestRound.of(unit, day, biasPsi, extent, unit.draws(Draws.Purpose.ROUND, 0, counter));
  }

  private Ending repairUntilPassed(TestRound found) {
    TestRound round = found;
    for (int attempt = 1; attempt <= MOST_ATTEMPTS; attempt++) {
      RepairBench bench = new RepairBench(unit, day, visitNumber, attempt, truth);
      List<RepairItem> items = bench.repair(round, attempt);
      paper.repair(items);
      round = round(attempt, Extent.FULL);
      paper.test(Phase.AS_LEFT, Purpose.AFTER_REPAIR, round);
      if (round.passed()) {
        unit.lastPassed = round;
        return Ending.DONE;
      }
    }
    unit.leftFailed = round;
    return Ending.LEFT_FAILED;
  }

  private boolean rebuildIsDue() {
    TrueRepairs repairs = unit.parameters.repairs();
    Draws lasting = unit.draws(Draws.Purpose.UNIT, 1, 0);
    return lasting.happens(repairs.scheduledShare())
        && day - unit.rebuiltOn >= REBUILD_YEARS * PracticeParameters.DAYS_A_YEAR;
  }

  private Ending rebuild() {
    unit.rebuiltOn = day;
    RepairBench bench = new RepairBench(unit, day, visitNumber, 0, truth);
    paper.repair(bench.rebuild());
    TestRound round = round(9, Extent.FULL);
    paper.test(Phase.AS_LEFT, Purpose.AFTER_REPAIR, round);
    return round.passed() ? Ending.DONE : repairUntilPassed(round);
  }

  private boolean isFouledOnly(TestRound round) {
    return round.failing().stream().allMatch(p -> p.stateOn(day) == SealState.FOULED);
  }

  /** Flushing until it passes; the only report is of the passing round. */
  private Ending flush(Purpose purpose) {
    for (PartLife part : unit.parts) {
      if (part.stateOn(day) == SealState.FOULED) {
        truth.flushed(unit, part, day);
        part.flush(day);
      }
    }
    TestRound round = round(8, Extent.FULL);
    Boolean passedByFlushing = round.passed() ? Boolean.TRUE : null;
    TestPerformed.IssuedVerdict verdict =
        round.passed() ? TestPerformed.IssuedVerdict.PASSED : TestPerformed.IssuedVerdict.FAILED;
    paper.test(Phase.AS_FOUND, purpose, round, verdict, passedByFlushing);
    return round.passed() ? Ending.DONE : repairUntilPassed(round);
  }
}
