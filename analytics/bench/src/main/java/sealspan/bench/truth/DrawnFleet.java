package sealspan.bench.truth;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.hipparchus.distribution.continuous.GammaDistribution;
import sealspan.stats.rates.HiddenFailures;
import sealspan.stats.rates.RateLattice;

/**
 * Units with known rates whose failures are found at tests: 1 to 14 of them, each 335 to 395 days
 * after the last pass.
 *
 * @param units what the tests show
 * @param perDay true rates
 */
public record DrawnFleet(List<HiddenFailures> units, double[] perDay) {
  /** The lattice that a fit of yearly tests uses. */
  public static final RateLattice LATTICE = RateLattice.between(.002 / 365.25, 3 / 365.25, 160);

  private static final int QUANTILES = 4_096;

  /** How true rates differ; the mean is about .1 a year. */
  public enum Kind {
    /** Gamma with shape 1.5. */
    GAMMA {
      @Override
      double perYear(Random random) {
        return gamma(1.5, .1 / 1.5, random);
      }
    },

    /** Lognormal with a standard deviation of .8 in the logarithm. */
    LOGNORMAL {
      @Override
      double perYear(Random random) {
        return .073 * Math.exp(.8 * random.nextGaussian());
      }
    },

    /** Nine tenths at about .06, a tenth at about .5. */
    BAD_MINORITY {
      @Override
      double perYear(Random random) {
        return random.nextDouble() < .1 ? gamma(8, .5 / 8, random) : gamma(4, .06 / 4, random);
      }
    };

    abstract double perYear(Random random);

    static double gamma(double shape, double scale, Random random) {
      return Quantiles.of(shape)[random.nextInt(QUANTILES)] * scale;
    }
  }

  /** Quantiles of gamma distributions in the middles of equal cells, worked out once. */
  private static final class Quantiles {
    private static final java.util.Map<Double, double[]> KNOWN =
        new java.util.concurrent.ConcurrentHashMap<>();

    static double[] of(double shape) {
      return KNOWN.computeIfAbsent(
          shape,
          s -> {
            GammaDistribution gamma = new GammaDistribution(s, 1);
            double[] quantiles = new double[QUANTILES];
            for (int i = 0; i < QUANTILES; i++) {
              quantiles[i] = gamma.inverseCumulativeProbability((i + .5) / QUANTILES);
            }
            return quantiles;
          });
    }
  }

  /** Draws a fleet; the seed fixes it. */
  public static DrawnFleet of(Kind kind, int size, long seed) {
    Random random = new Random(seed);
    List<HiddenFailures> units = new ArrayList<>(size);
    double[] perDay = new double[size];
    for (int i = 0; i < size; i++) {
      perDay[i] = kind.perYear(random) / 365.25;
      units.add(unit(perDay[i], 1 + random.nextInt(14), random));
    }
    return new DrawnFleet(units, perDay);
  }

  /** One unit of a known rate. */
  static HiddenFailures unit(double perDay, int tests, Random random) {
    int[] days = new int[tests];
    boolean[] failed = new boolean[tests];
    for (int k = 0; k < tests; k++) {
      days[k] = 335 + random.nextInt(61);
      failed[k] = random.nextDouble() < -Math.expm1(-perDay * days[k]);
    }
    return HiddenFailures.of(days, failed);
  }
}
