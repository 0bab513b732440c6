package sealspan.answers.chart;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * A stretch of numbers or days with round marks on it. Its ends are marks where they are free.
 *
 * @param name what it shows, with its unit
 * @param low its lower end
 * @param high its upper end, above the lower one
 * @param marks the marks, ascending, within the ends
 */
record Axis(String name, double low, double high, List<Mark> marks) {
  private static final int MARKS = 5;
  private static final double[] ROUND = {1, 2, 2.5, 5, 10};
  private static final int[] MONTHS = {1, 2, 3, 6, 12, 24, 60, 120, 240};
  private static final double DAYS_OF_A_MONTH = 30.4375;

  /** A mark: its place and what is written there. */
  record Mark(double at, String label) {}

  /** An axis of numbers that reaches out to round ones. */
  static Axis ofNumbers(String name, double lowest, double highest) {
    double room = lowest == highest ? Math.max(1, Math.abs(lowest)) / 2 : 0;
    double step = roundStep((highest - lowest + 2 * room) / MARKS);
    long first = (long) Math.floor((lowest - room) / step + 1e-9);
    long last = (long) Math.ceil((highest + room) / step - 1e-9);
    List<Mark> marks = new ArrayList<>();
    for (long i = first; i <= last; i++) {
      marks.add(new Mark(i * step, label(i, step)));
    }
    return new Axis(name, first * step, last * step, List.copyOf(marks));
  }

  /** An axis of days, given as days since 1970-01-01, with marks on first days of months. */
  static Axis ofDays(String name, double lowest, double highest) {
    double room = lowest == highest ? 15 : 0;
    double low = lowest - room;
    double high = highest + room;
    int months = MONTHS[MONTHS.length - 1];
    for (int i = MONTHS.length - 1; i >= 0; i--) {
      months = (high - low) / DAYS_OF_A_MONTH / MONTHS[i] <= MARKS + 1 ? MONTHS[i] : months;
    }
    LocalDate first = LocalDate.ofEpochDay((long) Math.floor(low));
    int count = first.getYear() * 12 + first.getMonthValue() - 1;
    List<Mark> marks = new ArrayList<>();
    for (int m = Math.floorDiv(count, months) * months; ; m += months) {
      LocalDate day = LocalDate.of(Math.floorDiv(m, 12), Math.floorMod(m, 12) + 1, 1);
      if (day.toEpochDay() > high) {
        return new Axis(name, low, high, List.copyOf(marks));
      }
      if (day.toEpochDay() >= low) {
        String label = months % 12 == 0 ? "" + day.getYear() : day.toString().substring(0, 7);
        marks.add(new Mark(day.toEpochDay(), label));
      }
    }
  }

  /** Where a value lies between the ends: 0 at the lower, 1 at the upper; never outside. */
  double share(double value) {
    return Math.max(0, Math.min(1, (value - low) / (high - low)));
  }

  private static double roundStep(double least) {
    double power = Math.pow(10, Math.floor(Math.log10(least)));
    for (double factor : ROUND) {
      if (factor * power >= least * (1 - 1e-9)) {
        return factor * power;
      }
    }
    return 10 * power;
  }

  private static String label(long count, double step) {
    BigDecimal exact =
        BigDecimal.valueOf(step)
            .round(new java.math.MathContext(2))
            .multiply(BigDecimal.valueOf(count));
    return exact.signum() == 0 ? "0" : exact.stripTrailingZeros().toPlainString();
  }
}
