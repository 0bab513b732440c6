package sealspan.stats.scan;

import java.util.ArrayList;
import java.util.List;

/**
 * For the zones of one order and window, the fewest cases that reach a threshold, as numbers to be
 * added to counts so that the top bit of a lane says whether it is reached.
 */
final class ThresholdRow {
  /** Places summed at a time. */
  static final int BLOCK = 4;

  private static final int OUT_OF_REACH = 0x8000;

  private final double[] expected;
  private final long[] bias;
  private final long[] blockBias;
  private int end;

  /** For orders of at most some number of places. */
  ThresholdRow(int longest) {
    expected = new double[longest];
    bias = new long[longest];
    blockBias = new long[longest / BLOCK + 1];
  }

  /** Largest expected numbers by cases, for orders of one penalty. */
  record Table(double penalty, double[] largestExpected) {}

  /** One table for each penalty that occurs. */
  static Table[] tables(List<ZoneOrder> orders, PoissonRatio ratio, double threshold) {
    List<Table> tables = new ArrayList<>();
    for (ZoneOrder order : orders) {
      double penalty = order.penalty();
      if (tables.stream().noneMatch(t -> t.penalty() == penalty)) {
        tables.add(new Table(penalty, ratio.largestExpected(threshold / penalty)));
      }
    }
    return tables.toArray(Table[]::new);
  }

  static Table tableOf(Table[] tables, ZoneOrder order) {
    int i = 0;
    while (tables[i].penalty() != order.penalty()) {
      i++;
    }
    return tables[i];
  }

  /** Works out the row of an order, from the expected cases of each place in the window. */
  void set(ZoneOrder order, double[] byPlace, double fewestExpected, Table table) {
    int[] places = order.places();
    double[] largest = table.largestExpected();
    int total = largest.length - 1;
    double sum = 0;
    int cases = 1;
    boolean blockOpen = false;
    end = places.length;
    for (int k = 0; k < places.length; k++) {
      if (k % BLOCK == 0) {
        blockOpen = false;
        blockBias[k / BLOCK] = 0;
      }
      sum += byPlace[places[k]];
      expected[k] = sum;
      while (cases <= total && largest[cases] < sum) {
        cases++;
      }
      boolean open = cases <= total && order.complete()[k] && sum >= fewestExpected;
      bias[k] = open ? ReplicateMaxima.bias(cases) : ReplicateMaxima.bias(OUT_OF_REACH);
      if (open && !blockOpen) {
        blockOpen = true;
        blockBias[k / BLOCK] = bias[k];
      }
      if (cases > total) {
        end = k;
        return;
      }
    }
  }

  /** Places after which no number of cases reaches the threshold. */
  int end() {
    return end;
  }

  double expected(int k) {
    return expected[k];
  }

  long bias(int k) {
    return bias[k];
  }

  /** The bias of the first zone of a block that is looked at: none of the block needs fewer. */
  long blockBias(int block) {
    return blockBias[block];
  }
}
