package sealspan.assembly;

import java.math.BigDecimal;
import java.util.TreeSet;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.Measure;
import sealspan.event.Observation;
import sealspan.event.Reading;
import sealspan.event.TestPerformed;
import sealspan.event.TestPerformed.Discharge;
import sealspan.event.Unit;

/** Checks of readings that contradict each other or the hydraulics. Each takes one round. */
final class ReadingChecks {
  private ReadingChecks() {}

  static void all(TestRound round, AcceptanceCriteria criteria, FindingLog log) {
    TreeSet<ComponentAt> reliefs = new TreeSet<>();
    for (Reading reading : round.test().readings()) {
      if (reading.at().component() == Component.RELIEF_VALVE) {
        reliefs.add(reading.at());
      }
    }
    for (ComponentAt relief : reliefs) {
      reliefAboveCheck(round, relief, log);
      checkLeakedReliefHeld(round, relief, log);
      equalChecks(round, relief, log);
    }
    bufferWrong(round, log);
    offScale(round, criteria, log);
    numbersPastLeakingShutoff(round, log);
    confirmationDiffers(round, log);
  }

  /**
   * Relief valve opening at or above the drop across check 1: it would be discharging with no flow
   * (Southern California chapter article 5).
   */
  private static void reliefAboveCheck(TestRound round, ComponentAt relief, FindingLog log) {
    Reading opening = measured(round.test(), relief, Measure.OPENING_POINT);
    Reading drop = measured(round.test(), beside(relief, Component.CHECK1), Measure.STATIC_DROP);
    if (opening != null && drop != null && base(opening).compareTo(base(drop)) >= 0) {
      log.add(
          Finding.Kind.SUSPICIOUS,
          "relief valve not below check 1",
          round.source(),
          "The relief valve opened at "
              + Words.of(opening.value())
              + " and check 1 held "
              + Words.of(drop.value())
              + "; such a relief valve would discharge all the time.");
    }
  }

  private static void checkLeakedReliefHeld(TestRound round, ComponentAt relief, FindingLog log) {
    boolean leaked = false;
    boolean held = round.test().reliefDischarge() == Discharge.NONE;
    ComponentAt check1 = beside(relief, Component.CHECK1);
    for (Reading reading : round.test().readings()) {
      leaked |= reading.at().equals(check1) && reading.observation() == Observation.LEAKED;
      held |= reading.at().equals(relief) && reading.observation() == Observation.CLOSED_TIGHT;
    }
    if (leaked && held) {
      log.add(
          Finding.Kind.SUSPICIOUS,
          "check 1 leaked, relief valve held",
          round.source(),
          "Check 1 leaked, yet the relief valve did not discharge; one of the two is wrong.");
    }
  }

  private static void equalChecks(TestRound round, ComponentAt relief, FindingLog log) {
    Reading first = measured(round.test(), beside(relief, Component.CHECK1), Measure.STATIC_DROP);
    Reading second =
        measured(round.test(), beside(relief, Component.CHECK2), Measure.DIRECTION_OF_FLOW);
    if (first != null && second != null && base(first).compareTo(base(second)) == 0) {
      log.add(
          Finding.Kind.SUSPICIOUS,
          "check 1 equals check 2",
          round.source(),
          "Both checks read "
              + Words.of(first.value())
              + "; the checks of a reduced pressure assembly have springs of different strength.");
    }
  }

  /** The buffer is the drop across check 1 less the opening of the relief valve. */
  private static void bufferWrong(TestRound round, FindingLog log) {
    for (Reading buffer : round.test().readings()) {
      if (buffer.measure() != Measure.BUFFER || buffer.observation() != Observation.MEASURED) {
        continue;
      }
      Reading drop =
          measured(round.test(), beside(buffer.at(), Component.CHECK1), Measure.STATIC_DROP);
      Reading opening =
          measured(
              round.test(), beside(buffer.at(), Component.RELIEF_VALVE), Measure.OPENING_POINT);
      if (drop == null || opening == null) {
        continue;
      }
      BigDecimal right = base(drop).subtract(base(opening));
      if (right.compareTo(base(buffer)) != 0) {
        log.add(
            Finding.Kind.SUSPICIOUS,
            "buffer is not the difference",
            round.source(),
            "The report gives a buffer of "
                + Words.of(buffer.value())
                + "; check 1 less relief valve is "
                + ReadingUnits.shown(right, buffer.value().unit())
                + ".");
      }
    }
  }

  private static void offScale(TestRound round, AcceptanceCriteria criteria, FindingLog log) {
    ProgrammeRule range =
        criteria.gaugeRule(
            ProgrammeRule.Subject.GAUGE_RANGE,
            round.place().jurisdiction(),
            round.test().when().day());
    if (range == null) {
      return;
    }
    for (Reading reading : round.test().readings()) {
      if (AssemblyParts.isTested(reading.at().component())
          && reading.observation() == Observation.MEASURED
          && ReadingUnits.comparable(reading.value().unit(), range.unit())
          && base(reading).compareTo(ReadingUnits.inBase(range.amount(), range.unit())) > 0) {
        log.add(
            Finding.Kind.SUSPICIOUS,
            "reading off the scale",
            round.source(),
            LimitCheck.words(reading)
                + "; a gauge reads to "
                + range.amount().toPlainString()
                + " "
                + ReadingUnits.words(range.unit())
                + " ("
                + range.source()
                + ").");
      }
    }
  }

  private static void numbersPastLeakingShutoff(TestRound round, FindingLog log) {
    LimitCheck check = new LimitCheck(round.test(), null);
    for (Reading reading : round.test().readings()) {
      if (AssemblyParts.isTested(reading.at().component())
          && reading.observation() == Observation.MEASURED
          && check.isInvalid(reading.at())) {
        log.add(
            Finding.Kind.INVALID,
            "readings past a leaking shutoff",
            round.source(),
            "Shutoff 2 leaked, yet there are readings and no step is recorded that makes up for it.");
        return;
      }
    }
  }

  private static void confirmationDiffers(TestRound round, FindingLog log) {
    Reading second = round.test().confirmation();
    if (second == null) {
      return;
    }
    for (JudgedReading judged : round.verdict().readings()) {
      Criterion limit = judged.criterion();
      boolean same =
          limit != null
              && limit.derived() == null
              && judged.reading().at().equals(second.at())
              && judged.reading().measure() == second.measure();
      if (same) {
        Result again = LimitCheck.compare(second, limit);
        if (again != Result.UNKNOWN
            && judged.result() != Result.UNKNOWN
            && again != judged.result()) {
          log.add(
              Finding.Kind.SUSPICIOUS,
              "confirmation differs",
              round.source(),
              "The reading says "
                  + said(judged.result())
                  + ", its confirmation "
                  + said(again)
                  + "; the reading counts.");
        }
      }
    }
  }

  private static String said(Result result) {
    return result == Result.PASSED ? "passed" : "failed";
  }

  private static ComponentAt beside(ComponentAt at, Component component) {
    return new ComponentAt(at.line(), at.lineNumber(), component);
  }

  private static Reading measured(TestPerformed test, ComponentAt at, Measure measure) {
    for (Reading reading : test.readings()) {
      if (reading.observation() == Observation.MEASURED
          && reading.measure() == measure
          && reading.at().equals(at)
          && ReadingUnits.comparable(reading.value().unit(), Unit.PSI)) {
        return reading;
      }
    }
    return null;
  }

  private static BigDecimal base(Reading reading) {
    return ReadingUnits.inBase(reading.value());
  }
}
