package sealspan.study.practice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sealspan.study.fouling.FoulingFailure;
import sealspan.study.fouling.FoulingVisit;
import sealspan.study.practice.Draws.Purpose;

/**
 * An invented town for scans: site visits whose true rate of fouling is known, made on a route,
 * area by area and month by month, as tests are. Rates depend on type and season, on a site's place
 * only where a cluster is put in. A fifth of the sites have two assemblies.
 *
 * @param seed seed
 * @param sites sites, spread evenly over a square of 10 km in open sea
 * @param years years of the record
 * @param perYear rate of fouling of a double check in a middling season, a year
 * @param ratio ratio of the rate in the cluster; 1 for none
 * @param clusterSites sites of the cluster: those nearest to the middle
 * @param clusterDays days of the cluster, from the middle of the record
 * @param thin whether the cluster keeps to the middle one of {@value #STREETS} streets from west to
 *     east, whatever lies nearer in the next
 */
public record RoutedTown(
    long seed,
    int sites,
    int years,
    double perYear,
    double ratio,
    int clusterSites,
    int clusterDays,
    boolean thin) {
  /** Streets from west to east; sites belong to the nearest. */
  public static final int STREETS = 7;

  private static final LocalDate BEGIN = LocalDate.of(2015, 1, 1);
  private static final int AREAS_A_SIDE = 4;
  private static final double SIDE_DEGREES = 0.09;
  private static final double SOUTH = 37.0;
  private static final double WEST = -140.0;

  /** A site: its place as shares of the side, and what is tested there. */
  private record SitePlan(int number, double east, double north, int assemblies, String type) {
    double fromMiddle() {
      return (east - 0.5) * (east - 0.5) + (north - 0.5) * (north - 0.5);
    }

    boolean isOffMiddleStreet() {
      return Math.abs(north - 0.5) > 0.5 / STREETS;
    }

    String siteId() {
      return "S" + Names.digits(number);
    }

    /** Month of its tests, from 0: areas follow one another in a winding way. */
    int month() {
      int row = (int) (north * AREAS_A_SIDE);
      int column = (int) (east * AREAS_A_SIDE);
      int along = row % 2 == 0 ? column : AREAS_A_SIDE - 1 - column;
      return (row * AREAS_A_SIDE + along) * 12 / (AREAS_A_SIDE * AREAS_A_SIDE);
    }
  }

  /** A town with a round cluster. */
  public RoutedTown(
      long seed,
      int sites,
      int years,
      double perYear,
      double ratio,
      int clusterSites,
      int clusterDays) {
    this(seed, sites, years, perYear, ratio, clusterSites, clusterDays, false);
  }

  /**
   * The mains, lines of {longitude, latitude}: one along each street, and one along the west that
   * joins them.
   */
  public static List<double[][]> mains() {
    List<double[][]> mains = new ArrayList<>();
    double[][] west = new double[STREETS][];
    for (int street = 0; street < STREETS; street++) {
      double north = (street + 0.5) / STREETS;
      west[street] = point(0, north);
      mains.add(new double[][] {west[street], point(1, north)});
    }
    mains.add(west);
    return mains;
  }

  private static double[] point(double east, double north) {
    return new double[] {longitude(east), latitude(north)};
  }

  private static double longitude(double east) {
    return WEST + SIDE_DEGREES / StrictMath.cos(StrictMath.toRadians(SOUTH)) * east;
  }

  private static double latitude(double north) {
    return SOUTH + SIDE_DEGREES * north;
  }

  /** All visits, ordered by day, then site. */
  public List<FoulingVisit> visits() {
    List<FoulingVisit> visits = new ArrayList<>();
    List<SitePlan> plans = plansFromMiddle();
    for (int i = 0; i < plans.size(); i++) {
      addVisits(plans.get(i), i < clusterSites, visits);
    }
    visits.sort(Comparator.comparing(FoulingVisit::day).thenComparing(FoulingVisit::siteId));
    return visits;
  }

  /** The sites of the cluster that was put in. */
  public List<String> clusterSiteIds() {
    return plansFromMiddle().stream().limit(clusterSites).map(SitePlan::siteId).toList();
  }

  private List<SitePlan> plansFromMiddle() {
    List<SitePlan> plans = new ArrayList<>();
    for (int i = 0; i < sites; i++) {
      Draws draws = Draws.of(seed, Purpose.ROUTED, i, 0, 0);
      plans.add(
          new SitePlan(
              i,
              draws.uniform(),
              draws.uniform(),
              draws.happens(0.2) ? 2 : 1,
              draws.happens(0.4) ? "RP" : "DC"));
    }
    plans.sort(
        thin
            ? Comparator.comparing(SitePlan::isOffMiddleStreet)
                .thenComparing(plan -> Math.abs(plan.east() - 0.5))
            : Comparator.comparingDouble(SitePlan::fromMiddle));
    return plans;
  }

  /** Whether a visit is one of the cluster. */
  private boolean inCluster(boolean near, LocalDate day) {
    LocalDate from = BEGIN.plusYears(years).minusDays(365L * years / 2 + 1);
    return near && !day.isBefore(from) && day.isBefore(from.plusDays(clusterDays));
  }

  private void addVisits(SitePlan plan, boolean near, List<FoulingVisit> visits) {
    LocalDate before = BEGIN.minusYears(1).plusMonths(plan.month()).plusDays(14);
    for (int year = 0; year < years; year++) {
      Draws draws = Draws.of(seed, Purpose.ROUTED, plan.number(), year + 1L, 0);
      LocalDate day = BEGIN.plusYears(year).plusMonths(plan.month()).plusDays(draws.whole(0, 27));
      long days = day.toEpochDay() - before.toEpochDay();
      double turn = 2 * Math.PI * day.getDayOfYear() / PracticeParameters.DAYS_A_YEAR;
      double rate =
          perYear
              * (plan.type().equals("RP") ? 1.6 : 1)
              * StrictMath.exp(0.4 * StrictMath.sin(turn))
              * (inCluster(near, day) ? ratio : 1);
      double hazard = rate * plan.assemblies() * days / PracticeParameters.DAYS_A_YEAR;
      boolean fouled = draws.happens(-StrictMath.expm1(-hazard));
      visits.add(visit(plan, day, days, fouled));
      before = day;
    }
  }

  private static FoulingVisit visit(SitePlan plan, LocalDate day, long days, boolean fouled) {
    return new FoulingVisit(
        day,
        plan.siteId(),
        Names.assembly(plan.number(), 0),
        "Z01",
        latitude(plan.north()),
        longitude(plan.east()),
        plan.type(),
        plan.assemblies(),
        days * plan.assemblies(),
        fouled ? FoulingFailure.FOULED : FoulingFailure.NOT_FOULED);
  }
}
