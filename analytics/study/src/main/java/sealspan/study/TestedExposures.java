package sealspan.study;

import java.time.LocalDate;
import java.util.List;
import sealspan.stats.Estimate;
import sealspan.stats.regression.Design;
import sealspan.stats.regression.Family;
import sealspan.stats.regression.Observations;
import sealspan.stats.regression.Regression;
import sealspan.stats.regression.RegressionFit;
import sealspan.table.AssemblyRows;
import sealspan.table.ExposureRow;

/**
 * The exposures of a stratum in columns, one row for each counted test with an exposure. What
 * changes in the course of an exposure is taken at its middle, because the day of a failure lies
 * somewhere in it.
 *
 * @param failed 1 where the test failed, 0 where it passed
 * @param logYears logarithm of the exposure in years
 * @param year middle of the exposure, years since 2000
 * @param ordinal number of the test among those of the assembly, from 1
 * @param age middle of the exposure, years since the assembly was installed; NaN where unknown
 * @param assembly number of the assembly, from 0
 */
record TestedExposures(
    double[] failed,
    double[] logYears,
    double[] year,
    double[] ordinal,
    double[] age,
    int[] assembly) {
  static final int YEAR_ZERO = 2000;

  /**
   * The exposures of whole assemblies, or of one component where one is named.
   *
   * @param every takes every so-manieth assembly; 1 for all
   */
  static TestedExposures of(String component, List<AssemblyRows> members, int every) {
    String at = component == null ? RatePriors.WHOLE : component;
    GrowingColumns columns = new GrowingColumns(6);
    for (int m = every / 2; m < members.size(); m += every) {
      AssemblyRows rows = members.get(m);
      LocalDate installed = rows.assembly().installedOn();
      int ordinal = 0;
      for (ExposureRow exposure : rows.exposures()) {
        if (exposure.component().equals(at) && exposure.exposureDays() > 0) {
          ordinal++;
          double middle = (exposure.fromDay().toEpochDay() + exposure.toDay().toEpochDay()) / 2.0;
          double age = installed == null ? Double.NaN : middle - installed.toEpochDay();
          columns.add(
              exposure.failed() ? 1 : 0,
              StrictMath.log(exposure.exposureDays() / RatePriors.YEAR_DAYS),
              (middle - LocalDate.of(YEAR_ZERO, 1, 1).toEpochDay()) / RatePriors.YEAR_DAYS,
              ordinal,
              age >= 0 ? age / RatePriors.YEAR_DAYS : Double.NaN,
              m);
        }
      }
    }
    return of(columns);
  }

  private static TestedExposures of(GrowingColumns columns) {
    double[] numbers = columns.column(5);
    int[] assembly = new int[numbers.length];
    for (int i = 0; i < assembly.length; i++) {
      assembly[i] = (int) numbers[i];
    }
    return new TestedExposures(
        columns.column(0),
        columns.column(1),
        columns.column(2),
        columns.column(3),
        columns.column(4),
        assembly);
  }

  /** Those of assemblies whose age is known. */
  TestedExposures ofKnownAge() {
    GrowingColumns columns = new GrowingColumns(6);
    for (int i = 0; i < failed.length; i++) {
      if (!Double.isNaN(age[i])) {
        columns.add(failed[i], logYears[i], year[i], ordinal[i], age[i], assembly[i]);
      }
    }
    return of(columns);
  }

  int failures() {
    int sum = 0;
    for (double each : failed) {
      sum += (int) each;
    }
    return sum;
  }

  int assemblies() {
    int count = 0;
    for (int i = 0; i < assembly.length; i++) {
      count += i == 0 || assembly[i] != assembly[i - 1] ? 1 : 0;
    }
    return count;
  }

  /** The regression on one column. */
  Estimate<RegressionFit> by(String name, double[] column) {
    return fit(Design.ofRows(failed.length).constant().column(name, column));
  }

  /** The regression on two columns. */
  Estimate<RegressionFit> by(String first, double[] one, String second, double[] other) {
    return fit(Design.ofRows(failed.length).constant().column(first, one).column(second, other));
  }

  private Estimate<RegressionFit> fit(Design design) {
    return Regression.fit(
        Family.CLOGLOG, Observations.of(design, failed).offset(logYears).cluster(assembly));
  }
}
