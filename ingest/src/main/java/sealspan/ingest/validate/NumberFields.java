package sealspan.ingest.validate;

import java.math.BigDecimal;
import sealspan.event.Money;
import sealspan.event.Quantity;
import sealspan.event.Unit;
import sealspan.ingest.validate.Problem.Fault;

/** Numbers, quantities and amounts of the fields of a row. */
final class NumberFields {
  private static final Column CURRENCY = Columns.named("currency");

  private NumberFields() {}

  /** A whole number within bounds, both included. */
  static Integer whole(Fields fields, Column column, int least, int greatest) {
    String text = fields.text(column);
    if (text == null) {
      return null;
    }
    int digits = text.length() > 9 ? -1 : DayForms.digits(text, 0, text.length());
    if (digits < 0 || digits < least || digits > greatest) {
      fields.add(
          column,
          digits < 0 ? Fault.NOT_A_NUMBER : Fault.OUT_OF_RANGE,
          Fields.quoted(text) + " is not a whole number from " + least + " to " + greatest + ".",
          "Correct it, or leave the cell empty where it is not recorded.");
      return null;
    }
    return digits;
  }

  /** A number within bounds, both included. */
  static Double decimal(Fields fields, Column column, double least, double greatest) {
    String number = number(fields, column);
    if (number == null) {
      return null;
    }
    double value = Double.parseDouble(number);
    if (value < least || value > greatest) {
      fields.add(
          column,
          Fault.OUT_OF_RANGE,
          number + " is not from " + (long) least + " to " + (long) greatest + ".",
          "Correct it, or leave the cell empty where it is not recorded.");
      return null;
    }
    return value;
  }

  /** A number as decimal text with a point. */
  static String number(Fields fields, Column column) {
    String text = fields.text(column);
    return text == null ? null : number(fields, column, text);
  }

  private static String number(Fields fields, Column column, String text) {
    String number = Numbers.plain(text, fields.draft().notation().decimalMark());
    if (number == null) {
      fields.add(
          column,
          Fault.NOT_A_NUMBER,
          Fields.quoted(text) + " is not a number.",
          Numbers.advice(text, fields.draft().notation().decimalMark()));
    }
    return number;
  }

  /** A number, 0 or more, with its unit. */
  static Quantity quantityFromZero(Fields fields, Column column) {
    Quantity quantity = quantity(fields, column);
    if (quantity != null && quantity.entered().charAt(0) == '-') {
      fields.add(
          column,
          Fault.OUT_OF_RANGE,
          quantity.entered() + " is below zero.",
          "Correct it, or write in words what was seen, such as leaked.");
      return null;
    }
    return quantity;
  }

  /** A number with the unit that the cell, the column or the file names. */
  static Quantity quantity(Fields fields, Column column) {
    int cell = fields.cell(column);
    if (cell < 0) {
      return null;
    }
    String text = Fields.trimmed(fields.draft().cells()[cell]);
    int end = Numbers.numberEnd(text);
    Unit ofColumn = fields.draft().plan().unit(cell);
    Unit unit = ofColumn != null ? ofColumn : usual(fields, column);
    if (end > 0 && end < text.length()) {
      Unit ofCell = Numbers.unit(text.substring(end).trim());
      if (ofCell == null || dimension(ofCell) != column.dimension()) {
        fields.add(
            column,
            Fault.UNIT,
            Fields.quoted(text) + " names no unit that fits.",
            "Write the number alone, or one of psi, kPa, bar; in, mm; C, F as it applies.");
        return null;
      }
      if (ofColumn != null && ofCell != ofColumn) {
        fields.add(
            column,
            Fault.UNIT,
            Fields.quoted(text)
                + " is in another unit than its column, which is in "
                + ofColumn
                + ".",
            "Correct the one that is wrong.");
        return null;
      }
      unit = ofCell;
      text = text.substring(0, end).trim();
    }
    String number = number(fields, column, text);
    return number == null ? null : new Quantity(number, unit);
  }

  private static Unit usual(Fields fields, Column column) {
    return switch (column.dimension()) {
      case PRESSURE -> fields.draft().notation().pressureUnit();
      case LENGTH -> Unit.INCH;
      case TEMPERATURE -> Unit.CELSIUS;
      case NONE -> throw new IllegalStateException(column.name() + " has no unit.");
    };
  }

  private static Column.Dimension dimension(Unit unit) {
    return switch (unit) {
      case PSI, KPA, BAR -> Column.Dimension.PRESSURE;
      case MM, INCH -> Column.Dimension.LENGTH;
      case CELSIUS, FAHRENHEIT -> Column.Dimension.TEMPERATURE;
    };
  }

  /** An amount in the currency of the row, 0 or more. */
  static Money money(Fields fields, Column column) {
    String number = number(fields, column);
    if (number == null) {
      return null;
    }
    String code = fields.text(CURRENCY);
    if (code == null) {
      fields.add(
          CURRENCY, Fault.MISSING, "It is empty, and the row has amounts.", "Write such as USD.");
      return null;
    }
    java.util.Currency currency;
    try {
      currency = java.util.Currency.getInstance(code.toUpperCase(java.util.Locale.ROOT));
    } catch (IllegalArgumentException e) {
      fields.add(
          CURRENCY,
          Fault.UNKNOWN_CODE,
          Fields.quoted(code) + " is no ISO 4217 code.",
          "Write such as USD.");
      return null;
    }
    int digits = Math.max(0, currency.getDefaultFractionDigits());
    BigDecimal amount = new BigDecimal(number);
    if (amount.signum() < 0
        || amount.stripTrailingZeros().scale() > digits
        || amount.precision() - amount.scale() > 12) {
      fields.add(
          column,
          Fault.OUT_OF_RANGE,
          number + " is not an amount of " + currency + ".",
          "Write 0 or more, with at most " + digits + " decimals.");
      return null;
    }
    return new Money(amount.movePointRight(digits).longValueExact(), currency.getCurrencyCode());
  }
}
