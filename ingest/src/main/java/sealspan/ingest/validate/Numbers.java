package sealspan.ingest.validate;

import java.util.Locale;
import sealspan.event.Unit;

/** Numbers as people write them. */
final class Numbers {
  private Numbers() {}

  /** The number as decimal text with a point and its digits as entered; null where it is none. */
  static String plain(String text, Notation.DecimalMark mark) {
    char point = mark == Notation.DecimalMark.POINT ? '.' : ',';
    int begin = !text.isEmpty() && (text.charAt(0) == '+' || text.charAt(0) == '-') ? 1 : 0;
    int digits = 0;
    int marks = 0;
    for (int i = begin; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c >= '0' && c <= '9') {
        digits++;
      } else if (c == point) {
        marks++;
      } else {
        return null;
      }
    }
    if (digits == 0 || digits > 30 || marks > 1) {
      return null;
    }
    String number = text.charAt(0) == '+' ? text.substring(1) : text;
    return point == ',' ? number.replace(',', '.') : number;
  }

  /** What to do about a text that is no number. */
  static String advice(String text, Notation.DecimalMark mark) {
    if (mark == Notation.DecimalMark.POINT && text.indexOf(',') >= 0) {
      return "Write a decimal point and no thousands mark, or set decimalMark in a mapping.";
    }
    if (mark == Notation.DecimalMark.COMMA && text.indexOf('.') >= 0) {
      return "The mapping says that decimals follow a comma; write no thousands mark.";
    }
    return "Write a number such as 8.2, or leave the cell empty where it is not recorded.";
  }

  /** Where the number at the begin of a text ends; 0 where it begins with none. */
  static int numberEnd(String text) {
    int end = 0;
    while (end < text.length()) {
      char c = text.charAt(end);
      boolean sign = end == 0 && (c == '-' || c == '+');
      if (!sign && (c < '0' || c > '9') && c != '.' && c != ',') {
        return end;
      }
      end++;
    }
    return end;
  }

  /** Whether a text is meant as a number. */
  static boolean looksLike(String text) {
    char first = text.charAt(0);
    char second = text.length() > 1 ? text.charAt(1) : first;
    return first >= '0' && first <= '9'
        || (first == '.' || first == '-' || first == '+' || first == ',')
            && (second >= '0' && second <= '9' || second == '.');
  }

  /** The unit of a word; null where it is none. */
  static Unit unit(String word) {
    return switch (word.toLowerCase(Locale.ROOT)) {
      case "psi", "psid", "lb", "lbs" -> Unit.PSI;
      case "kpa" -> Unit.KPA;
      case "bar" -> Unit.BAR;
      case "mm" -> Unit.MM;
      case "in", "in.", "inch", "inches", "\"" -> Unit.INCH;
      case "c", "\u00b0c" -> Unit.CELSIUS;
      case "f", "\u00b0f" -> Unit.FAHRENHEIT;
      default -> null;
    };
  }
}
