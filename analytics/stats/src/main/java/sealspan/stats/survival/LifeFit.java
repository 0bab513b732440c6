package sealspan.stats.survival;

/** A curve of lives with a shape taken for granted, fitted by maximum likelihood. */
public sealed interface LifeFit permits ExponentialFit, WeibullFit, LognormalFit {

  /** Parameters fitted. */
  int parameters();

  /** Log-likelihood at the maximum; known ends count by their density per day. */
  double logLikelihood();

  /** Share that lasts beyond a day, at least 0. */
  double shareBeyond(int day);

  /** The age by which this share has ended, days. */
  double quantileDays(double share);

  /**
   * Akaike's criterion, 2 x parameters - 2 x log-likelihood: of two curves fitted to the same lives
   * the one with the smaller is to be preferred; differences below 2 say little (Burnham and
   * Anderson 2002, from memory).
   */
  default double aic() {
    return 2.0 * parameters() - 2 * logLikelihood();
  }
}
