package sealspan.assembly;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import sealspan.event.AssemblyType;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.ComponentAt.Line;
import sealspan.event.InstallationCheck;
import sealspan.event.Measure;
import sealspan.event.Observation;
import sealspan.event.Reading;
import sealspan.event.TestPerformed;
import sealspan.event.TestPerformed.CompensatingStep;
import sealspan.event.TestPerformed.Conduct;
import sealspan.event.TestPerformed.Discharge;
import sealspan.event.TestPerformed.IssuedVerdict;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.TestPerformed.ShutoffState;

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
  private final String jurisdiction;
  private final List<Criterion> limits;
  private final BigDecimal gaugeError;
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
    this.jurisdiction = AcceptanceCriteria.used(jurisdiction);
    this.limits =
        type == null
            ? List.of()
            : criteria.limits(
                jurisdiction, type, test.when().day(), test.method(), test.procedureEdition());
    ProgrammeRule accuracy =
        criteria.rule(ProgrammeRule.Subject.GAUGE_ACCURACY, jurisdiction, test.when().day());
    if (accuracy == null) {
      accuracy = criteria.rule(ProgrammeRule.Subject.GAUGE_ACCURACY, null, test.when().day());
    }
    this.gaugeError =
        accuracy == null ? null : ReadingUnits.inBase(accuracy.amount(), accuracy.unit());
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
    boolean notTestable =
        test.conduct() == Conduct.NOT_TESTABLE || type != null && !AssemblyParts.isTestable(type);
    List<JudgedReading> readings = new ArrayList<>(test.readings().size());
    for (Reading reading : test.readings()) {
      readings.add(judge(reading));
    }
    boolean flushed = phase == Phase.AS_FOUND && Boolean.TRUE.equals(test.flushedToPass());
    List<ComponentResult> components = new ArrayList<>();
    for (ComponentAt part : parts()) {
      components.add(component(part, flushed));
    }
    Result installation = installation();
    if (notTestable) {
      reasons.add(
          test.conduct() == Conduct.NOT_TESTABLE
              ? "the assembly could not be tested"
              : "an assembly of this type is inspected, never tested");
      return new Verdict(
          Result.NOT_JUDGED,
          Result.NOT_JUDGED,
          installation,
          Verdict.Testability.NOT_TESTABLE,
          components,
          readings,
          reasons);
    }
    Result left = assembly(components);
    Result performance = left;
    if (flushed) {
      reasons.add("it passed only after flushing, which is a failure");
      performance = Result.FAILED;
    }
    return new Verdict(
        performance, left, installation, Verdict.Testability.TESTED, components, readings, reasons);
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

  private Result assembly(List<ComponentResult> components) {
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
    if (readingsInvalid(Line.MAIN, 1)) {
      reasons.add(
          "shutoff 2 leaked and no step was taken to make up for it, so the readings are of no use");
      return Result.UNKNOWN;
    }
    if (test.conduct() == Conduct.STOPPED_AT_DEFICIENCY) {
      reasons.add("the procedure was stopped at a deficiency");
      return Result.FAILED;
    }
    if (passed && !unknown) {
      reasons.add("every required reading met its limit (rows of " + jurisdiction + ")");
      return Result.PASSED;
    }
    return asIssued(unknown ? Result.UNKNOWN : Result.NOT_JUDGED);
  }

  private Result asIssued(Result byReadings) {
    String why;
    if (type == null) {
      why = "the type of the assembly is not recorded, so no limit applies";
    } else if (byReadings == Result.NOT_JUDGED) {
      why = "the rows of " + jurisdiction + " have no limit for " + type + " that day";
    } else {
      why = "a reading that the rows of " + jurisdiction + " require is not recorded";
    }
    if (test.verdictIssued() == null) {
      reasons.add(why);
      return byReadings;
    }
    reasons.add(why + "; the report says " + said(test.verdictIssued()));
    return test.verdictIssued() == IssuedVerdict.PASSED ? Result.PASSED : Result.FAILED;
  }

  private static String said(IssuedVerdict verdict) {
    return verdict == IssuedVerdict.PASSED ? "passed" : "failed";
  }

  private ComponentResult component(ComponentAt part, boolean flushed) {
    boolean anyLimit = false;
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
      Judged judged = limit.derived() == null ? read(limit, part) : derived(limit, part);
      anyLimit |= required;
      marginal |= judged.marginal();
      if (judged.result() == Result.FAILED) {
        reasons.add(
            judged.words() + ", the limit is " + limit.words() + " (" + source(limit) + ")");
      }
      if (limit.strength() == Criterion.Strength.ADVISORY) {
        continue;
      }
      failed |= judged.result() == Result.FAILED;
      passed |= judged.result() == Result.PASSED;
      if (required && judged.result() == Result.UNKNOWN) {
        missing |= limit.derived() == null;
        derivedMissing |= limit.derived() != null;
      }
    }
    Result result;
    if (readingsInvalid(part.line(), part.lineNumber())) {
      result = anyLimit ? Result.UNKNOWN : Result.NOT_JUDGED;
    } else if (failed) {
      result = Result.FAILED;
    } else if (missing || derivedMissing && !passed) {
      result = Result.UNKNOWN;
    } else {
      result = passed ? Result.PASSED : Result.NOT_JUDGED;
    }
    Result asFound = flushed && result == Result.PASSED ? Result.UNKNOWN : result;
    return new ComponentResult(part, asFound, result, marginal);
  }

  private static String source(Criterion limit) {
    return (limit.strength() == Criterion.Strength.ADVISORY ? "advice: " : "") + limit.source();
  }

  private record Judged(Result result, boolean marginal, String words) {}

  private Judged read(Criterion limit, ComponentAt part) {
    Judged found = new Judged(Result.UNKNOWN, false, null);
    for (Reading reading : test.readings()) {
      if (reading.measure() == limit.measure() && reading.at().equals(part)) {
        Result result = compare(reading, limit);
        boolean marginal = found.marginal() || isMarginal(reading, limit);
        if (result == Result.FAILED) {
          found = new Judged(result, marginal, words(reading));
        } else if (found.result() != Result.FAILED && result != Result.UNKNOWN) {
          found = new Judged(result, marginal, null);
        }
      }
    }
    return found;
  }

  private Judged derived(Criterion limit, ComponentAt part) {
    BigDecimal base = difference(limit, part);
    if (base == null) {
      return new Judged(Result.UNKNOWN, false, null);
    }
    String words =
        "the "
            + limit.measure().name().toLowerCase(java.util.Locale.ROOT)
            + " is "
            + ReadingUnits.shown(base, limit.unit());
    return new Judged(
        limit.isMetBy(base) ? Result.PASSED : Result.FAILED, nearLimit(base, limit), words);
  }

  private BigDecimal difference(Criterion limit, ComponentAt part) {
    BigDecimal minuend = measured(limit.derived().minuend(), part, limit);
    BigDecimal subtrahend = measured(limit.derived().subtrahend(), part, limit);
    return minuend == null || subtrahend == null ? null : minuend.subtract(subtrahend);
  }

  private BigDecimal measured(Criterion.Operand operand, ComponentAt part, Criterion limit) {
    for (Reading reading : test.readings()) {
      if (reading.observation() == Observation.MEASURED
          && reading.measure() == operand.measure()
          && reading.at().component() == operand.at().component()
          && reading.at().line() == part.line()
          && reading.at().lineNumber() == part.lineNumber()
          && ReadingUnits.comparable(reading.value().unit(), limit.unit())) {
        return ReadingUnits.inBase(reading.value().value(), reading.value().unit());
      }
    }
    return null;
  }

  private JudgedReading judge(Reading reading) {
    boolean owned = type != null && AssemblyParts.has(type, mainlines, reading.at());
    Criterion limit =
        owned ? AcceptanceCriteria.find(limits, reading.at(), reading.measure()) : null;
    if (limit == null && owned && reading.measure() == Measure.BUFFER) {
      limit = bufferOf(reading.at());
    }
    if (limit == null) {
      return new JudgedReading(reading, null, Result.NOT_JUDGED, false);
    }
    boolean invalid = readingsInvalid(reading.at().line(), reading.at().lineNumber());
    if (limit.derived() != null) {
      Judged judged = derived(limit, reading.at());
      return new JudgedReading(
          reading, limit, invalid ? Result.UNKNOWN : judged.result(), judged.marginal());
    }
    Result result = invalid ? Result.UNKNOWN : compare(reading, limit);
    return new JudgedReading(reading, limit, result, isMarginal(reading, limit));
  }

  private Criterion bufferOf(ComponentAt at) {
    for (Criterion limit : limits) {
      if (limit.measure() == Measure.BUFFER && limit.at().line() == at.line()) {
        return limit;
      }
    }
    return null;
  }

  private static Result compare(Reading reading, Criterion limit) {
    boolean seen = limit.comparator() == Criterion.Comparator.IS;
    return switch (reading.observation()) {
      case NOT_TESTED -> Result.UNKNOWN;
      case LEAKED, DID_NOT_OPEN ->
          seen && limit.expected() == reading.observation() ? Result.PASSED : Result.FAILED;
      case CLOSED_TIGHT, OPENED -> {
        if (!seen) {
          yield Result.UNKNOWN;
        }
        yield limit.expected() == reading.observation() ? Result.PASSED : Result.FAILED;
      }
      case MEASURED -> {
        if (seen || !ReadingUnits.comparable(reading.value().unit(), limit.unit())) {
          yield Result.UNKNOWN;
        }
        BigDecimal base = ReadingUnits.inBase(reading.value().value(), reading.value().unit());
        yield limit.isMetBy(base) ? Result.PASSED : Result.FAILED;
      }
    };
  }

  private boolean isMarginal(Reading reading, Criterion limit) {
    return reading.observation() == Observation.MEASURED
        && limit.comparator() != Criterion.Comparator.IS
        && ReadingUnits.comparable(reading.value().unit(), limit.unit())
        && nearLimit(ReadingUnits.inBase(reading.value().value(), reading.value().unit()), limit);
  }

  private boolean nearLimit(BigDecimal base, Criterion limit) {
    return gaugeError != null
        && base.subtract(ReadingUnits.inBase(limit.limit(), limit.unit()))
                .abs()
                .compareTo(gaugeError)
            <= 0;
  }

  private boolean readingsInvalid(Line line, int lineNumber) {
    if (test.compensatingStep() != null && test.compensatingStep() != CompensatingStep.NONE) {
      return false;
    }
    if (test.downstreamShutoff() == ShutoffState.LEAKED) {
      return true;
    }
    for (Reading reading : test.readings()) {
      if (reading.observation() == Observation.LEAKED
          && reading.at().component() == Component.SHUTOFF2
          && reading.at().line() == line
          && reading.at().lineNumber() == lineNumber) {
        return true;
      }
    }
    return false;
  }

  private static String words(Reading reading) {
    String component = Words.of(reading.at());
    if (reading.observation() == Observation.MEASURED) {
      return component + " " + Words.verb(reading.measure()) + " " + Words.of(reading.value());
    }
    return component + " " + Words.of(reading.observation());
  }
}
