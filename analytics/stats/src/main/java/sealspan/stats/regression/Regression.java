package sealspan.stats.regression;

import java.util.List;
import sealspan.stats.Estimate;

/**
 * Generalised linear models by maximum likelihood, with a model-based covariance and one that
 * allows for dependence within clusters (the sandwich of Liang and Zeger 1986, Biometrika 73:13).
 * Work of order rows x columns squared per step; sums run in order of the rows.
 */
public final class Regression {
  private Regression() {}

  /** Fits without a ridge. */
  public static Estimate<RegressionFit> fit(Family family, Observations data) {
    return fit(family, data, Ridge.NONE);
  }

  /**
   * Fits; not identified without observations, when a column is a combination of others, or when
   * the outcomes are separated, so that a coefficient grows without end.
   */
  public static Estimate<RegressionFit> fit(Family family, Observations data, Ridge ridge) {
    double[] penalties = ridge.penalties(data.design());
    String obstacle = obstacle(family, data, penalties);
    if (obstacle != null) {
      return Estimate.notIdentified(obstacle);
    }
    LogLikelihoodAscent.Top top = LogLikelihoodAscent.climb(family, data, penalties);
    if (!top.separated().isEmpty()) {
      return Estimate.notIdentified(
          "the outcomes are separated by "
              + String.join(" and ", top.separated())
              + ", so the likelihood has no highest point");
    }
    if (!top.converged()) {
      return Estimate.notIdentified("the likelihood has no clear maximum");
    }
    return Estimate.of(Covariances.complete(family, data, penalties, top));
  }

  /**
   * The highest log-likelihood that the columns can reach, also where it is reached only at
   * infinity: twice the difference of two nested models is a likelihood-ratio statistic.
   */
  public static double highestLogLikelihood(Family family, Observations data) {
    double[] none = new double[data.design().names().size()];
    return LogLikelihoodAscent.climb(family, data, none).logLikelihood();
  }

  private static String obstacle(Family family, Observations data, double[] penalties) {
    double weights = 0;
    double weighted = 0;
    for (int i = 0; i < data.response().length; i++) {
      family.requireResponse(data.response()[i], i);
      weights += data.weight()[i];
      weighted += data.weight()[i] * data.response()[i];
    }
    if (weights == 0) {
      return "there is no observation";
    }
    if (weighted == 0) {
      return family == Family.POISSON
          ? "there is no event among " + data.response().length + " observations"
          : "none of the " + data.response().length + " observations failed";
    }
    if (family != Family.POISSON && weighted == weights) {
      return "all of the " + data.response().length + " observations failed";
    }
    List<String> dependent = Collinearity.dependentColumns(data, penalties);
    if (!dependent.isEmpty()) {
      return "the column " + dependent.get(0) + " follows from the columns before it";
    }
    return null;
  }
}
