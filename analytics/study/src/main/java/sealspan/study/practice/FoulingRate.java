package sealspan.study.practice;

import java.util.ArrayList;
import java.util.List;

/**
 * The rate at which a component of one site gets fouled, day by day: a base rate, raised in the
 * days after disturbances that reach the site.
 */
final class FoulingRate {
  private final double basePerDay;
  private final List<Disturbance> reaching = new ArrayList<>();
  private final TrueFouling truth;
  private final Site site;
  private final double greatestRatio;

  FoulingRate(PracticeParameters parameters, Site site, ZoneWater water) {
    this.truth = parameters.fouling();
    this.site = site;
    this.basePerDay = truth.perYear() * water.foulingFactor() / PracticeParameters.DAYS_A_YEAR;
    double greatest = 1;
    for (Disturbance one : water.all()) {
      double ratio = one.ratioAt(site, truth);
      if (ratio > 1) {
        reaching.add(one);
        greatest = Math.max(greatest, ratio);
      }
    }
    this.greatestRatio = greatest;
  }

  /** Rate without disturbances, a day, for a frailty of 1. */
  double basePerDay() {
    return basePerDay;
  }

  /** The disturbance that raises the rate most at a time; null where none does. */
  Disturbance actingAt(double day) {
    Disturbance acting = null;
    double greatest = 1;
    for (Disturbance one : reaching) {
      if (day >= one.day() && day < one.endDay(truth)) {
        double ratio = one.ratioAt(site, truth);
        if (ratio > greatest) {
          greatest = ratio;
          acting = one;
        }
      }
    }
    return acting;
  }

  /** Ratio of the rate at a time to the base rate. */
  double ratioAt(double day) {
    Disturbance acting = actingAt(day);
    return acting == null ? 1 : acting.ratioAt(site, truth);
  }

  /**
   * The next fouling after a time, by thinning candidates of the greatest rate (Lewis and Shedler
   * 1979): exact, because no candidate is accepted with a probability above 1.
   *
   * @return its time, days since 1970-01-01; infinite where none falls before {@code endDay}
   */
  double nextAfter(double day, double frailty, int endDay, Draws draws) {
    double greatest = basePerDay * frailty * greatestRatio;
    if (greatest == 0) {
      return Double.POSITIVE_INFINITY;
    }
    double at = day;
    while (true) {
      at += draws.exponential() / greatest;
      if (at >= endDay) {
        return Double.POSITIVE_INFINITY;
      }
      if (draws.uniform() * greatestRatio < ratioAt(at)) {
        return at;
      }
    }
  }

  /**
   * The disturbance that a fouling is due to: of foulings under a ratio r, a share (r-1)/r would
   * not have come without it.
   *
   * @return null where it would have come anyway
   */
  Disturbance causeOf(double day, Draws draws) {
    Disturbance acting = actingAt(day);
    if (acting == null) {
      return null;
    }
    double ratio = acting.ratioAt(site, truth);
    return draws.happens((ratio - 1) / ratio) ? acting : null;
  }
}
