package sealspan.stats.regression;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.analysis.UnivariateFunction;
import sealspan.stats.Confidence;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.RootSearch;

/**
 * A regression in which every stratum, such as a zone or a month of a zone, has a constant of its
 * own, so that whatever a stratum shares cancels. There may be any number of strata: the constants
 * are eliminated one by one.
 *
 * <p>For counts it is conditional Poisson regression: the coefficients are those of the likelihood
 * that takes the total of each stratum as given, since that is the likelihood maximised over the
 * constants (Armstrong, Gasparrini and Tobias 2014, BMC Medical Research Methodology 14:122). It is
 * right for strata of any size. For shares by {@link Family#CLOGLOG} small strata bias the
 * coefficients where failures are common; where they are rare it is as good as for counts. Logistic
 * strata are refused: {@link sealspan.stats.effect.MatchedChoice} conditions exactly.
 */
public final class StratifiedRegression {
  private static final int STEPS = 200;
  private static final int HALVINGS = 60;
  private static final double NOISE = 1e-9;
  private static final double DONE = 1e-22;
  private static final double WANDERS = 0.01;
  private static final int WANDERING_STEPS = 8;
  private static final double FARTHEST = 60;

  private StratifiedRegression() {}

  /** Where a climb ended. */
  private record Top(StratifiedSlope slope, boolean converged, List<String> separated) {}

  /**
   * Fits; not identified where no stratum has an event beside other rows, where a column does not
   * vary within strata, or where the outcomes are separated.
   *
   * @param data columns without a constant; clusters are not used, {@link StratifiedFit} takes them
   * @param stratum number of each row's stratum
   */
  public static Estimate<StratifiedFit> fit(Family family, Observations data, int[] stratum) {
    require(family, data, stratum);
    Strata strata = Strata.of(family, data, stratum);
    if (strata.count() == 0) {
      return Estimate.notIdentified("there is no stratum with an event");
    }
    String dependent = strata.dependentColumn(data);
    if (dependent != null) {
      return Estimate.notIdentified(
          "within strata, the column " + dependent + " follows from the columns before it");
    }
    Top top = climb(family, data, strata);
    if (!top.separated().isEmpty()) {
      return Estimate.notIdentified(
          "the outcomes are separated by "
              + String.join(" and ", top.separated())
              + ", so the likelihood has no highest point");
    }
    if (!top.converged()) {
      return Estimate.notIdentified("the likelihood has no clear maximum");
    }
    return Estimate.of(StratifiedFit.of(family, data, strata, top.slope().expected()));
  }

  /**
   * The first column that, within the strata that tell something, follows from the columns before
   * it; null where none does. With such a column there is no fit.
   */
  public static String dependentColumn(Family family, Observations data, int[] stratum) {
    require(family, data, stratum);
    Strata strata = Strata.of(family, data, stratum);
    return strata.count() == 0 ? null : strata.dependentColumn(data);
  }

  /**
   * Likelihood-ratio limits of one coefficient; a limit is infinite where the likelihood does not
   * fall so low. They take rows as independent.
   *
   * @param name the column
   */
  public static Interval profile(
      Family family, Observations data, int[] stratum, String name, double level) {
    require(family, data, stratum);
    double z = Confidence.z(level);
    Strata strata = Strata.of(family, data, stratum);
    Top top = climb(family, data, strata);
    int column = data.design().index(name);
    double[] values = data.design().values(column);
    double widest = 0;
    for (int row : strata.rows()) {
      widest = Math.max(widest, Math.abs(values[row]));
    }
    if (widest == 0) {
      return new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, level);
    }
    double target = top.slope().logLikelihood() - z * z / 2;
    UnivariateFunction height = at -> heldAt(family, data, strata, name, at) - target;
    double centre = top.slope().coefficients()[column];
    double lower = limit(height, centre, -z / 16 / widest, FARTHEST / widest);
    double upper = limit(height, centre, z / 16 / widest, FARTHEST / widest);
    return new Interval(lower, upper, level);
  }

  private static void require(Family family, Observations data, int[] stratum) {
    if (family == Family.LOGISTIC || data.design().names().contains(Design.CONSTANT)) {
      throw new IllegalArgumentException(
          "strata have constants of their own: counts or cloglog shares, and no constant column");
    }
    if (stratum.length != data.response().length) {
      throw new IllegalArgumentException(
          stratum.length + " strata for " + data.response().length + " rows");
    }
    for (int i = 0; i < stratum.length; i++) {
      family.requireResponse(data.response()[i], i);
    }
  }

  private static double limit(
      UnivariateFunction height, double centre, double firstStep, double farthest) {
    double inside = centre;
    double step = firstStep;
    while (Math.abs(step) < farthest) {
      double outside = centre + step;
      if (height.value(outside) < 0) {
        return RootSearch.between(height, Math.min(inside, outside), Math.max(inside, outside));
      }
      inside = outside;
      step *= 2;
    }
    return firstStep < 0 ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
  }

  private static double heldAt(
      Family family, Observations data, Strata strata, String name, double at) {
    double[] values = data.design().values(data.design().index(name));
    double[] offset = data.offset().clone();
    for (int i = 0; i < offset.length; i++) {
      offset[i] += at * values[i];
    }
    Observations rest = data.design(data.design().without(name)).offset(offset);
    return climb(family, rest, strata).slope().logLikelihood();
  }

  private static Top climb(Family family, Observations data, Strata strata) {
    int p = data.design().names().size();
    StratifiedSlope here =
        new StratifiedSlope(
            family, data, strata, start(family, data, strata), new double[p], false);
    int wandering = 0;
    double previous = Double.POSITIVE_INFINITY;
    for (int i = 0; i < STEPS; i++) {
      double[] step = here.newtonStep();
      double gain = here.gain(step);
      boolean noise = gain < NOISE * Math.max(1, Math.abs(here.logLikelihood()));
      if (gain < DONE || noise && gain >= previous && wandering == 0) {
        return new Top(here, true, List.of());
      }
      List<String> moving = moving(data.design(), strata, step);
      wandering = noise && !moving.isEmpty() ? wandering + 1 : 0;
      if (wandering >= WANDERING_STEPS) {
        return new Top(here, false, moving);
      }
      previous = noise ? gain : Double.POSITIVE_INFINITY;
      StratifiedSlope next = move(here, step, gain, noise);
      if (next == null) {
        return new Top(here, noise, List.of());
      }
      here = next;
    }
    return new Top(here, false, List.of());
  }

  private static StratifiedSlope move(
      StratifiedSlope here, double[] step, double gain, boolean noise) {
    double fraction = 1;
    for (int i = 0; i < HALVINGS; i++) {
      StratifiedSlope next = here.moved(step, fraction);
      boolean climbs = next.logLikelihood() >= here.logLikelihood() + 1e-4 * fraction * gain;
      if (Double.isFinite(next.logLikelihood()) && (climbs || noise)) {
        return next;
      }
      fraction /= 2;
    }
    return null;
  }

  /** Columns that still move some predictor by much. */
  private static List<String> moving(Design design, Strata strata, double[] step) {
    List<String> moving = new ArrayList<>();
    for (int j = 0; j < design.names().size(); j++) {
      double widest = 0;
      for (int row : strata.rows()) {
        widest = Math.max(widest, Math.abs(design.values(j)[row]));
      }
      if (Math.abs(step[j]) * widest > WANDERS) {
        moving.add(design.names().get(j));
      }
    }
    return moving;
  }

  private static double[] start(Family family, Observations data, Strata strata) {
    double[] start = new double[strata.count()];
    for (int s = 0; s < start.length; s++) {
      double response = 0;
      double exposure = 0;
      double weights = 0;
      for (int i = strata.from(s); i < strata.until(s); i++) {
        int row = strata.rows()[i];
        weights += data.weight()[row];
        response += data.weight()[row] * data.response()[row];
        exposure += data.weight()[row] * StrictMath.exp(data.offset()[row]);
      }
      double value = family.start(response / weights, exposure / weights);
      start[s] = Double.isFinite(value) ? value : 0;
    }
    return start;
  }
}
