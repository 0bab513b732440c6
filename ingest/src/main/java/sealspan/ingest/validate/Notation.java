package sealspan.ingest.validate;

import java.util.List;
import sealspan.event.Unit;

/**
 * How the cells of a file are written.
 *
 * @param days how days are written
 * @param decimalMark mark between whole number and decimals
 * @param pressureUnit unit of a pressure whose column and cell name none
 * @param timeZone IANA time zone of times; null where not recorded
 */
public record Notation(DayForms days, DecimalMark decimalMark, Unit pressureUnit, String timeZone) {
  /** Marks between whole number and decimals. */
  public enum DecimalMark {
    POINT,
    COMMA
  }

  /** ISO 8601 days, decimal point, psi, no time zone. */
  public static final Notation OWN =
      new Notation(DayForms.of(List.of()), DecimalMark.POINT, Unit.PSI, null);
}
