package sealspan.study;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.rates.CountedRate;
import sealspan.stats.rates.HiddenFailureRate;
import sealspan.stats.rates.HiddenFailures;
import sealspan.stats.rates.RateEstimate;
import sealspan.table.AssemblyRows;
import sealspan.table.ExposureRow;
import sealspan.table.YearlyRateRow;

/** Failures by the year of the test that found them, and replacements by their year. */
final class YearlyRates {
  private static final double LEVEL = 0.95;

  /** With more tests in a year the exact interval costs more than it tells. */
  private static final int MOST_TESTS_EXACT = 500;

  /** What came together in one year. */
  private static final class Year {
    private int[] days = new int[16];
    private boolean[] failed = new boolean[16];
    private int tests;
    private int replacements;
    private long watchedDays;

    void test(int exposureDays, boolean fails) {
      if (tests == days.length) {
        days = Arrays.copyOf(days, 2 * tests);
        failed = Arrays.copyOf(failed, 2 * tests);
      }
      days[tests] = exposureDays;
      failed[tests++] = fails;
    }
  }

  private YearlyRates() {}

  /** The years of a stratum, ascending; at the positions of one component where one is named. */
  static List<YearlyRateRow> of(String stratum, String component, Members members) {
    String at = component == null ? RatePriors.WHOLE : component;
    Map<Integer, Year> years = new TreeMap<>();
    for (AssemblyRows rows : members) {
      for (ExposureRow exposure : rows.exposures()) {
        if (exposure.component().equals(at) && exposure.exposureDays() > 0) {
          year(years, exposure.toDay()).test(exposure.exposureDays(), exposure.failed());
        }
      }
      ReplacementDays replaced = ReplacementDays.of(rows, component);
      if (replaced != null) {
        for (int day : replaced.days()) {
          year(years, LocalDate.ofEpochDay(day)).replacements++;
        }
        watch(years, LocalDate.ofEpochDay(replaced.entry()), LocalDate.ofEpochDay(replaced.exit()));
      }
    }
    List<YearlyRateRow> rows = new ArrayList<>();
    years.forEach((year, found) -> rows.add(row(stratum, year, found)));
    return rows;
  }

  private static Year year(Map<Integer, Year> years, LocalDate day) {
    return years.computeIfAbsent(day.getYear(), y -> new Year());
  }

  private static void watch(Map<Integer, Year> years, LocalDate entry, LocalDate exit) {
    for (int year = entry.getYear(); year <= exit.getYear(); year++) {
      LocalDate last = LocalDate.of(year, 12, 31);
      LocalDate from = year == entry.getYear() ? entry : LocalDate.of(year - 1, 12, 31);
      LocalDate to = exit.isBefore(last) ? exit : last;
      year(years, to).watchedDays += SealPosition.days(from, to);
    }
  }

  private static YearlyRateRow row(String stratum, int year, Year found) {
    HiddenFailures tests =
        HiddenFailures.of(
            Arrays.copyOf(found.days, found.tests), Arrays.copyOf(found.failed, found.tests));
    Estimate<RateEstimate> rate =
        tests.tests() <= MOST_TESTS_EXACT
            ? HiddenFailureRate.exact(tests, LEVEL)
            : HiddenFailureRate.likelihoodRatio(tests, LEVEL);
    RateEstimate failures =
        tests.tests() > 0 && rate instanceof Estimate.Identified<RateEstimate> r ? r.value() : null;
    double watchedYears = found.watchedDays / RatePriors.YEAR_DAYS;
    Interval replaced =
        found.watchedDays > 0 ? CountedRate.garwood(found.replacements, watchedYears, LEVEL) : null;
    return new YearlyRateRow(
        stratum,
        year,
        tests.tests(),
        tests.failures(),
        tests.totalDays(),
        failures == null ? null : RatePriors.finite(failures.perDay()),
        failures == null ? null : RatePriors.finite(failures.interval().lower()),
        failures == null ? null : RatePriors.finite(failures.interval().upper()),
        found.replacements,
        found.watchedDays,
        replaced == null ? null : found.replacements / watchedYears,
        replaced == null ? null : replaced.lower(),
        replaced == null ? null : replaced.upper());
  }
}
