package sealspan.study.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.distribution.discrete.BinomialDistribution;
import org.junit.jupiter.api.Test;
import sealspan.study.fouling.FoulingFit;
import sealspan.study.fouling.FoulingModel;
import sealspan.study.fouling.FoulingVisit;
import sealspan.study.practice.RoutedTown;
import sealspan.table.FoulingCoefficientRow;

class HighSideTest {
  private static FoulingCoefficientRow row(String name, double value, Double upper) {
    return new FoulingCoefficientRow(name, value, upper == null ? null : 2 * value - upper, upper);
  }

  /**
   * By hand: errors are a half width over 1.95996; the 90 % point of the normal law is 1.28155 (any
   * table). The type's own error is the root of .5 squared less .3 squared, .4.
   */
  @Test
  void raisesTheRateOfEachTypeByHand() {
    double z95 = 1.959963985;
    List<FoulingCoefficientRow> raised =
        HighSide.of(
            List.of(
                row("constant", -3, -3 + z95 * .3),
                row("log exposure years", 1.1, 1.1 + z95),
                row("season sine", .2, .2 + z95),
                row("type=RP", .7, .7 + z95 * .5),
                row("type=PVB", .1, .1 + z95 * .35)));
    assertEquals(-3 + 1.281551566 * .3, raised.get(0).value(), 1e-8);
    assertEquals(1.1, raised.get(1).value());
    assertEquals(.2, raised.get(2).value());
    assertEquals(.7 + 1.281551566 * (.4 - .3), raised.get(3).value(), 1e-8);
    // The root of .35 squared less .3 squared is .18: the raise of the base type is more than
    // enough.
    assertEquals(.1, raised.get(4).value());
    List<FoulingCoefficientRow> without = List.of(row("constant", -2.5, null));
    assertEquals(without, HighSide.of(without));
  }

  /**
   * In invented towns the frozen probabilities of all visits together are too low in a tenth of the
   * records at most; at p below .001. The true number is that of a record 400 times as long.
   */
  @Test
  void atMostATenthOfTheModelsAreTooLow() {
    int towns = 200;
    double truth = perVisit(new RoutedTown(1, 20_000, 6, .05, 1, 0, 0));
    int tooLow =
        (int)
            IntStream.range(0, towns)
                .filter(seed -> stated(new RoutedTown(100 + seed, 60, 5, .05, 1, 0, 0)) < truth)
                .count();
    double p = 1 - new BinomialDistribution(towns, .1).cumulativeProbability(tooLow - 1);
    assertTrue(p >= .001, tooLow + " of " + towns + " are too low");
    assertTrue(tooLow > 0, "far higher than asked for");
  }

  private static double perVisit(RoutedTown town) {
    List<FoulingVisit> visits = town.visits();
    return visits.stream().filter(FoulingVisit::fouled).count() / (double) visits.size();
  }

  /** Mean probability of the visits of a large town by the model of a small one. */
  private static double stated(RoutedTown town) {
    FoulingFit fit = FoulingFit.of(town.visits());
    FoulingModel model = FoulingModel.of(HighSide.of(fit.coefficients())).orElseThrow();
    return Large.VISITS.stream().mapToDouble(model::probability).average().orElseThrow();
  }

  /** Visits that all the models are asked for. */
  private static final class Large {
    static final List<FoulingVisit> VISITS = new RoutedTown(2, 2_000, 5, .05, 1, 0, 0).visits();
  }
}
