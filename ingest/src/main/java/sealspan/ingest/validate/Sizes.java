package sealspan.ingest.validate;

import java.math.BigDecimal;
import java.util.Map;

/** Nominal sizes as people write them: 3/4, 1 1/2", 1-1/2, 2 in, .75, 20 mm. */
final class Sizes {
  /** Nominal diameters DN in mm and the pipe sizes in inches that go by them (common practice). */
  private static final Map<String, String> INCH_OF_DN =
      Map.ofEntries(
          Map.entry("8", "0.25"),
          Map.entry("10", "0.375"),
          Map.entry("15", "0.5"),
          Map.entry("20", "0.75"),
          Map.entry("25", "1"),
          Map.entry("32", "1.25"),
          Map.entry("40", "1.5"),
          Map.entry("50", "2"),
          Map.entry("65", "2.5"),
          Map.entry("80", "3"),
          Map.entry("100", "4"),
          Map.entry("150", "6"),
          Map.entry("200", "8"),
          Map.entry("250", "10"),
          Map.entry("300", "12"),
          Map.entry("350", "14"),
          Map.entry("400", "16"));

  private Sizes() {}

  /** The size in inches as decimal text without trailing zeros; null where the text is none. */
  static String inch(String text, Notation.DecimalMark mark) {
    String size = text.trim();
    if (size.endsWith("mm")) {
      return INCH_OF_DN.get(size.substring(0, size.length() - 2).trim());
    }
    if (size.startsWith("DN")) {
      return INCH_OF_DN.get(size.substring(2).trim());
    }
    for (String ending : new String[] {"\"", "inches", "inch", "in.", "in", "''"}) {
      if (size.endsWith(ending)) {
        size = size.substring(0, size.length() - ending.length()).trim();
        break;
      }
    }
    BigDecimal inches = mixed(size, mark);
    boolean fits =
        inches != null
            && inches.compareTo(new BigDecimal("0.125")) >= 0
            && inches.compareTo(BigDecimal.valueOf(60)) <= 0;
    return fits ? inches.stripTrailingZeros().toPlainString() : null;
  }

  private static BigDecimal mixed(String size, Notation.DecimalMark mark) {
    int slash = size.indexOf('/');
    if (slash < 0) {
      String number = Numbers.plain(size, mark);
      return number == null ? null : new BigDecimal(number);
    }
    int gap = Math.max(size.lastIndexOf(' ', slash), size.lastIndexOf('-', slash));
    int whole = gap < 0 ? 0 : DayForms.digits(size, 0, gap);
    int above = DayForms.digits(size, gap + 1, slash);
    int below = DayForms.digits(size, slash + 1, size.length());
    // Pipe sizes come in halves down to sixteenths, so the decimals end.
    boolean ends = below == 2 || below == 4 || below == 8 || below == 16;
    if (whole < 0 || above < 1 || !ends || above >= below) {
      return null;
    }
    return BigDecimal.valueOf(whole)
        .add(BigDecimal.valueOf(above).divide(BigDecimal.valueOf(below)));
  }
}
