package sealspan.study.practice;

import sealspan.study.practice.Draws.Purpose;

/**
 * One invented site. Positions are numbered from 0; each run of 16 is divided into sites, so the
 * site of a position does not depend on how many positions there are.
 *
 * @param first number of its first position, which also names the site
 * @param size how many positions it has
 * @param zone number of its water zone, from 0
 * @param eastM metres east of the corner of the town
 * @param northM metres north of that corner
 * @param pressurePsi usual inlet pressure
 */
record Site(int first, int size, int zone, double eastM, double northM, int pressurePsi) {
  private static final int RUN = 16;
  private static final double METRES_A_DEGREE = 111_320;

  /** The site that a position belongs to. */
  static Site of(PracticeParameters parameters, int position) {
    int runStart = position - position % RUN;
    Draws cuts = Draws.of(parameters.seed(), Purpose.SITE, runStart, 0, 0);
    int first = runStart;
    while (true) {
      int size = Math.min(sizeOf(cuts), runStart + RUN - first);
      if (position < first + size) {
        return at(parameters, first, size);
      }
      first += size;
    }
  }

  private static int sizeOf(Draws cuts) {
    return switch (cuts.place(0.7, 0.15, 0.08, 0.07)) {
      case 0 -> 1;
      case 1 -> 2;
      case 2 -> 3;
      default -> cuts.whole(4, 6);
    };
  }

  private static Site at(PracticeParameters parameters, int first, int size) {
    PracticeTown town = parameters.town();
    Draws draws = Draws.of(parameters.seed(), Purpose.SITE, first, 1, 0);
    int zone = draws.whole(0, town.zones() - 1);
    double east = westOf(town, zone) + town.zoneSideM() * draws.uniform();
    double north = southOf(town, zone) + town.zoneSideM() * draws.uniform();
    return new Site(first, size, zone, east, north, draws.whole(45, 85));
  }

  /** Western edge of a zone, metres east of the corner of the town; the zones make a grid. */
  static double westOf(PracticeTown town, int zone) {
    return town.zoneSideM() * (zone % columns(town));
  }

  /** Southern edge of a zone, metres north of the corner of the town. */
  static double southOf(PracticeTown town, int zone) {
    return town.zoneSideM() * (zone / columns(town));
  }

  private static int columns(PracticeTown town) {
    return (int) Math.ceil(Math.sqrt(town.zones()));
  }

  /** Latitude of a place, degrees to five decimals (about a metre). */
  static double latitude(PracticeTown town, double northM) {
    return rounded(town.latitude() + northM / METRES_A_DEGREE);
  }

  /** Longitude of a place, degrees to five decimals. */
  static double longitude(PracticeTown town, double eastM) {
    double metresADegree = METRES_A_DEGREE * StrictMath.cos(StrictMath.toRadians(town.latitude()));
    return rounded(town.longitude() + eastM / metresADegree);
  }

  private static double rounded(double degrees) {
    return Math.rint(degrees * 1e5) / 1e5;
  }

  /** Distance to a place, metres. */
  double distanceM(double toEastM, double toNorthM) {
    return Math.sqrt(
        (eastM - toEastM) * (eastM - toEastM) + (northM - toNorthM) * (northM - toNorthM));
  }

  String id() {
    return "S" + Names.digits(first);
  }
}
