package sealspan.stats.effect;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import sealspan.stats.Confidence;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;

/**
 * Conditional logistic regression: within each stratum the number of failures is taken as given, so
 * that everything that a stratum shares cancels. The likelihood is exact, also with several
 * failures in a stratum (Gail, Lubin and Rubinstein 1981, Biometrika 68:703).
 */
public final class MatchedChoice {
  private static final int STEPS = 60;
  private static final double FARTHEST = 15;

  private MatchedChoice() {}

  /**
   * One stratum.
   *
   * @param covariates one row for each case, all of one length
   * @param failed which cases failed
   */
  public record Stratum(double[][] covariates, boolean[] failed) {
    /** Whether both outcomes occur and some covariate differs: else it tells nothing. */
    public boolean tells() {
      if (!hasBothOutcomes()) {
        return false;
      }
      for (double[] row : covariates) {
        if (!Arrays.equals(row, covariates[0])) {
          return true;
        }
      }
      return false;
    }

    boolean hasBothOutcomes() {
      int failures = failures();
      return failures > 0 && failures < failed.length;
    }

    int failures() {
      int count = 0;
      for (boolean one : failed) {
        count += one ? 1 : 0;
      }
      return count;
    }
  }

  /**
   * A fit.
   *
   * @param coefficients log odds ratios
   * @param standardErrors their standard errors
   * @param logLikelihood the conditional log likelihood, ridge not included
   * @param strata strata that tell something
   */
  public record Fit(
      double[] coefficients, double[] standardErrors, double logLikelihood, int strata) {
    /** The odds ratio of one covariate, with its interval on the log scale. */
    public PointEstimate oddsRatio(int column, double level) {
      double half = Confidence.z(level) * standardErrors[column];
      double ratio = StrictMath.exp(coefficients[column]);
      return new PointEstimate(
          ratio,
          ratio * standardErrors[column],
          new Interval(ratio * StrictMath.exp(-half), ratio * StrictMath.exp(half), level));
    }
  }

  /**
   * Fits.
   *
   * @param strata the strata; one outcome alone is certain when its number is given
   * @param ridges for each covariate, the inverse of the variance of its normal prior; 0 for none
   */
  public static Estimate<Fit> fit(List<Stratum> strata, double[] ridges) {
    List<Stratum> both = strata.stream().filter(Stratum::hasBothOutcomes).toList();
    int telling = (int) both.stream().filter(Stratum::tells).count();
    if (telling == 0) {
      return Estimate.notIdentified(
          "in no stratum do both outcomes and both actions occur, so nothing can be compared");
    }
    int p = ridges.length;
    double[] at = new double[p];
    MatchedLikelihood here = MatchedLikelihood.of(both, at, ridges);
    for (int step = 0; step < STEPS; step++) {
      DecompositionSolver solver = solver(here.information());
      if (solver == null) {
        return Estimate.notIdentified("a covariate does not vary within strata");
      }
      double[] move = solver.solve(new ArrayRealVector(here.gradient(), false)).toArray();
      double gain = 0;
      for (int j = 0; j < p; j++) {
        gain += move[j] * here.gradient()[j];
      }
      if (gain < 1e-16) {
        return Estimate.of(fitted(at, solver, here, telling));
      }
      MatchedLikelihood next = null;
      double[] there = at;
      for (double part = 1; part > 1e-9; part /= 2) {
        there = moved(at, move, part);
        next = MatchedLikelihood.of(both, there, ridges);
        if (next.penalised() >= here.penalised() - 1e-12 * Math.abs(here.penalised())) {
          break;
        }
      }
      at = there;
      here = next;
      if (Arrays.stream(at).anyMatch(b -> Math.abs(b) > FARTHEST)) {
        return Estimate.notIdentified("within strata, one covariate decides every outcome");
      }
    }
    return Estimate.notIdentified("the conditional likelihood has no clear maximum");
  }

  private static Fit fitted(
      double[] at, DecompositionSolver solver, MatchedLikelihood here, int strata) {
    double[] errors = new double[at.length];
    for (int j = 0; j < errors.length; j++) {
      errors[j] = Math.sqrt(solver.getInverse().getEntry(j, j));
    }
    return new Fit(at, errors, here.logLikelihood(), strata);
  }

  private static DecompositionSolver solver(double[][] information) {
    double largest = 0;
    for (int j = 0; j < information.length; j++) {
      largest = Math.max(largest, information[j][j]);
    }
    for (int j = 0; j < information.length; j++) {
      if (!(information[j][j] > 1e-10 * Math.max(1e-3, largest))) {
        return null;
      }
    }
    try {
      return new CholeskyDecomposition(new Array2DRowRealMatrix(information), 1e-9, 1e-13)
          .getSolver();
    } catch (org.hipparchus.exception.MathIllegalArgumentException notPositive) {
      return null;
    }
  }

  private static double[] moved(double[] at, double[] move, double part) {
    double[] there = at.clone();
    for (int j = 0; j < there.length; j++) {
      there[j] += part * Math.max(-2, Math.min(2, move[j]));
    }
    return there;
  }
}
