package sealspan.stats;

import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BrentSolver;

/** Roots of monotone functions, found to about fourteen digits. */
public final class RootSearch {
  private static final double RELATIVE = 1e-15;
  private static final double ABSOLUTE = 1e-14;
  private static final int EVALUATIONS = 500;

  private RootSearch() {}

  /** The root between two points at which the function has opposite signs (or is zero). */
  public static double between(UnivariateFunction function, double lower, double upper) {
    double atLower = function.value(lower);
    double atUpper = function.value(upper);
    if (atLower == 0 || lower == upper) {
      return lower;
    }
    if (atUpper == 0) {
      return upper;
    }
    if (atLower * atUpper > 0) {
      throw new IllegalArgumentException(
          "no sign change between "
              + lower
              + " ("
              + atLower
              + ") and "
              + upper
              + " ("
              + atUpper
              + ")");
    }
    return new BrentSolver(RELATIVE, ABSOLUTE).solve(EVALUATIONS, function, lower, upper);
  }

  /**
   * The root of a monotone function on the whole line: steps outward from the start with doubling
   * width until the sign changes.
   */
  public static double around(UnivariateFunction function, double start, double firstStep) {
    double atStart = function.value(start);
    if (atStart == 0) {
      return start;
    }
    double step = firstStep;
    for (int i = 0; i < 60; i++) {
      if (function.value(start + step) * atStart <= 0) {
        return between(function, start, start + step);
      }
      if (function.value(start - step) * atStart <= 0) {
        return between(function, start - step, start);
      }
      step *= 2;
    }
    throw new IllegalArgumentException("no sign change found around " + start);
  }
}
