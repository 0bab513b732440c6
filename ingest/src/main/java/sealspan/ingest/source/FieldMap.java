package sealspan.ingest.source;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import sealspan.event.Moment;
import sealspan.event.Money;
import sealspan.event.Quantity;
import sealspan.event.Unit;
import sealspan.event.Visit;

/** Cells of a row by documented column; what was not recorded gets no cell. */
final class FieldMap {
  private final Map<String, String> cells = new LinkedHashMap<>();

  Map<String, String> cells() {
    return cells;
  }

  FieldMap text(String column, String text) {
    if (text != null) {
      cells.put(column, text);
    }
    return this;
  }

  FieldMap code(String column, Enum<?> code) {
    return code == null ? this : text(column, code.name().toLowerCase(Locale.ROOT));
  }

  FieldMap yesNo(String column, Boolean answer) {
    return answer == null ? this : text(column, answer ? "yes" : "no");
  }

  FieldMap whole(String column, Integer number) {
    return number == null ? this : text(column, number.toString());
  }

  FieldMap decimal(String column, Double number) {
    return number == null ? this : text(column, BigDecimal.valueOf(number).toPlainString());
  }

  FieldMap day(String column, LocalDate day) {
    return day == null ? this : text(column, day.toString());
  }

  FieldMap timeOfDay(String column, Integer minuteOfDay) {
    if (minuteOfDay == null) {
      return this;
    }
    int hour = minuteOfDay / 60;
    int minute = minuteOfDay % 60;
    return text(column, (hour < 10 ? "0" : "") + hour + (minute < 10 ? ":0" : ":") + minute);
  }

  FieldMap moment(Moment when) {
    return day("date", when.day())
        .timeOfDay("time", when.minuteOfDay())
        .text("time_zone", when.timeZone());
  }

  FieldMap list(String column, List<String> texts) {
    return texts.isEmpty() ? this : text(column, String.join("; ", texts));
  }

  /** A visit, whose sequence has no cell where it is the one that an import derives. */
  FieldMap visit(Visit visit, int derivedSequence) {
    if (visit == null) {
      return this;
    }
    if (visit.sequenceOrigin() == Visit.SequenceOrigin.GIVEN) {
      whole("visit_sequence", visit.sequence());
    } else if (visit.sequence() != derivedSequence) {
      throw new IllegalArgumentException(
          "No row gives rise to the derived sequence " + visit.sequence() + ".");
    }
    return text("visit_id", visit.id()).timeOfDay("visit_start", visit.startMinuteOfDay());
  }

  /** A number under the name of its column with the suffix of its unit. */
  FieldMap quantity(String base, Quantity quantity) {
    return quantity == null ? this : text(base + suffix(quantity.unit()), quantity.entered());
  }

  static String suffix(Unit unit) {
    return switch (unit) {
      case PSI -> "_psid";
      case KPA -> "_kpa";
      case BAR -> "_bar";
      case MM -> "_mm";
      case INCH -> "_in";
      case CELSIUS -> "_c";
      case FAHRENHEIT -> "_f";
    };
  }

  FieldMap money(String column, Money money) {
    if (money == null) {
      return this;
    }
    String known = cells.putIfAbsent("currency", money.currency());
    if (known != null && !known.equals(money.currency())) {
      throw new IllegalArgumentException("One row has amounts of one currency only.");
    }
    int digits = Currency.getInstance(money.currency()).getDefaultFractionDigits();
    BigDecimal amount = BigDecimal.valueOf(money.minorUnits(), Math.max(0, digits));
    return text(column, amount.toPlainString());
  }
}
