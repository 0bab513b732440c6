package sealspan.stats.survival;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.special.Gamma;
import sealspan.stats.Estimate;

/**
 * The log-rank test (Mantel 1966, Peto and Peto 1972) of whether groups of independent lives with
 * known or open ends and late entry share one curve: on each day of an end, the ends of a group
 * against its share of those at risk over (entry, exit], with the hypergeometric variance for ends
 * on one day. It is blind to curves that cross.
 *
 * @param chiSquared the statistic
 * @param degreesOfFreedom groups that can be told apart, less one
 * @param pValue chance of so large a statistic or a larger one if all share one curve
 * @param observed ends in each group
 * @param expected ends expected in each group if all share one curve
 */
public record LogRank(
    double chiSquared, int degreesOfFreedom, double pValue, double[] observed, double[] expected) {
  private static final double SINGULAR = 1e-10;

  public LogRank {
    observed = observed.clone();
    expected = expected.clone();
  }

  /** The test; not identified when on no day of an end lives of two groups are at risk. */
  public static Estimate<LogRank> of(List<? extends Collection<Lifetime>> groups) {
    Table table = new Table(groups);
    int k = groups.size();
    double[] observed = new double[k];
    double[] expected = new double[k];
    double[][] variance = new double[k][k];
    double[] atRisk = new double[k];
    for (int day = 0; day < table.days; day++) {
      double all = Arrays.stream(atRisk).sum();
      double ends = Arrays.stream(table.ends[day]).sum();
      if (ends > 0) {
        double spread = all > 1 ? ends * (all - ends) / (all - 1) : 0;
        for (int g = 0; g < k; g++) {
          observed[g] += table.ends[day][g];
          double share = atRisk[g] / all;
          expected[g] += ends * share;
          for (int h = 0; h < k; h++) {
            variance[g][h] += spread * share * ((g == h ? 1 : 0) - atRisk[h] / all);
          }
        }
      }
      for (int g = 0; g < k; g++) {
        atRisk[g] += table.change[day][g];
      }
    }
    return statistic(observed, expected, variance);
  }

  private static Estimate<LogRank> statistic(
      double[] observed, double[] expected, double[][] variance) {
    double largest = 0;
    for (int g = 0; g < variance.length; g++) {
      largest = Math.max(largest, variance[g][g]);
    }
    if (largest == 0) {
      return Estimate.notIdentified(
          "on no day of an end were lives of two groups at risk that could have ended");
    }
    EigenDecompositionSymmetric parts =
        new EigenDecompositionSymmetric(new Array2DRowRealMatrix(variance));
    double chi = 0;
    int rank = 0;
    for (int i = 0; i < variance.length; i++) {
      if (parts.getEigenvalue(i) > SINGULAR * largest) {
        double along = 0;
        for (int g = 0; g < observed.length; g++) {
          along += parts.getEigenvector(i).getEntry(g) * (observed[g] - expected[g]);
        }
        chi += along * along / parts.getEigenvalue(i);
        rank++;
      }
    }
    double p = Gamma.regularizedGammaQ(rank / 2.0, chi / 2);
    return Estimate.of(new LogRank(chi, rank, p, observed, expected));
  }

  /** Ends, and changes of the number at risk after each day, by day and group. */
  private static final class Table {
    private final int days;
    private final double[][] ends;
    private final double[][] change;

    Table(List<? extends Collection<Lifetime>> groups) {
      List<Lifetime> lives = new ArrayList<>();
      groups.forEach(lives::addAll);
      DayIndex index =
          new DayIndex(
              lives.stream()
                  .filter(Table::atRisk)
                  .flatMapToInt(l -> java.util.stream.IntStream.of(l.entryDay(), l.lowerDay()))
                  .toArray());
      days = index.size();
      ends = new double[days][groups.size()];
      change = new double[days][groups.size()];
      for (int g = 0; g < groups.size(); g++) {
        for (Lifetime life : groups.get(g)) {
          if (atRisk(life)) {
            int last = index.place(life.lowerDay());
            change[index.place(life.entryDay())][g] += life.count();
            change[last][g] -= life.count();
            ends[last][g] += life.exact() ? life.count() : 0;
          }
        }
      }
    }

    private static boolean atRisk(Lifetime life) {
      if (!life.exact() && !life.open()) {
        throw new IllegalArgumentException(
            "this test needs known or open ends, but one life ended between day "
                + life.lowerDay()
                + " and day "
                + life.upperDay());
      }
      return life.lowerDay() > life.entryDay();
    }
  }
}
