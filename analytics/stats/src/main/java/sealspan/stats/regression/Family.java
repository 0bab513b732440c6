package sealspan.stats.regression;

import org.hipparchus.special.Gamma;

/**
 * How the mean of a response follows from the linear predictor, and the likelihood that goes with
 * it. All three log-likelihoods are concave in the linear predictor.
 */
public enum Family {
  /** Counts; mean = exp(predictor). The offset is the logarithm of the exposure. */
  POISSON {
    @Override
    public double mean(double predictor) {
      return StrictMath.exp(predictor);
    }

    @Override
    void at(double response, double predictor, Terms out) {
      double mean = StrictMath.exp(predictor);
      out.logLikelihood = (response == 0 ? 0 : response * predictor) - mean;
      out.score = response - mean;
      out.curvature = mean;
      out.information = mean;
    }

    @Override
    double constant(double response) {
      return -Gamma.logGamma(response + 1);
    }

    @Override
    double saturated(double response) {
      return response == 0 ? 0 : response * StrictMath.log(response) - response;
    }

    @Override
    double variance(double predictor) {
      return StrictMath.exp(predictor);
    }

    @Override
    double start(double meanResponse, double meanExposure) {
      return StrictMath.log(meanResponse / meanExposure);
    }
  },

  /** Shares between 0 and 1; mean = 1 / (1 + exp(-predictor)). */
  LOGISTIC {
    @Override
    public double mean(double predictor) {
      return 1 / (1 + StrictMath.exp(-predictor));
    }

    @Override
    void at(double response, double predictor, Terms out) {
      double small = StrictMath.exp(-Math.abs(predictor));
      double mean = predictor > 0 ? 1 / (1 + small) : small / (1 + small);
      double rest = predictor > 0 ? small / (1 + small) : 1 / (1 + small);
      out.logLikelihood =
          (response - 1) * Math.max(0, predictor)
              + response * Math.min(0, predictor)
              - StrictMath.log1p(small);
      out.score = response * rest - (1 - response) * mean;
      out.curvature = mean * rest;
      out.information = out.curvature;
    }

    @Override
    double saturated(double response) {
      return entropy(response);
    }

    @Override
    double variance(double predictor) {
      double small = StrictMath.exp(-Math.abs(predictor));
      return small / ((1 + small) * (1 + small));
    }

    @Override
    double start(double meanResponse, double meanExposure) {
      return StrictMath.log(meanResponse / (1 - meanResponse));
    }
  },

  /**
   * Shares between 0 and 1; mean = 1 - exp(-exp(predictor)): a failure that a constant hazard
   * brings before the test. The offset is the logarithm of the exposure; coefficients are
   * logarithms of ratios of rates.
   */
  CLOGLOG {
    @Override
    public double mean(double predictor) {
      return -StrictMath.expm1(-StrictMath.exp(predictor));
    }

    @Override
    void at(double response, double predictor, Terms out) {
      double hazard = StrictMath.exp(predictor);
      double minusOne = StrictMath.expm1(hazard);
      boolean certain = hazard > 700;
      double failed = certain ? 0 : hazard == 0 ? 1 : hazard / minusOne;
      out.logLikelihood = -(1 - response) * hazard;
      out.score = -(1 - response) * hazard;
      out.curvature = (1 - response) * hazard;
      if (response > 0) {
        double logMean = hazard < 1e-300 ? predictor : StrictMath.log(-StrictMath.expm1(-hazard));
        out.logLikelihood += response * logMean;
        out.score += response * failed;
        // failed (hazard + failed - 1), written so that small hazards cancel nothing
        out.curvature += certain ? 0 : response * failed * bend(hazard, failed);
      }
      if (response == 1) {
        out.logLikelihood = hazard == Double.POSITIVE_INFINITY ? 0 : out.logLikelihood;
        out.score = failed;
        out.curvature = certain ? 0 : failed * bend(hazard, failed);
      }
      out.information = certain ? 0 : hazard * failed;
    }

    private double bend(double hazard, double failed) {
      return hazard < 1e-4 ? hazard / 2 + hazard * hazard / 12 : hazard + failed - 1;
    }

    @Override
    double saturated(double response) {
      return entropy(response);
    }

    @Override
    double variance(double predictor) {
      double pass = StrictMath.exp(-StrictMath.exp(predictor));
      return pass * mean(predictor);
    }

    @Override
    double start(double meanResponse, double meanExposure) {
      return StrictMath.log(-StrictMath.log1p(-meanResponse) / meanExposure);
    }
  };

  /** Mean response at a linear predictor, offset included. */
  public abstract double mean(double predictor);

  /** Log-likelihood (up to {@link #constant}), its slope and two forms of its curvature. */
  abstract void at(double response, double predictor, Terms out);

  /** The part of the log-likelihood that depends on the response only. */
  double constant(double response) {
    return 0;
  }

  /** The greatest log-likelihood that any predictor could give, without {@link #constant}. */
  abstract double saturated(double response);

  /** Variance of the response at a linear predictor. */
  abstract double variance(double predictor);

  /** Constant predictor that fits a mean response when the exposure has a mean. */
  abstract double start(double meanResponse, double meanExposure);

  /** Rejects a response outside of the family's domain. */
  void requireResponse(double response, int row) {
    double highest = this == POISSON ? Double.MAX_VALUE : 1;
    if (!(response >= 0 && response <= highest)) {
      throw new IllegalArgumentException(
          "row " + (row + 1) + ": the response " + response + " is outside of 0 to " + highest);
    }
  }

  private static double entropy(double p) {
    return (p == 0 ? 0 : p * StrictMath.log(p)) + (p == 1 ? 0 : (1 - p) * StrictMath.log1p(-p));
  }

  /** What one row gives. */
  static final class Terms {
    double logLikelihood;
    double score;

    /** Minus the second derivative. */
    double curvature;

    /** Its expectation over responses. */
    double information;
  }
}
