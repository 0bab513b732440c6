package sealspan.stats.regression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The rows of a regression by stratum, without the strata that tell nothing: those without an event
 * or failure, and those in which every row failed. Their own constant explains them wholly.
 */
final class Strata {
  private final int[] rows;
  private final int[] starts;

  private Strata(int[] rows, int[] starts) {
    this.rows = rows;
    this.starts = starts;
  }

  static Strata of(Family family, Observations data, int[] stratum) {
    int[] order =
        IntStream.range(0, stratum.length)
            .filter(i -> data.weight()[i] > 0)
            .boxed()
            .sorted(java.util.Comparator.comparingInt(i -> stratum[i]))
            .mapToInt(Integer::intValue)
            .toArray();
    int[] kept = new int[order.length];
    List<Integer> starts = new ArrayList<>();
    int size = 0;
    for (int from = 0; from < order.length; ) {
      int until = from;
      double responses = 0;
      double most = 0;
      while (until < order.length && stratum[order[until]] == stratum[order[from]]) {
        double weight = data.weight()[order[until]];
        responses += weight * data.response()[order[until]];
        most += weight;
        until++;
      }
      if (responses > 0 && (family == Family.POISSON || responses < most)) {
        starts.add(size);
        System.arraycopy(order, from, kept, size, until - from);
        size += until - from;
      }
      from = until;
    }
    starts.add(size);
    return new Strata(
        Arrays.copyOf(kept, size), starts.stream().mapToInt(Integer::intValue).toArray());
  }

  /** Number of strata that tell something. */
  int count() {
    return starts.length - 1;
  }

  /** Their rows, stratum by stratum. */
  int[] rows() {
    return rows;
  }

  /** Place of the first row of a stratum in {@link #rows}. */
  int from(int stratum) {
    return starts[stratum];
  }

  /** Place after the last row of a stratum. */
  int until(int stratum) {
    return starts[stratum + 1];
  }

  /** The first column that, within strata, follows from the columns before it; null for none. */
  String dependentColumn(Observations data) {
    Design centred = Design.ofRows(rows.length);
    double[] weight = Arrays.stream(rows).mapToDouble(row -> data.weight()[row]).toArray();
    for (int j = 0; j < data.design().names().size(); j++) {
      double[] values = data.design().values(j);
      double[] own = new double[rows.length];
      double whole = 0;
      double within = 0;
      for (int s = 0; s < count(); s++) {
        double sum = 0;
        double weights = 0;
        for (int i = from(s); i < until(s); i++) {
          sum += weight[i] * values[rows[i]];
          weights += weight[i];
        }
        for (int i = from(s); i < until(s); i++) {
          own[i] = values[rows[i]] - sum / weights;
          whole += weight[i] * values[rows[i]] * values[rows[i]];
          within += weight[i] * own[i] * own[i];
        }
      }
      if (!(within > 1e-20 * whole)) {
        return data.design().names().get(j);
      }
      centred = centred.column(data.design().names().get(j), own);
    }
    Observations held = Observations.of(centred, new double[rows.length]).weight(weight);
    List<String> dependent =
        Collinearity.dependentColumns(held, new double[centred.names().size()]);
    return dependent.isEmpty() ? null : dependent.get(0);
  }
}
