package sealspan.study.fouling;

/**
 * A plane over a town, in kilometres: an equirectangular projection about its middle. Over a town
 * of 100 km distances are right to a thousandth or so, up to 60 degrees of latitude.
 *
 * @param latitude WGS84 latitude of the middle, degrees
 * @param longitude WGS84 longitude of the middle, degrees
 */
record Plane(double latitude, double longitude) {
  /** Mean radius of the Earth (IUGG). */
  private static final double EARTH_RADIUS_KM = 6371.0088;

  private static final double KM_A_DEGREE = EARTH_RADIUS_KM * StrictMath.PI / 180;

  /** Kilometres east of the middle. */
  double x(double ofLongitude) {
    double east = ofLongitude - longitude;
    // Across the line where 180 meets -180 the short way counts.
    double shortWay = east > 180 ? east - 360 : east < -180 ? east + 360 : east;
    return shortWay * KM_A_DEGREE * StrictMath.cos(StrictMath.toRadians(latitude));
  }

  /** Kilometres north of the middle. */
  double y(double ofLatitude) {
    return (ofLatitude - latitude) * KM_A_DEGREE;
  }

  /** WGS84 latitude of a point, degrees. */
  double latitudeAt(double y) {
    return latitude + y / KM_A_DEGREE;
  }

  /** WGS84 longitude of a point, degrees, -180 to 180. */
  double longitudeAt(double x) {
    double cos = StrictMath.cos(StrictMath.toRadians(latitude));
    double at = cos == 0 ? longitude : longitude + x / (KM_A_DEGREE * cos);
    return at > 180 ? at - 360 : at < -180 ? at + 360 : at;
  }
}
