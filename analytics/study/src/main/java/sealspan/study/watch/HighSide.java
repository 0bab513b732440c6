package sealspan.study.watch;

import java.util.ArrayList;
import java.util.List;
import sealspan.stats.Confidence;
import sealspan.study.fouling.FoulingModel;
import sealspan.table.FoulingCoefficientRow;

/**
 * Probabilities on the high side, for the watch to go by: its time to a false alarm is at least the
 * one stated while the true probabilities are no higher than the stated ones, and fitted ones are
 * too low as often as too high. So the rate of each type is raised to the upper end of where it
 * lies with probability {@value #QUANTILE}, by the limits of the fit. Season, exposure and number
 * of rounds stay as fitted: over a year and over many sites their errors even out.
 */
public final class HighSide {
  /** How sure it is that the true rate of a type is no higher. */
  public static final double QUANTILE = .9;

  private static final double LEVEL_OF_LIMITS = .95;

  private HighSide() {}

  /**
   * The coefficients with the rates raised. Coefficients without an upper limit stay.
   *
   * @param fitted coefficients with limits of 95 %
   */
  public static List<FoulingCoefficientRow> of(List<FoulingCoefficientRow> fitted) {
    double ofAll =
        fitted.stream()
            .filter(row -> row.name().equals(FoulingModel.CONSTANT))
            .mapToDouble(HighSide::error)
            .findFirst()
            .orElse(0);
    // One level for both tails leaves 1 - QUANTILE above.
    double z = Confidence.z(2 * QUANTILE - 1);
    List<FoulingCoefficientRow> raised = new ArrayList<>();
    for (FoulingCoefficientRow row : fitted) {
      double by = 0;
      if (row.name().equals(FoulingModel.CONSTANT)) {
        by = z * ofAll;
      } else if (row.name().startsWith(FoulingModel.TYPE + "=")) {
        by = z * Math.max(0, ofType(error(row), ofAll) - ofAll);
      }
      raised.add(new FoulingCoefficientRow(row.name(), row.value() + by, null, null));
    }
    return List.copyOf(raised);
  }

  /**
   * The error of the logarithm of a type's rate: its coefficient is the difference of two rates,
   * which are as good as independent, so its variance is the sum of theirs.
   */
  private static double ofType(double ofDifference, double ofBase) {
    return StrictMath.sqrt(Math.max(0, ofDifference * ofDifference - ofBase * ofBase));
  }

  private static double error(FoulingCoefficientRow row) {
    return row.upper() == null ? 0 : (row.upper() - row.value()) / Confidence.z(LEVEL_OF_LIMITS);
  }
}
