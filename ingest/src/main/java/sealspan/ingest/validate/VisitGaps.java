package sealspan.ingest.validate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import sealspan.assembly.AssemblyParts;
import sealspan.event.AssemblyEvent;
import sealspan.event.AssemblyType;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.LoggedEvent;
import sealspan.event.Measure;
import sealspan.event.Observation;
import sealspan.event.Reading;
import sealspan.event.RepairPerformed;
import sealspan.event.TestPerformed;
import sealspan.event.TestPerformed.Conduct;
import sealspan.event.TestPerformed.IssuedVerdict;
import sealspan.event.TestPerformed.Phase;

/**
 * What a visit leaves open, in words, so that the tester can fill it in while at the assembly. None
 * of it keeps a visit from being recorded, and none of it is a verdict.
 */
public final class VisitGaps {
  private final AssemblyType type;
  private final int mainlines;
  private final List<String> gaps = new ArrayList<>();

  private VisitGaps(AssemblyType type, int mainlines) {
    this.type = type;
    this.mainlines = mainlines;
  }

  /**
   * The gaps of a visit.
   *
   * @param events the events of the visit
   * @param type type of the assembly; null where it is not known
   * @param mainlines mainlines in parallel inside the assembly, from 1
   */
  public static List<String> of(List<LoggedEvent> events, AssemblyType type, int mainlines) {
    VisitGaps gaps = new VisitGaps(type, mainlines);
    TestPerformed found = null;
    TestPerformed left = null;
    RepairPerformed repair = null;
    for (LoggedEvent logged : events) {
      AssemblyEvent event = logged.event();
      if (event instanceof TestPerformed test) {
        gaps.ofRound(test);
        found = test.phase() == Phase.AS_FOUND ? test : found;
        left = test.phase() == Phase.AS_LEFT ? test : left;
      } else if (event instanceof RepairPerformed performed) {
        gaps.ofRepair(performed);
        repair = performed;
      }
    }
    gaps.ofVisit(found, repair, left);
    return List.copyOf(gaps.gaps);
  }

  private void ofVisit(TestPerformed found, RepairPerformed repair, TestPerformed left) {
    if (repair != null && found == null) {
      gaps.add("The repair has no as-found test before it; test before any repair or flushing.");
    }
    if (repair != null && left == null) {
      gaps.add("The repair has no as-left test after it; the assembly counts as not passed.");
    }
    if (found != null
        && found.verdictIssued() == IssuedVerdict.FAILED
        && repair == null
        && left == null) {
      gaps.add("The as-found test failed, and neither repair nor as-left test is recorded.");
    }
    if (left != null && left.when().day().isBefore((found == null ? left : found).when().day())) {
      gaps.add("The as-left test is dated before the as-found test.");
    }
  }

  private void ofRound(TestPerformed test) {
    String round = test.phase() == Phase.AS_FOUND ? "As found: " : "As left: ";
    missing(test.testerId(), round + "the tester is missing (tester_id).");
    missing(test.gaugeId(), round + "the gauge is missing (gauge_id).");
    missing(
        test.gaugeCalibratedOn(),
        round + "the day of the gauge's calibration is missing (gauge_calibrated_on).");
    missing(test.linePressure(), round + "the line pressure is missing (line_pressure_psi).");
    missing(test.signedByTester(), round + "whether the tester signed is missing (signed).");
    if (test.phase() == Phase.AS_FOUND) {
      missing(
          test.purpose(),
          round + "the reason of the test is missing (purpose); only routine tests enter rates.");
    }
    certificate(test, round);
    parts(test, round);
    downstream(test, round);
    for (Reading reading : test.readings()) {
      questionable(reading, round);
    }
  }

  private void certificate(TestPerformed test, String round) {
    LocalDate until = test.certificateValidUntil();
    if (until != null && until.isBefore(test.when().day())) {
      gaps.add(round + "the tester's certificate ended on " + until + ", before the test.");
    }
  }

  private void parts(TestPerformed test, String round) {
    if (type == null || test.conduct() == Conduct.NOT_TESTABLE) {
      return;
    }
    if (!AssemblyParts.isTestable(type)) {
      gaps.add(round + "a " + words(type) + " is inspected, not tested.");
    }
    for (ComponentAt part : AssemblyParts.tested(type, mainlines)) {
      boolean read =
          test.readings().stream()
              .anyMatch(
                  reading ->
                      reading.at().equals(part) && reading.observation() != Observation.NOT_TESTED);
      if (!read) {
        gaps.add(
            round
                + part.text().replace('_', ' ')
                + " has no reading; it counts as unknown, never as passed.");
      }
    }
    for (Reading reading : test.readings()) {
      if (!AssemblyParts.has(type, mainlines, reading.at())) {
        gaps.add(
            round
                + "there is a reading of "
                + reading.at().text().replace('_', ' ')
                + ", which a "
                + words(type)
                + " does not have.");
      }
    }
  }

  private void downstream(TestPerformed test, String round) {
    boolean leaked = test.downstreamShutoff() == TestPerformed.ShutoffState.LEAKED;
    for (Reading reading : test.readings()) {
      leaked |=
          reading.at().equals(ComponentAt.main(Component.SHUTOFF2))
              && reading.observation() == Observation.LEAKED;
    }
    if (leaked && test.compensatingStep() == null) {
      gaps.add(
          round
              + "the downstream shutoff leaked, and no compensating step is recorded"
              + " (compensating_step); the readings cannot be relied on.");
    }
  }

  private void questionable(Reading reading, String round) {
    // Differential gauges of the trade read 0 to 15 psid (common practice, no source).
    boolean differential =
        reading.value() != null
            && reading.measure() != Measure.SEPARATION
            && PressurePsi.of(reading.value()) > 15;
    if (differential) {
      gaps.add(
          round
              + reading.at().text().replace('_', ' ')
              + " reads "
              + reading.value().entered()
              + " "
              + words(reading.value().unit())
              + ", more than a differential gauge shows; check number and unit.");
    }
  }

  private void ofRepair(RepairPerformed repair) {
    if (repair.items().isEmpty()) {
      gaps.add("Repair: nothing says what was done, and to which part.");
    }
    repair
        .items()
        .forEach(
            item -> {
              String part = item.at().text().replace('_', ' ');
              missing(
                  item.action(), "Repair: what was done to " + part + " is missing (..._action).");
              missing(
                  item.mechanism(),
                  "Repair: what was found at " + part + " is missing (..._mechanism).");
              if (item.action() != null
                  && item.action().sealEffect() == sealspan.event.Action.SealEffect.RENEWED) {
                missing(
                    item.reason(),
                    "Repair: why the seal of " + part + " was replaced is missing (..._reason).");
              }
            });
  }

  private void missing(Object field, String words) {
    if (field == null && !gaps.contains(words)) {
      gaps.add(words);
    }
  }

  private static String words(Enum<?> code) {
    return code.name().replace('_', ' ').toLowerCase(Locale.ROOT);
  }

  /** Pressures in psi, for a rough comparison only. */
  private static final class PressurePsi {
    private PressurePsi() {}

    static double of(sealspan.event.Quantity quantity) {
      double value = quantity.value().doubleValue();
      return switch (quantity.unit()) {
        case PSI -> value;
        // NIST SP 811: 1 psi is 6.894757 kPa.
        case KPA -> value / 6.894757;
        case BAR -> value / .06894757;
        case MM, INCH, CELSIUS, FAHRENHEIT -> 0;
      };
    }
  }
}
