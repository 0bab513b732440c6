package sealspan.assembly;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import sealspan.event.Quantity;
import sealspan.event.Unit;

/**
 * Exact conversion of readings: 1 psi = 6.894757 kPa (NIST SP 811), 1 inch = 25.4 mm. Nothing is
 * rounded before it is compared.
 */
public final class ReadingUnits {
  private static final BigDecimal KPA_PER_PSI = new BigDecimal("6.894757");
  private static final BigDecimal KPA_PER_BAR = new BigDecimal("100");
  private static final BigDecimal MM_PER_INCH = new BigDecimal("25.4");

  private ReadingUnits() {}

  /** What a unit is measured in. */
  private enum Dimension {
    PRESSURE,
    LENGTH,
    TEMPERATURE
  }

  /** Whether two units measure the same thing. */
  static boolean comparable(Unit a, Unit b) {
    return a == b || dimension(a) == dimension(b) && dimension(a) != Dimension.TEMPERATURE;
  }

  /** Exact value in the base unit (kPa, mm; a temperature as it is). */
  static BigDecimal inBase(BigDecimal value, Unit unit) {
    return switch (unit) {
      case PSI -> value.multiply(KPA_PER_PSI);
      case BAR -> value.multiply(KPA_PER_BAR);
      case INCH -> value.multiply(MM_PER_INCH);
      case KPA, MM, CELSIUS, FAHRENHEIT -> value;
    };
  }

  /** Exact value of a quantity in the base unit. */
  static BigDecimal inBase(Quantity quantity) {
    return inBase(quantity.value(), quantity.unit());
  }

  /** A value of the base unit in another unit, to 12 digits; for showing, never for comparing. */
  static BigDecimal fromBase(BigDecimal base, Unit unit) {
    return switch (unit) {
      case PSI -> base.divide(KPA_PER_PSI, new MathContext(12));
      case BAR -> base.divide(KPA_PER_BAR, new MathContext(12));
      case INCH -> base.divide(MM_PER_INCH, new MathContext(12));
      case KPA, MM, CELSIUS, FAHRENHEIT -> base;
    };
  }

  /** A pressure in psi rounded to 0.0001; null where the unit is not one of pressure. */
  public static Double psi(Quantity quantity) {
    if (quantity == null || dimension(quantity.unit()) != Dimension.PRESSURE) {
      return null;
    }
    BigDecimal value = quantity.value();
    BigDecimal psi =
        quantity.unit() == Unit.PSI ? value : fromBase(inBase(value, quantity.unit()), Unit.PSI);
    return psi.setScale(4, RoundingMode.HALF_EVEN).doubleValue();
  }

  /** A value of the base unit in words, such as {@code 2.4 psid}, to at most 4 decimals. */
  static String shown(BigDecimal base, Unit unit) {
    BigDecimal value = fromBase(base, unit);
    BigDecimal short4 = value.setScale(4, RoundingMode.HALF_EVEN).stripTrailingZeros();
    return short4.setScale(Math.max(1, short4.scale())).toPlainString() + " " + words(unit);
  }

  /** The unit in the words of the trade; differential pressures are psid. */
  static String words(Unit unit) {
    return switch (unit) {
      case PSI -> "psid";
      case KPA -> "kPa";
      case BAR -> "bar";
      case MM -> "mm";
      case INCH -> "in";
      case CELSIUS -> "°C";
      case FAHRENHEIT -> "°F";
    };
  }

  private static Dimension dimension(Unit unit) {
    return switch (unit) {
      case PSI, KPA, BAR -> Dimension.PRESSURE;
      case MM, INCH -> Dimension.LENGTH;
      case CELSIUS, FAHRENHEIT -> Dimension.TEMPERATURE;
    };
  }
}
