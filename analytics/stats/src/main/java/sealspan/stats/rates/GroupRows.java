package sealspan.stats.rates;

import java.util.Collection;
import java.util.List;

/** The likelihoods of a fleet on a lattice, units with equal likelihoods merged. */
final class GroupRows {
  /** About 25 MB of rows. */
  private static final int MOST_GROUPS = 40_000;

  private final RateLattice lattice;
  private final float[][] rows;
  private final long[] counts;
  private final double offset;
  private final long units;

  GroupRows(RateLattice lattice, Collection<HiddenFailures> tested) {
    this.lattice = lattice;
    List<UnitGroup> groups = UnitGroup.merged(tested, MOST_GROUPS);
    LikelihoodRows likelihood = new LikelihoodRows(lattice);
    rows = new float[groups.size()][];
    counts = new long[groups.size()];
    double[] row = new double[lattice.nodes()];
    double sum = 0;
    for (int i = 0; i < rows.length; i++) {
      UnitGroup group = groups.get(i);
      double factor = likelihood.fill(group.passedTotalDays(), group.failedDays(), row);
      double most = 0;
      for (double each : row) {
        most = Math.max(most, each);
      }
      rows[i] = new float[row.length];
      for (int g = 0; g < row.length; g++) {
        rows[i][g] = (float) (row[g] / most);
      }
      counts[i] = group.count();
      sum += group.count() * (factor + StrictMath.log(most));
    }
    offset = sum;
    units = tested.size();
  }

  RateLattice lattice() {
    return lattice;
  }

  /** Number of groups. */
  int size() {
    return rows.length;
  }

  /** Likelihood of a group at each node, its greatest value 1; not to be changed. */
  float[] row(int group) {
    return rows[group];
  }

  long count(int group) {
    return counts[group];
  }

  /** What the scaling of the rows took from the log-likelihood. */
  double offset() {
    return offset;
  }

  long units() {
    return units;
  }
}
