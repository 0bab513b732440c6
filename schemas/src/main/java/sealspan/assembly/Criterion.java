package sealspan.assembly;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import sealspan.event.AssemblyType;
import sealspan.event.ComponentAt;
import sealspan.event.Measure;
import sealspan.event.Observation;
import sealspan.event.Unit;

/**
 * One limit of the criteria table.
 *
 * @param jurisdiction whose limit it is; {@code default} for sites that name none
 * @param type the assembly type
 * @param at the component; a limit of the mainline holds for every mainline
 * @param measure what is compared
 * @param method test method that it is for; null for any
 * @param procedureEdition edition of the procedure that it is for; null for any
 * @param validFrom first day on which it applies; null for no beginning
 * @param validTo last day on which it applies; null for no end
 * @param comparator how the reading is compared
 * @param limit the number; null where {@code comparator} is IS
 * @param expected what has to be seen; null unless {@code comparator} is IS
 * @param unit unit of the limit; null where {@code comparator} is IS
 * @param rounding whether a reading is compared as it is, or rounded to the decimals of the limit
 * @param strength whether it must be met
 * @param derived how the number follows from two readings; null where it is read
 * @param source where the limit was published
 */
public record Criterion(
    String jurisdiction,
    AssemblyType type,
    ComponentAt at,
    Measure measure,
    String method,
    String procedureEdition,
    LocalDate validFrom,
    LocalDate validTo,
    Comparator comparator,
    BigDecimal limit,
    Observation expected,
    Unit unit,
    Rounding rounding,
    Strength strength,
    Difference derived,
    String source) {

  /** How a reading is compared with the limit. */
  public enum Comparator {
    AT_LEAST,
    MORE_THAN,
    AT_MOST,
    LESS_THAN,
    /** An observation has to be the one named. */
    IS
  }

  /** Whether a reading is rounded before it is compared. */
  public enum Rounding {
    BEFORE_ROUNDING,
    AFTER_ROUNDING
  }

  /** Whether a limit must be met. */
  public enum Strength {
    /** The reading must be taken, and meet the limit. */
    REQUIRED,
    /** Shown when it is not met; fails nothing. */
    ADVISORY,
    /** The reading need not be taken; where it was taken it must meet the limit. */
    OPTIONAL
  }

  /** A derived number: one reading less another, both of the same line. */
  public record Difference(Operand minuend, Operand subtrahend) {}

  /** A reading that a derived number is made from. */
  public record Operand(ComponentAt at, Measure measure) {}

  /** Whether it applies on a day. */
  boolean appliesOn(LocalDate day) {
    return (validFrom == null || !day.isBefore(validFrom))
        && (validTo == null || !day.isAfter(validTo));
  }

  /** Whether it applies to a round by method and edition, which may be null. */
  boolean fits(String roundMethod, String roundEdition) {
    return (method == null || method.equalsIgnoreCase(roundMethod))
        && (procedureEdition == null || procedureEdition.equalsIgnoreCase(roundEdition));
  }

  /** How closely it names method and edition: the closer row goes before the general one. */
  int closeness() {
    return (method == null ? 0 : 1) + (procedureEdition == null ? 0 : 1);
  }

  /** Whether an exact value in the base unit meets the limit. */
  boolean isMetBy(BigDecimal base) {
    int sign;
    if (rounding == Rounding.AFTER_ROUNDING) {
      BigDecimal inUnit = ReadingUnits.fromBase(base, unit);
      sign = inUnit.setScale(Math.max(0, limit.scale()), RoundingMode.HALF_UP).compareTo(limit);
    } else {
      sign = base.compareTo(ReadingUnits.inBase(limit, unit));
    }
    return switch (comparator) {
      case AT_LEAST -> sign >= 0;
      case MORE_THAN -> sign > 0;
      case AT_MOST -> sign <= 0;
      case LESS_THAN -> sign < 0;
      case IS -> throw new IllegalStateException("An observation is not compared as a number.");
    };
  }

  /** The limit in words, such as {@code at least 1.0 psid}. */
  public String words() {
    return switch (comparator) {
      case AT_LEAST -> "at least " + number();
      case MORE_THAN -> "more than " + number();
      case AT_MOST -> "at most " + number();
      case LESS_THAN -> "less than " + number();
      case IS -> Words.of(expected);
    };
  }

  /** The limit in words for a table, which says where it is only advised. */
  public String label() {
    return (strength == Strength.ADVISORY ? "advised: " : "") + words();
  }

  private String number() {
    return limit.toPlainString() + " " + ReadingUnits.words(unit);
  }
}
