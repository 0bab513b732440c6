package sealspan.stats.regression;

import java.util.ArrayList;
import java.util.List;

/**
 * Climbs a concave log-likelihood by Newton's method with step halving. Where outcomes are
 * separated the climb goes on for ever while the gain dies out: the direction is then named.
 */
final class LogLikelihoodAscent {
  private static final int STEPS = 200;
  private static final int HALVINGS = 60;

  /** So small a promised gain is rounding noise beside the value. */
  private static final double NOISE = 1e-9;

  private static final double DONE = 1e-24;
  private static final double WANDERS = 0.01;
  private static final int WANDERING_STEPS = 8;

  private LogLikelihoodAscent() {}

  /**
   * Where the climb ended.
   *
   * @param coefficients in order of the columns
   * @param logLikelihood there, penalty and constants not included
   * @param converged whether the last step was nil
   * @param separated names of the columns whose coefficients grow without end
   */
  record Top(
      double[] coefficients, double logLikelihood, boolean converged, List<String> separated) {}

  static Top climb(Family family, Observations data, double[] penalties) {
    Slope here = new Slope(family, data, penalties, start(family, data));
    int wandering = 0;
    double previous = Double.POSITIVE_INFINITY;
    for (int i = 0; i < STEPS; i++) {
      double[] step = here.newtonStep();
      double gain = here.gain(step);
      boolean noise = gain < NOISE * Math.max(1, Math.abs(here.penalised()));
      if (gain < DONE || noise && gain >= previous && wandering == 0) {
        return here.top(true, List.of());
      }
      wandering = noise && here.widest(step) > WANDERS ? wandering + 1 : 0;
      if (wandering >= WANDERING_STEPS) {
        return here.top(false, names(data, step));
      }
      previous = noise ? gain : Double.POSITIVE_INFINITY;
      Slope next = move(here, step, gain, noise);
      if (next == null) {
        return here.top(noise, List.of());
      }
      here = next;
    }
    return here.top(false, List.of());
  }

  private static Slope move(Slope here, double[] step, double gain, boolean noise) {
    double fraction = 1;
    for (int i = 0; i < HALVINGS; i++) {
      Slope next = here.moved(step, fraction);
      boolean climbs = next.penalised() >= here.penalised() + 1e-4 * fraction * gain;
      if (Double.isFinite(next.penalised()) && (climbs || noise)) {
        return next;
      }
      fraction /= 2;
    }
    return null;
  }

  private static double[] start(Family family, Observations data) {
    double[] start = new double[data.design().names().size()];
    int constant = data.design().names().indexOf(Design.CONSTANT);
    double response = 0;
    double exposure = 0;
    double weights = 0;
    for (int i = 0; i < data.response().length; i++) {
      weights += data.weight()[i];
      response += data.weight()[i] * data.response()[i];
      exposure += data.weight()[i] * StrictMath.exp(data.offset()[i]);
    }
    if (constant >= 0 && response > 0) {
      double value = family.start(response / weights, exposure / weights);
      start[constant] = Double.isFinite(value) ? value : 0;
    }
    return start;
  }

  private static List<String> names(Observations data, double[] direction) {
    List<String> names = new ArrayList<>();
    double most = 0;
    double[] reach = new double[direction.length];
    for (int j = 0; j < direction.length; j++) {
      double widest = 0;
      for (double value : data.design().values(j)) {
        widest = Math.max(widest, Math.abs(value));
      }
      reach[j] = Math.abs(direction[j]) * widest;
      most = Math.max(most, reach[j]);
    }
    for (int j = 0; j < direction.length; j++) {
      if (reach[j] > 0.01 * most) {
        names.add(data.design().names().get(j));
      }
    }
    return names;
  }
}
