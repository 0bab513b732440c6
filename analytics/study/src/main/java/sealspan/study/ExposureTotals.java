package sealspan.study;

import sealspan.assembly.AssemblyHistory;
import sealspan.assembly.TestExposure;

/**
 * Sums of the exposures of whole assemblies.
 *
 * @param tests counted rounds with an exposure
 * @param failures of these, failed on performance
 * @param days sum of the exposures
 */
record ExposureTotals(int tests, int failures, long days) {
  static ExposureTotals of(AssemblyHistory history) {
    int tests = 0;
    int failures = 0;
    long days = 0;
    for (TestExposure exposure : history.exposures()) {
      if (exposure.at().equals(AssemblyHistory.WHOLE)) {
        tests++;
        failures += exposure.failed() ? 1 : 0;
        days += exposure.exposureDays();
      }
    }
    return new ExposureTotals(tests, failures, days);
  }
}
