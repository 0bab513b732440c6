package sealspan.assembly;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import sealspan.event.AssemblyInstalled;
import sealspan.event.Reading;
import sealspan.event.TestPerformed;
import sealspan.event.TestPerformed.Conduct;
import sealspan.event.TestPerformed.Discharge;
import sealspan.event.TestPerformed.IssuedVerdict;
import sealspan.event.TestPerformed.Phase;

/** Checks of what a report says of itself. Each takes one round. */
final class ReportChecks {
  private ReportChecks() {}

  static void all(TestRound round, AssemblyContext context, FindingLog log) {
    passClaimedBelowLimit(round, log);
    failedWithinLimits(round, log);
    flushedToPass(round, log);
    installationNotMet(round, log);
    reliefDischarges(round, log);
    notTestable(round, log);
    typeNotTested(round, log);
    notSigned(round, log);
    componentNotOfType(round, context, log);
    serialDiffers(round, context, log);
    calibratedAfterTest(round, log);
  }

  /** A claimed pass with a reading below the limit is a failure (definitions). */
  private static void passClaimedBelowLimit(TestRound round, FindingLog log) {
    if (round.test().verdictIssued() == IssuedVerdict.PASSED
        && round.verdict().leftAs() == Result.FAILED) {
      log.add(
          Finding.Kind.COUNTS_AS_FAILED,
          "pass claimed below limit",
          round.source(),
          "The report says passed, but " + String.join("; ", round.verdict().reasons()) + ".");
    }
  }

  private static void failedWithinLimits(TestRound round, FindingLog log) {
    if (round.test().verdictIssued() == IssuedVerdict.FAILED && round.outcome() == Outcome.PASSED) {
      log.add(
          Finding.Kind.SUSPICIOUS,
          "failed within limits",
          round.source(),
          "The report says failed, but every required reading met its limit."
              + " Ask the tester what failed.");
    }
  }

  /** Flushing to pass is a failure (Washington State Department of Health, minutes of Jan 2019). */
  private static void flushedToPass(TestRound round, FindingLog log) {
    if (round.phase() == Phase.AS_FOUND && Boolean.TRUE.equals(round.test().flushedToPass())) {
      log.add(
          Finding.Kind.COUNTS_AS_FAILED,
          "flushed to pass",
          round.source(),
          "The assembly passed only after it was flushed; it had failed as found.");
    }
  }

  /** An improper installation fails the assembly (City of Austin, instructions to testers). */
  private static void installationNotMet(TestRound round, FindingLog log) {
    List<String> unmet = new ArrayList<>(0);
    round
        .test()
        .installationChecks()
        .forEach(
            check -> {
              if (!check.met()) {
                unmet.add(check.name());
              }
            });
    if (!unmet.isEmpty()) {
      log.add(
          Finding.Kind.COUNTS_AS_FAILED,
          "installation not met",
          round.source(),
          "Not met at the installation: " + String.join(", ", unmet) + ".");
    }
  }

  /** A continually discharging relief valve counts as failed (Crossville, Tennessee). */
  private static void reliefDischarges(TestRound round, FindingLog log) {
    if (round.test().reliefDischarge() == Discharge.CONTINUOUS) {
      log.add(
          Finding.Kind.COUNTS_AS_FAILED,
          "relief valve discharges",
          round.source(),
          "The relief valve discharged continuously; the assembly counts as failed.");
    }
  }

  /** Some programmes count what cannot be tested as failed (Crossville, Tennessee). */
  private static void notTestable(TestRound round, FindingLog log) {
    if (round.test().conduct() == Conduct.NOT_TESTABLE) {
      log.add(
          Finding.Kind.COUNTS_AS_FAILED,
          "could not be tested",
          round.source(),
          "The assembly could not be tested. It is kept apart from passed and failed here;"
              + " some programmes count it as failed.");
    }
  }

  private static void typeNotTested(TestRound round, FindingLog log) {
    if (round.type() != null && !AssemblyParts.isTestable(round.type())) {
      log.add(
          Finding.Kind.INVALID,
          "type not tested",
          round.source(),
          "A test report of an assembly of type " + round.type() + ", which is only inspected.");
    }
  }

  private static void notSigned(TestRound round, FindingLog log) {
    if (Boolean.FALSE.equals(round.test().signedByTester())) {
      log.add(
          Finding.Kind.INVALID,
          "not signed",
          round.source(),
          "The tester did not sign the report.");
    }
  }

  private static void componentNotOfType(TestRound round, AssemblyContext context, FindingLog log) {
    if (round.type() == null) {
      return;
    }
    LocalDate day = round.test().when().day();
    TreeSet<String> foreign = new TreeSet<>();
    for (Reading reading : round.test().readings()) {
      if (!AssemblyParts.has(round.type(), context.mainlines(day), reading.at())) {
        foreign.add(Words.of(reading.at()));
      }
    }
    if (!foreign.isEmpty()) {
      log.add(
          Finding.Kind.INVALID,
          "component not of the type",
          round.source(),
          "An assembly of type "
              + round.type()
              + " has no "
              + String.join(", no ", foreign)
              + ", yet the report has a reading of it.");
    }
  }

  private static void serialDiffers(TestRound round, AssemblyContext context, FindingLog log) {
    TestPerformed test = round.test();
    AssemblyInstalled unit = context.installation(test.when().day());
    if (test.serialSeen() == null || unit == null || unit.serial() == null) {
      return;
    }
    String seen = test.serialSeen().trim();
    boolean bypass =
        unit.bypassSerial() != null && seen.equalsIgnoreCase(unit.bypassSerial().trim());
    if (!bypass && !seen.equalsIgnoreCase(unit.serial().trim())) {
      log.add(
          Finding.Kind.INVALID,
          "serial differs",
          round.source(),
          "The serial seen on the unit is "
              + seen
              + ", the serial on record is "
              + unit.serial().trim()
              + ". If the unit was replaced, record its removal and the new unit.");
    }
  }

  private static void calibratedAfterTest(TestRound round, FindingLog log) {
    LocalDate calibrated = round.test().gaugeCalibratedOn();
    if (calibrated != null && calibrated.isAfter(round.test().when().day())) {
      log.add(
          Finding.Kind.SUSPICIOUS,
          "calibrated after the test",
          round.source(),
          "The report gives "
              + calibrated
              + " as day of the gauge's last calibration,"
              + " which is after the test.");
    }
  }
}
