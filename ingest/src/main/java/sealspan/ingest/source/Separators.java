package sealspan.ingest.source;

/** Finds the separator of a table from its header. */
final class Separators {
  private static final char[] KNOWN = {',', ';', '\t', '|'};

  private Separators() {}

  /** The separator that stands most often outside of quotes; a comma where none stands. */
  static char of(String header) {
    char best = ',';
    int most = 0;
    for (char separator : KNOWN) {
      int count = 0;
      boolean quoted = false;
      for (int i = 0; i < header.length(); i++) {
        char c = header.charAt(i);
        quoted ^= c == '"';
        count += !quoted && c == separator ? 1 : 0;
      }
      if (count > most) {
        most = count;
        best = separator;
      }
    }
    return best;
  }

  /** The name of a separator in words. */
  static String name(char separator) {
    return switch (separator) {
      case ',' -> "comma";
      case ';' -> "semicolon";
      case '\t' -> "tab";
      case '|' -> "bar";
      default -> "'" + separator + "'";
    };
  }
}
