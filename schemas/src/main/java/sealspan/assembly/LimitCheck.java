package sealspan.assembly;

import java.math.BigDecimal;
import java.util.Locale;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.Observation;
import sealspan.event.Reading;
import sealspan.event.TestPerformed;
import sealspan.event.TestPerformed.CompensatingStep;
import sealspan.event.TestPerformed.ShutoffState;

/**
 * Holds the readings of one round against limits. Numbers are compared exactly, in the unit of the
 * limit, before any rounding unless the limit says otherwise.
 *
 * @param test the report
 * @param gaugeError greatest error of the gauge, in the base unit; null where no rule gives one
 */
record LimitCheck(TestPerformed test, BigDecimal gaugeError) {
  /**
   * What came of one limit.
   *
   * @param result UNKNOWN where the reading is missing or cannot be compared
   * @param marginal whether it lies within the gauge's error of the limit
   * @param words what was read, in words; null unless it failed
   */
  record Checked(Result result, boolean marginal, String words) {}

  private static final Checked MISSING = new Checked(Result.UNKNOWN, false, null);

  /** Holds the readings of a component against a limit; of several readings a failed one counts. */
  Checked check(Criterion limit, ComponentAt part) {
    if (limit.derived() != null) {
      return derived(limit, part);
    }
    Checked found = MISSING;
    for (Reading reading : test.readings()) {
      if (reading.measure() == limit.measure() && part.equals(reading.at())) {
        Result result = compare(reading, limit);
        boolean marginal = found.marginal() || isMarginal(reading, limit);
        if (result == Result.FAILED) {
          found = new Checked(result, marginal, words(reading));
        } else if (found.result() != Result.FAILED && result != Result.UNKNOWN) {
          found = new Checked(result, marginal, null);
        }
      }
    }
    return found;
  }

  private Checked derived(Criterion limit, ComponentAt part) {
    BigDecimal base = difference(limit, part);
    if (base == null) {
      return MISSING;
    }
    String words =
        "the "
            + limit.measure().name().toLowerCase(Locale.ROOT)
            + " is "
            + ReadingUnits.shown(base, limit.unit());
    return new Checked(
        limit.isMetBy(base) ? Result.PASSED : Result.FAILED, nearLimit(base, limit), words);
  }

  /** The derived number of a line in the base unit; null where one of its readings is missing. */
  BigDecimal difference(Criterion limit, ComponentAt part) {
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
        return ReadingUnits.inBase(reading.value());
      }
    }
    return null;
  }

  /** Holds one reading against a limit. */
  static Result compare(Reading reading, Criterion limit) {
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
        yield limit.isMetBy(ReadingUnits.inBase(reading.value())) ? Result.PASSED : Result.FAILED;
      }
    };
  }

  /** Whether a reading lies within the gauge's error of its limit. */
  boolean isMarginal(Reading reading, Criterion limit) {
    return reading.observation() == Observation.MEASURED
        && limit.comparator() != Criterion.Comparator.IS
        && ReadingUnits.comparable(reading.value().unit(), limit.unit())
        && nearLimit(ReadingUnits.inBase(reading.value()), limit);
  }

  private boolean nearLimit(BigDecimal base, Criterion limit) {
    return gaugeError != null
        && base.subtract(ReadingUnits.inBase(limit.limit(), limit.unit()))
                .abs()
                .compareTo(gaugeError)
            <= 0;
  }

  /**
   * Whether the readings of a component are of no use: the downstream shutoff of its line leaked,
   * and no step was recorded that makes up for it.
   */
  boolean isInvalid(ComponentAt part) {
    if (test.compensatingStep() != null && test.compensatingStep() != CompensatingStep.NONE) {
      return false;
    }
    if (test.downstreamShutoff() == ShutoffState.LEAKED) {
      return true;
    }
    for (Reading reading : test.readings()) {
      if (reading.observation() == Observation.LEAKED
          && reading.at().component() == Component.SHUTOFF2
          && reading.at().line() == part.line()
          && reading.at().lineNumber() == part.lineNumber()) {
        return true;
      }
    }
    return false;
  }

  /** What was read, in words, such as {@code check 1 held 0.8 psid}. */
  static String words(Reading reading) {
    String component = Words.of(reading.at());
    if (reading.observation() == Observation.MEASURED) {
      return component + " " + Words.verb(reading.measure()) + " " + Words.of(reading.value());
    }
    return component + " " + Words.of(reading.observation());
  }
}
