package sealspan.bench.speed;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import sealspan.bench.truth.DrawnFleet;
import sealspan.stats.rates.FalseDiscovery;
import sealspan.stats.rates.FleetRanks;
import sealspan.stats.rates.FleetSums;
import sealspan.stats.rates.GridPosterior;
import sealspan.stats.rates.GridPrior;
import sealspan.stats.rates.GridScores;
import sealspan.stats.rates.HiddenFailures;
import sealspan.stats.rates.RateShrinkage;
import sealspan.stats.rates.SplinePrior;

/** Failure rates of a fleet: priors, posteriors, ranks and claims. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2)
@Measurement(iterations = 3)
@Fork(1)
public class RateSpeed {
  /** Units. */
  @Param({"10000", "100000", "1000000"})
  public int units;

  private List<HiddenFailures> fleet;

  /** A tenth of bad units, 1 to 14 tests about a year apart. */
  @Setup
  public void draw() {
    fleet = DrawnFleet.of(DrawnFleet.Kind.BAD_MINORITY, units, 20_260_101L).units();
  }

  /** The gamma prior by marginal likelihood. */
  @Benchmark
  public Object gammaPrior() {
    return RateShrinkage.fitHidden(fleet);
  }

  /** The smooth prior alone. */
  @Benchmark
  public Object splinePrior() {
    return SplinePrior.fit(DrawnFleet.LATTICE, fleet);
  }

  /** The smooth prior, then for each unit mean, interval, ranks, P(worst ten) and claim. */
  @Benchmark
  public double shrunkAndRanked() {
    GridPrior prior = SplinePrior.fit(DrawnFleet.LATTICE, fleet).orThrow().prior();
    GridScores scores = new GridScores(prior);
    FleetSums sums = new FleetSums(scores.lattice());
    double limit = 2 * prior.meanPerDay();
    double[] wrong = new double[fleet.size()];
    for (int i = 0; i < wrong.length; i++) {
      GridPosterior posterior = scores.posterior(fleet.get(i), 0);
      sums.add(posterior);
      wrong[i] = 1 - posterior.probabilityAbove(limit);
    }
    FleetRanks ranks = new FleetRanks(sums);
    double sum = FalseDiscovery.of(wrong, .1).listed();
    for (HiddenFailures unit : fleet) {
      GridPosterior posterior = scores.posterior(unit, 0);
      sum += posterior.meanPerDay() + posterior.interval(.95).upper();
      sum += ranks.expected(posterior) + ranks.probabilityInWorst(10, posterior);
      sum += ranks.interval(posterior, .95).upper();
    }
    return sum;
  }
}
