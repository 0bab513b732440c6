package sealspan.study;

import java.time.LocalDate;
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
 * @param failures failed tests, also of assemblies that were not taken
 * @param assemblies assemblies with a test, also those that were not taken
 */
record TestedExposures(
    double[] failed,
    double[] logYears,
    double[] year,
    double[] ordinal,
    double[] age,
    int[] assembly,
    int failures,
    int assemblies) {
  static final int YEAR_ZERO = 2000;

  /**
   * The exposures of whole assemblies, or of one component where one is named.
   *
   * @param every takes every so-manieth assembly; 1 for all
   */
  static TestedExposures of(String component, Members members, int every) {
    String at = component == null ? RatePriors.WHOLE : component;
    GrowingColumns columns = new GrowingColumns(6);
    int failures = 0;
    int assemblies = 0;
    int number = -1;
    for (AssemblyRows rows : members) {
      number++;
      boolean taken = number % every == every / 2;
      LocalDate installed = rows.assembly().installedOn();
      int ordinal = 0;
      for (ExposureRow exposure : rows.exposures()) {
        if (exposure.component().equals(at) && exposure.exposureDays() > 0) {
          ordinal++;
          failures += exposure.failed() ? 1 : 0;
          if (!taken) {
            continue;
          }
          double middle = (exposure.fromDay().toEpochDay() + exposure.toDay().toEpochDay()) / 2.0;
          double age = installed == null ? Double.NaN : middle - installed.toEpochDay();
          columns.add(
              exposure.failed() ? 1 : 0,
              StrictMath.log(exposure.exposureDays() / RatePriors.YEAR_DAYS),
              (middle - LocalDate.of(YEAR_ZERO, 1, 1).toEpochDay()) / RatePriors.YEAR_DAYS,
              ordinal,
              age >= 0 ? age / RatePriors.YEAR_DAYS : Double.NaN,
              number);
        }
      }
      assemblies += ordinal > 0 ? 1 : 0;
    }
    return of(columns, failures, assemblies);
  }

  private static TestedExposures of(GrowingColumns columns, int failures, int assemblies) {
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
        assembly,
        failures,
        assemblies);
  }

  /** Those of assemblies whose age is known. */
  TestedExposures ofKnownAge() {
    GrowingColumns columns = new GrowingColumns(6);
    for (int i = 0; i < failed.length; i++) {
      if (!Double.isNaN(age[i])) {
        columns.add(failed[i], logYears[i], year[i], ordinal[i], age[i], assembly[i]);
      }
    }
    return of(columns, failures, assemblies);
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
