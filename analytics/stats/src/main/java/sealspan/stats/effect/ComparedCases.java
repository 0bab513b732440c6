package sealspan.stats.effect;

import java.util.List;
import sealspan.stats.regression.Design;

/**
 * Cases that got one of two actions, what was known of each before, and how it went on. Covariates
 * are put on a common scale: mean 0 and standard deviation 1 over all cases; one that does not vary
 * is left empty, because it cannot explain anything. Arrays are not to be changed.
 */
public final class ComparedCases {
  private final List<String> names;
  private final double[] means;
  private final double[] deviations;
  private final double[][] scaled;
  private final boolean[] second;
  private final boolean[] failed;
  private final double[] exposure;
  private final int[] unit;

  /**
   * Takes the cases.
   *
   * @param names names of the covariates
   * @param covariates one column for each name, with one finite value for each case, known before
   *     the action
   * @param second whether a case got the second action; else the first
   * @param failed whether it was found failed when it was looked at next
   * @param exposure time until it was looked at, above 0; a risk is that of one unit of this time
   * @param unit which unit a case belongs to, from 0 to one less than the cases; units are sampled
   *     independently, cases of one unit are not
   */
  public ComparedCases(
      List<String> names,
      double[][] covariates,
      boolean[] second,
      boolean[] failed,
      double[] exposure,
      int[] unit) {
    this.names = List.copyOf(names);
    this.second = second;
    this.failed = failed;
    this.exposure = exposure;
    this.unit = unit;
    int size = second.length;
    if (failed.length != size
        || exposure.length != size
        || unit.length != size
        || covariates.length != names.size()) {
      throw new IllegalArgumentException("cases need a value of everything, and covariates a name");
    }
    for (int i = 0; i < size; i++) {
      if (!(exposure[i] > 0 && exposure[i] < Double.POSITIVE_INFINITY)) {
        throw new IllegalArgumentException(
            "case " + (i + 1) + ": an exposure is above 0 and finite, not " + exposure[i]);
      }
      if (unit[i] < 0 || unit[i] >= size) {
        throw new IllegalArgumentException(
            "case " + (i + 1) + ": units are numbered from 0, not " + unit[i]);
      }
    }
    this.means = new double[names.size()];
    this.deviations = new double[names.size()];
    this.scaled = new double[names.size()][];
    for (int j = 0; j < covariates.length; j++) {
      scaled[j] = scaled(j, covariates[j], size);
    }
  }

  private double[] scaled(int j, double[] values, int size) {
    if (values.length != size) {
      throw new IllegalArgumentException("the covariate " + names.get(j) + " lacks cases");
    }
    double sum = 0;
    for (double value : values) {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("the covariate " + names.get(j) + " is not finite");
      }
      sum += value;
    }
    means[j] = size == 0 ? 0 : sum / size;
    double squares = 0;
    for (double value : values) {
      squares += (value - means[j]) * (value - means[j]);
    }
    deviations[j] = size == 0 ? 0 : Math.sqrt(squares / size);
    double[] column = new double[size];
    if (deviations[j] > 1e-9 * Math.max(1, Math.abs(means[j]))) {
      for (int i = 0; i < size; i++) {
        column[i] = (values[i] - means[j]) / deviations[j];
      }
    }
    return column;
  }

  /** The constant and the scaled covariates. */
  Design design() {
    Design design = Design.ofRows(size()).constant();
    for (int j = 0; j < scaled.length; j++) {
      design = design.column(names.get(j), scaled[j]);
    }
    return design;
  }

  /** Number of cases. */
  public int size() {
    return second.length;
  }

  /** Names of the covariates. */
  public List<String> names() {
    return names;
  }

  /** The scaled covariates. */
  double[][] scaled() {
    return scaled;
  }

  /** A scaled value of a covariate as it was given. */
  double asGiven(int column, double value) {
    return means[column] + deviations[column] * value;
  }

  boolean[] second() {
    return second;
  }

  boolean[] failed() {
    return failed;
  }

  double[] exposure() {
    return exposure;
  }

  int[] unit() {
    return unit;
  }

  /** Number of cases that got an action. */
  public int cases(Arm arm) {
    int count = 0;
    for (boolean got : second) {
      count += got == (arm == Arm.SECOND) ? 1 : 0;
    }
    return count;
  }

  /** Number of those that were found failed. */
  public int failures(Arm arm) {
    int count = 0;
    for (int i = 0; i < size(); i++) {
      count += failed[i] && second[i] == (arm == Arm.SECOND) ? 1 : 0;
    }
    return count;
  }

  /** Number of units that have a case. */
  public int units() {
    boolean[] seen = new boolean[size()];
    int count = 0;
    for (int u : unit) {
      count += seen[u] ? 0 : 1;
      seen[u] = true;
    }
    return count;
  }
}
