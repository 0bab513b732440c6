package sealspan.ingest.source;

import java.math.BigDecimal;
import java.util.Locale;

/**
 * What value and detection condition of a water result say together. A result that was not detected
 * has no number, whatever stands in the column of values: some providers write zero there, some the
 * limit.
 *
 * @param value the number; empty where none was found
 * @param detection code of the detection
 * @param limit limit of detection or quantification; empty where not given
 * @param limitFromValue whether the limit stood in the column of values
 */
record PortalResult(String value, String detection, String limit, boolean limitFromValue) {
  private static final String NOT_DETECTED = "not_detected";
  private static final String BELOW = "below_quantification";
  private static final String ABOVE = "above_quantification";

  /** The result; null where neither value nor condition says anything. */
  static PortalResult of(String value, String condition, String limit) {
    String censored = censoring(condition);
    if (censored != null) {
      return new PortalResult("", censored, limit, false);
    }
    if (value.isEmpty()) {
      return null;
    }
    char first = value.charAt(0);
    if (first == '<' || first == '>') {
      String number = plain(value.substring(value.startsWith("=", 1) ? 2 : 1).trim());
      boolean taken = limit.isEmpty();
      return new PortalResult(
          "", first == '<' ? NOT_DETECTED : ABOVE, taken ? number : limit, taken);
    }
    String word = censoring(value);
    return word != null
        ? new PortalResult("", word, limit, false)
        : new PortalResult(plain(value), "measured", limit, false);
  }

  /** The code of a condition that means that no number was found; null for others. */
  private static String censoring(String condition) {
    String text = condition.toLowerCase(Locale.ROOT).replace("*", "").trim();
    if (text.isEmpty() || text.equals("detected") || text.equals("present")) {
      return null;
    }
    if (text.contains("above") || text.contains(">")) {
      return ABOVE;
    }
    if (text.startsWith("not detected")
        || text.startsWith("non-detect")
        || text.startsWith("nondetect")
        || text.startsWith("below detection")
        || text.startsWith("below method detection")
        || text.equals("nd")
        || text.equals("u")) {
      return NOT_DETECTED;
    }
    return text.contains("below") || text.contains("<") || text.startsWith("detected not quant")
        ? BELOW
        : null;
  }

  /** A number with an exponent in plain decimals; any other text as it is. */
  private static String plain(String text) {
    if (text.indexOf('e') < 0 && text.indexOf('E') < 0) {
      return text;
    }
    try {
      BigDecimal number = new BigDecimal(text);
      return Math.abs(number.scale()) > 30 ? text : number.toPlainString();
    } catch (NumberFormatException e) {
      // Not a number: the validation says so, with the text as it stands.
      return text;
    }
  }
}
