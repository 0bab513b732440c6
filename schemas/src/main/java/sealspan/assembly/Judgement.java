package sealspan.assembly;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import sealspan.event.AssemblyType;
import sealspan.event.ComponentAt;
import sealspan.event.InstallationCheck;
import sealspan.event.Measure;
import sealspan.event.Reading;
import sealspan.event.TestPerformed;
import sealspan.event.TestPerformed.Conduct;
import sealspan.event.TestPerformed.Discharge;
import sealspan.event.TestPerformed.IssuedVerdict;
import sealspan.event.TestPerformed.Phase;

/**
 * Judges one test round; a pure function of the report, the type and the criteria table.
 *
 * <p>The readings decide. Where they do not (no limit applies, or a required reading was not
 * recorded) the verdict on the report decides the assembly, never one of its components: a source
 * that carries verdicts alone would else show passes of components and no failures.
 */
public final class Judgement {
  private final TestPerformed test;
  private final AssemblyType type;
  private final int mainlines;
  private final String rows;
  private final List<Criterion> limits;
  private final LimitCheck check;
  private final List<String> reasons = new ArrayList<>();

  private Judgement(
      TestPerformed test,
      AssemblyType type,
      int mainlines,
      String jurisdiction,
      AcceptanceCriteria criteria) {
    this.test = test;
    this.type = type;
    this.mainlines = mainlines;
    String used = AcceptanceCriteria.used(jurisdiction);
    this.rows =
        "the rows of "
            + used
            + (jurisdiction == null || jurisdiction.isBlank()
                ? ", because the site names no jurisdiction"
                : "");
    this.limits =
        type == null
            ? List.of()
            : criteria.limits(
                jurisdiction, type, test.when().day(), test.method(), test.procedureEdition());
    ProgrammeRule accuracy =
        criteria.gaugeRule(ProgrammeRule.Subject.GAUGE_ACCURACY, jurisdiction, test.when().day());
    this.check =
        new LimitCheck(
            test,
            accuracy == null ? null : ReadingUnits.inBase(accuracy.amount(), accuracy.unit()));
  }

  /**
   * Judges a round.
   *
   * @param test the report
   * @param phase whether it is as found or as left
   * @param type type of the assembly; null where not recorded, then nothing is judged by limits
   * @param mainlines mainlines in parallel inside the assembly, 1 or more
   * @param jurisdiction jurisdiction of the site; null where it names none
   * @param criteria the limits in force
   */
  public static Verdict of(
      TestPerformed test,
      Phase phase,
      AssemblyType type,
      int mainlines,
      String jurisdiction,
      AcceptanceCriteria criteria) {
    return new Judgement(test, type, mainlines, jurisdiction, criteria).verdict(phase);
  }

  private Verdict verdict(Phase phase) {
    List<JudgedReading> readings = new ArrayList<>(test.readings().size());
    for (Reading reading : test.readings()) {
      readings.add(judge(reading));
    }
    Result installation = installation();
    if (test.conduct() == Conduct.NOT_TESTABLE || type != null && !AssemblyParts.isTestable(type)) {
      return notTestable(installation, readings);
    }
    boolean flushed = phase == Phase.AS_FOUND && Boolean.TRUE.equals(test.flushedToPass());
    List<ComponentResult> components = new ArrayList<>(6);
    for (ComponentAt part : parts()) {
      components.add(component(part, flushed));
    }
    Result left = assembly(components, installation);
    Result performance = left;
    if (flushed) {
      reasons.add("it passed only after flushing, which is a failure");
      performance = Result.FAILED;
    }
    return new Verdict(
        performance, left, installation, Verdict.Testability.TESTED, components, readings, reasons);
  }

  private Verdict notTestable(Result installation, List<JudgedReading> readings) {
    reasons.add(
        test.conduct() == Conduct.NOT_TESTABLE
            ? "the assembly could not be tested"
            : "an assembly of this type is inspected, never tested");
    return new Verdict(
        Result.NOT_JUDGED,
        Result.NOT_JUDGED,
        installation,
        Verdict.Testability.NOT_TESTABLE,
        List.of(),
        readings,
        reasons);
  }

  private Iterable<ComponentAt> parts() {
    if (type != null) {
      return AssemblyParts.tested(type, mainlines);
    }
    TreeSet<ComponentAt> seen = new TreeSet<>();
    for (Reading reading : test.readings()) {
      if (AssemblyParts.isTested(reading.at().component())) {
        seen.add(reading.at());
      }
    }
    return seen;
  }

  private Result installation() {
    Result result = test.installationChecks().isEmpty() ? Result.NOT_JUDGED : Result.PASSED;
    for (InstallationCheck check : test.installationChecks()) {
      if (!check.met()) {
        result = Result.FAILED;
        reasons.add("installation: " + check.name() + " was not met");
      }
    }
    return result;
  }

  private Result assembly(List<ComponentResult> components, Result installation) {
    boolean failed = false;
    boolean unknown = false;
    boolean passed = false;
    for (ComponentResult component : components) {
      failed |= component.leftAs() == Result.FAILED;
      unknown |= component.leftAs() == Result.UNKNOWN;
      passed |= component.leftAs() == Result.PASSED;
    }
    if (failed) {
      return Result.FAILED;
    }
    if (test.reliefDischarge() == Discharge.CONTINUOUS) {
      reasons.add("the relief valve discharged continuously");
      return Result.FAILED;
    }
    if (components.stream().anyMatch(component -> check.isInvalid(component.at()))) {
      reasons.add(
          "shutoff 2 leaked and no step was taken to make up for it, so the readings are of no use");
      return Result.UNKNOWN;
    }
    if (test.conduct() == Conduct.STOPPED_AT_DEFICIENCY) {
      reasons.add("the procedure was stopped at a deficiency");
      return Result.FAILED;
    }
    if (passed && !unknown) {
      reasons.add("every required reading met its limit (" + rows + ")");
      return Result.PASSED;
    }
    return asIssued(unknown ? Result.UNKNOWN : Result.NOT_JUDGED, installation);
  }

  private Result asIssued(Result byReadings, Result installation) {
    String why;
    if (type == null) {
      why = "the type of the assembly is not recorded, so no limit applies";
    } else if (byReadings == Result.NOT_JUDGED) {
      why = "no limit for " + type + " that day (" + rows + ")";
    } else {
      why = "a required reading is not recorded (" + rows + ")";
    }
    if (test.verdictIssued() == null) {
      reasons.add(why);
      return byReadings;
    }
    if (test.verdictIssued() == IssuedVerdict.FAILED && installation == Result.FAILED) {
      reasons.add(why + "; the report says failed, which the installation explains");
      return byReadings;
    }
    reasons.add(why + "; the report says " + said(test.verdictIssued()));
    return test.verdictIssued() == IssuedVerdict.PASSED ? Result.PASSED : Result.FAILED;
  }

  private static String said(IssuedVerdict verdict) {
    return verdict == IssuedVerdict.PASSED ? "passed" : "failed";
  }

  private ComponentResult component(ComponentAt part, boolean flushed) {
    boolean invalid = check.isInvalid(part);
    boolean judged = false;
    boolean failed = false;
    boolean passed = false;
    boolean missing = false;
    boolean derivedMissing = false;
    boolean marginal = false;
    for (Criterion limit : limits) {
      if (!AcceptanceCriteria.covers(limit, part)) {
        continue;
      }
      boolean required = limit.strength() == Criterion.Strength.REQUIRED;
      judged |= required;
      LimitCheck.Checked checked = check.check(limit, part);
      marginal |= checked.marginal();
      if (checked.result() == Result.FAILED && !invalid) {
        reasons.add(because(checked, limit));
      }
      if (limit.strength() != Criterion.Strength.ADVISORY) {
        failed |= checked.result() == Result.FAILED;
        passed |= checked.result() == Result.PASSED;
        missing |= required && checked.result() == Result.UNKNOWN && limit.derived() == null;
        derivedMissing |= required && checked.result() == Result.UNKNOWN;
      }
    }
    Result result = passed ? Result.PASSED : Result.NOT_JUDGED;
    if (invalid) {
      result = judged ? Result.UNKNOWN : Result.NOT_JUDGED;
    } else if (failed) {
      result = Result.FAILED;
    } else if (missing || derivedMissing && !passed) {
      // A derived number may be missing because the other component gave none (it did not open).
      result = Result.UNKNOWN;
    }
    // What holds after flushing says nothing of how the component was found.
    Result asFound = flushed && result == Result.PASSED ? Result.UNKNOWN : result;
    return new ComponentResult(part, asFound, result, marginal);
  }

  private static String because(LimitCheck.Checked checked, Criterion limit) {
    boolean advice = limit.strength() == Criterion.Strength.ADVISORY;
    return checked.words()
        + (advice ? ", advised is " : ", the limit is ")
        + limit.words()
        + " ("
        + limit.source()
        + ")";
  }

  private JudgedReading judge(Reading reading) {
    boolean owned = type != null && AssemblyParts.has(type, mainlines, reading.at());
    Criterion limit = owned ? limit(reading) : null;
    if (limit == null) {
      return new JudgedReading(reading, null, Result.NOT_JUDGED, false);
    }
    boolean invalid = check.isInvalid(reading.at());
    if (limit.derived() != null) {
      LimitCheck.Checked checked = check.check(limit, reading.at());
      return new JudgedReading(
          reading, limit, invalid ? Result.UNKNOWN : checked.result(), checked.marginal());
    }
    boolean advised = limit.strength() == Criterion.Strength.ADVISORY;
    Result result =
        advised ? Result.NOT_JUDGED : invalid ? Result.UNKNOWN : LimitCheck.compare(reading, limit);
    return new JudgedReading(reading, limit, result, check.isMarginal(reading, limit));
  }

  /** The limit of a reading; that of a written buffer is the one of the line's derived buffer. */
  private Criterion limit(Reading reading) {
    Criterion found = AcceptanceCriteria.find(limits, reading.at(), reading.measure());
    if (found == null && reading.measure() == Measure.BUFFER) {
      for (Criterion limit : limits) {
        if (limit.measure() == Measure.BUFFER && limit.at().line() == reading.at().line()) {
          return limit;
        }
      }
    }
    return found;
  }
}
