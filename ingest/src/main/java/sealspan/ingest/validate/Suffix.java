package sealspan.ingest.validate;

import sealspan.event.Unit;

/**
 * The unit that the end of a column's name tells.
 *
 * @param base the name without it
 * @param dimension sort of unit
 * @param unit the unit
 */
record Suffix(String base, Column.Dimension dimension, Unit unit) {

  /** The suffix of a name; null where the name has none. */
  static Suffix of(String name) {
    int bar = name.lastIndexOf('_');
    if (bar < 1) {
      return null;
    }
    String base = name.substring(0, bar);
    return switch (name.substring(bar + 1)) {
      case "psid", "psi" -> new Suffix(base, Column.Dimension.PRESSURE, Unit.PSI);
      case "kpa" -> new Suffix(base, Column.Dimension.PRESSURE, Unit.KPA);
      case "bar" -> new Suffix(base, Column.Dimension.PRESSURE, Unit.BAR);
      case "in" -> new Suffix(base, Column.Dimension.LENGTH, Unit.INCH);
      case "mm" -> new Suffix(base, Column.Dimension.LENGTH, Unit.MM);
      case "c" -> new Suffix(base, Column.Dimension.TEMPERATURE, Unit.CELSIUS);
      case "f" -> new Suffix(base, Column.Dimension.TEMPERATURE, Unit.FAHRENHEIT);
      default -> null;
    };
  }
}
