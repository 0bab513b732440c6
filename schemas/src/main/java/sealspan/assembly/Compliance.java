package sealspan.assembly;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.event.GaugeCalibrated;
import sealspan.event.TestPerformed;
import sealspan.event.TesterCertified;

/**
 * What makes a report fail compliance apart from the installation: an expired gauge or certificate.
 * What was not recorded is not held against a report.
 */
final class Compliance {
  private Compliance() {}

  /** The findings for one round; empty where nothing is known against it. */
  static List<Finding> of(
      StandingEvent source,
      TestPerformed test,
      Place place,
      AssemblyContext context,
      AcceptanceCriteria criteria) {
    List<Finding> findings = new ArrayList<>(0);
    String gauge = gauge(test, place, context, criteria);
    if (gauge != null) {
      findings.add(finding(source, test, "gauge calibration expired", gauge));
    }
    String certificate = certificate(test, context);
    if (certificate != null) {
      findings.add(finding(source, test, "certificate not valid", certificate));
    }
    return findings;
  }

  private static String gauge(
      TestPerformed test, Place place, AssemblyContext context, AcceptanceCriteria criteria) {
    LocalDate day = test.when().day();
    LocalDate calibrated = test.gaugeCalibratedOn();
    LocalDate validUntil = null;
    if (calibrated != null && calibrated.isAfter(day)) {
      calibrated = null;
    }
    if (test.gaugeId() != null) {
      for (GaugeCalibrated each : context.calibrations(test.gaugeId())) {
        LocalDate on = each.when().day();
        if (!on.isAfter(day) && (calibrated == null || !on.isBefore(calibrated))) {
          calibrated = on;
          validUntil = each.validUntil();
        }
      }
    }
    if (calibrated == null) {
      return null;
    }
    String rule = "as the calibration says";
    if (validUntil == null) {
      ProgrammeRule interval =
          criteria.rule(ProgrammeRule.Subject.CALIBRATION_INTERVAL, place.jurisdiction(), day);
      if (interval == null) {
        return null;
      }
      validUntil = calibrated.plusMonths(interval.amount().longValue());
      rule = interval.amount().toPlainString() + " months (" + interval.source() + ")";
    }
    return day.isAfter(validUntil)
        ? "The gauge was calibrated on "
            + calibrated
            + ", which counted until "
            + validUntil
            + ", "
            + rule
            + "; the test was on "
            + day
            + "."
        : null;
  }

  /** Day of the gauge's last calibration known by the day of the test; null for none. */
  static LocalDate calibratedOn(TestPerformed test, AssemblyContext context) {
    LocalDate day = test.when().day();
    LocalDate calibrated = test.gaugeCalibratedOn();
    if (calibrated != null && calibrated.isAfter(day)) {
      calibrated = null;
    }
    if (test.gaugeId() != null) {
      for (GaugeCalibrated each : context.calibrations(test.gaugeId())) {
        LocalDate on = each.when().day();
        if (!on.isAfter(day) && (calibrated == null || on.isAfter(calibrated))) {
          calibrated = on;
        }
      }
    }
    return calibrated;
  }

  private static String certificate(TestPerformed test, AssemblyContext context) {
    LocalDate day = test.when().day();
    LocalDate lastValid = null;
    LocalDate firstValid = null;
    if (test.testerId() != null) {
      for (TesterCertified each : context.certificates(test.testerId())) {
        LocalDate from = each.when().day();
        LocalDate until = each.validUntil();
        if (from.isAfter(day)) {
          firstValid = firstValid == null ? from : firstValid;
        } else if (until == null || !until.isBefore(day)) {
          return null;
        } else if (lastValid == null || until.isAfter(lastValid)) {
          lastValid = until;
        }
      }
    }
    if (lastValid == null && firstValid == null) {
      lastValid = test.certificateValidUntil();
      if (lastValid == null || !lastValid.isBefore(day)) {
        return null;
      }
    }
    return lastValid != null
        ? "The tester's certificate was valid until " + lastValid + "; the test was on " + day + "."
        : "The tester's certificate is valid from "
            + firstValid
            + "; the test was on "
            + day
            + ", before that.";
  }

  private static Finding finding(
      StandingEvent source, TestPerformed test, String check, String words) {
    return new Finding(
        Finding.Kind.INVALID,
        check,
        source.id(),
        test.when().day(),
        test.reportNumber(),
        test.testerId(),
        words);
  }
}
