package sealspan.study.practice;

import sealspan.event.WaterDisturbed;

/**
 * A disturbance of the water as it truly acts.
 *
 * @param id id that its event carries
 * @param zone number of the zone
 * @param kind what happened
 * @param day day, counted from 1970-01-01
 * @param eastM metres east of the corner of the town
 * @param northM metres north of that corner
 */
record Disturbance(
    String id, int zone, WaterDisturbed.Kind kind, int day, double eastM, double northM) {

  /** Ratio by which it raises the fouling rate at a site in its days; 1: not at all. */
  double ratioAt(Site site, TrueFouling truth) {
    if (site.zone() != zone) {
      return 1;
    }
    return switch (kind) {
      case MAIN_BREAK ->
          site.distanceM(eastM, northM) <= truth.breakRadiusM() ? truth.breakRatio() : 1;
      case FLUSHING -> truth.flushingRatio();
      default -> 1;
    };
  }

  /** First day on which it no longer acts. */
  int endDay(TrueFouling truth) {
    return day + (kind == WaterDisturbed.Kind.FLUSHING ? truth.flushingDays() : truth.breakDays());
  }
}
