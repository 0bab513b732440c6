package sealspan.study.watch;

/**
 * A place as it was known when a model was frozen.
 *
 * @param siteId the site, or where none is recorded the assembly's id after a space
 * @param zoneId water zone; null where none is recorded
 * @param latitude WGS84 latitude, degrees; null where unknown
 * @param longitude WGS84 longitude, degrees; null where unknown
 */
public record WatchSite(String siteId, String zoneId, Double latitude, Double longitude) {
  /** Whether it has coordinates. */
  public boolean isPlaced() {
    return latitude != null && longitude != null;
  }
}
