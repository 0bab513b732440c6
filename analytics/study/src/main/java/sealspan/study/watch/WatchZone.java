package sealspan.study.watch;

import java.util.List;

/**
 * A zone that is watched.
 *
 * @param name tells it from others, also of other models
 * @param zoneId the water zone; null for a circle
 * @param centre the site in the middle of a circle; null for a water zone
 * @param radiusKm distance from the middle to the farthest site; 0 for a site alone and for a zone
 * @param members its sites, the nearest first, or by id
 */
record WatchZone(
    String name, String zoneId, WatchSite centre, double radiusKm, List<String> members) {

  boolean isCircle() {
    return centre != null;
  }

  /** The zone in words. */
  String words() {
    if (!isCircle()) {
      return "water zone " + zoneId;
    }
    if (members.size() == 1) {
      return "site " + centre.siteId().strip();
    }
    return "%d sites within %s km of site %s"
        .formatted(members.size(), WatchWords.twoDigits(radiusKm), centre.siteId().strip());
  }
}
