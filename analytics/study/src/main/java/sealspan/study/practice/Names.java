package sealspan.study.practice;

/** Ids and names of the invented things; numbers from 1, with seven digits. */
final class Names {
  private Names() {}

  static String digits(int number) {
    String text = Integer.toString(number + 1);
    return "0000000".substring(Math.min(text.length(), 7)) + text;
  }

  static String position(int position) {
    return "P" + digits(position);
  }

  /** Units at one position are A0000001, A0000001-2, A0000001-3 and so on. */
  static String assembly(int position, int unit) {
    return "A" + digits(position) + (unit == 0 ? "" : "-" + (unit + 1));
  }

  static String tester(int tester) {
    return "T" + digits(tester);
  }

  static String gauge(int tester) {
    return "G" + digits(tester);
  }

  static String zone(int zone) {
    return "Z" + (zone < 9 ? "0" : "") + (zone + 1);
  }
}
