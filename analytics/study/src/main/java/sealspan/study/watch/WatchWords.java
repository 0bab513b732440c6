package sealspan.study.watch;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers in words that do not depend on the machine. */
final class WatchWords {
  private WatchWords() {}

  /** Two significant digits, without an exponent. */
  static String twoDigits(double value) {
    if (value == 0) {
      return "0";
    }
    BigDecimal rounded =
        new BigDecimal(value, new MathContext(2, RoundingMode.HALF_EVEN)).stripTrailingZeros();
    return (rounded.scale() < 0 ? rounded.setScale(0) : rounded).toPlainString();
  }
}
