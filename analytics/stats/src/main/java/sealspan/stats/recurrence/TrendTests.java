package sealspan.stats.recurrence;

import java.util.Collection;
import java.util.List;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.special.Gamma;
import sealspan.stats.Estimate;

/**
 * Tests whether events with exact times come at a rate that rises or falls, pooled over units. Each
 * unit is compared with its own window, so units may differ in rate and be watched at different
 * times. The order of the input is of no account, to the last bit.
 *
 * <p>Laplace's and the handbook's test take the events of a unit as a Poisson process: they reject
 * for gaps that are more, or less, even than that as well. Lewis and Robinson's test takes the gaps
 * as a renewal process; {@link #laplaceByUnit} takes nothing but a constant mean rate.
 */
public final class TrendTests {
  private static final NormalDistribution NORMAL = new NormalDistribution();

  /** With fewer units the variance between them is not known well enough. */
  private static final int FEWEST_UNITS = 10;

  private TrendTests() {}

  /**
   * Laplace's test: the mean event time against the middle of the window; standard normal, positive
   * when the rate rises (Cox and Lewis 1966). Good from about four events on.
   */
  public static Estimate<TrendTest> laplace(Collection<EventTimes> units) {
    Centred centred = Centred.of(units);
    return centred.events == 0
        ? noEvents()
        : Estimate.of(centred.normal(centred.sum / Math.sqrt(centred.poissonVariance)));
  }

  /**
   * Laplace's numerator over the spread of the units' own numerators: right for any process of
   * constant mean rate whose units are independent, however their events depend on each other
   * (Lawless, Cigsar and Cook 2012, from memory). Needs at least 10 units with events.
   */
  public static Estimate<TrendTest> laplaceByUnit(Collection<EventTimes> units) {
    Centred centred = Centred.of(units);
    if (centred.units < FEWEST_UNITS) {
      return Estimate.notIdentified(
          "only "
              + centred.units
              + " units have events, and how units differ needs at least "
              + FEWEST_UNITS);
    }
    return centred.squares > 0
        ? Estimate.of(centred.normal(centred.sum / Math.sqrt(centred.squares)))
        : Estimate.notIdentified("every event lies in the middle of its window");
  }

  /**
   * The test of MIL-HDBK-189: 2 sum ln(window / time into it), chi-squared with two degrees of
   * freedom an event; small when the rate rises.
   */
  public static Estimate<TrendTest> handbook(Collection<EventTimes> units) {
    double sum = 0;
    int events = 0;
    int withEvents = 0;
    for (EventTimes unit : sorted(units)) {
      int free = unit.freeEvents();
      double logWindow = StrictMath.log(unit.end() - unit.start());
      for (int i = 0; i < free; i++) {
        sum += logWindow - StrictMath.log(unit.times()[i] - unit.start());
      }
      events += free;
      withEvents += free > 0 ? 1 : 0;
    }
    if (events == 0) {
      return noEvents();
    }
    double statistic = Math.max(0, 2 * sum);
    return Estimate.of(
        new TrendTest(
            statistic,
            events,
            withEvents,
            Gamma.regularizedGammaP(events, statistic / 2),
            Gamma.regularizedGammaQ(events, statistic / 2)));
  }

  /**
   * Lewis and Robinson's test (1974): Laplace's statistic, each window ended at its last event,
   * over the coefficient of variation of the gaps. The unit is as good as new when its window
   * begins. With several units the coefficient is that within units; the square of a unit's mean
   * gap is lowered by n / (n + 1), which makes it unbiased for Poisson events.
   */
  public static Estimate<TrendTest> lewisRobinson(Collection<EventTimes> units) {
    List<EventTimes> cut =
        units.stream()
            .filter(u -> u.times().length > 1)
            .map(u -> EventTimes.untilLastEvent(u.start(), u.times()))
            .toList();
    Centred centred = Centred.of(cut);
    if (centred.events == 0) {
      return Estimate.notIdentified("no unit has two events, so there are no gaps to compare");
    }
    double variation = variationOfGaps(sorted(cut));
    return variation > 0
        ? Estimate.of(centred.normal(centred.sum / Math.sqrt(centred.poissonVariance) / variation))
        : Estimate.notIdentified("all gaps between events of a unit are equal");
  }

  private static double variationOfGaps(List<EventTimes> units) {
    double spread = 0;
    double size = 0;
    for (EventTimes unit : units) {
      int n = unit.times().length;
      double mean = (unit.end() - unit.start()) / n;
      double before = unit.start();
      for (double time : unit.times()) {
        double off = time - before - mean;
        spread += off * off;
        before = time;
      }
      size += (n - 1) * mean * mean * (units.size() == 1 ? 1 : n / (n + 1.0));
    }
    return Math.sqrt(spread / size);
  }

  private static List<EventTimes> sorted(Collection<EventTimes> units) {
    return units.stream().sorted(EventTimes.ORDER).toList();
  }

  private static Estimate<TrendTest> noEvents() {
    return Estimate.notIdentified("there is no event whose time could tell a trend");
  }

  /**
   * Event times less the middle of their windows.
   *
   * @param sum sum over all events
   * @param poissonVariance its variance for Poisson events
   * @param squares sum over units of their squared sums
   */
  private record Centred(
      double sum, double poissonVariance, double squares, int events, int units) {

    static Centred of(Collection<EventTimes> units) {
      double sum = 0;
      double variance = 0;
      double squares = 0;
      int events = 0;
      int withEvents = 0;
      for (EventTimes unit : sorted(units)) {
        int free = unit.freeEvents();
        double middle = unit.start() + (unit.end() - unit.start()) / 2;
        double own = 0;
        for (int i = 0; i < free; i++) {
          own += unit.times()[i] - middle;
        }
        double window = unit.end() - unit.start();
        sum += own;
        squares += own * own;
        variance += free * window * window / 12;
        events += free;
        withEvents += free > 0 ? 1 : 0;
      }
      return new Centred(sum, variance, squares, events, withEvents);
    }

    TrendTest normal(double statistic) {
      return new TrendTest(
          statistic,
          events,
          units,
          NORMAL.cumulativeProbability(-statistic),
          NORMAL.cumulativeProbability(statistic));
    }
  }
}
