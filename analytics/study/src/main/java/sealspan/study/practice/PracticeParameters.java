package sealspan.study.practice;

import java.time.LocalDate;
import sealspan.event.AssemblyType;
import sealspan.event.Means;

/** All true values of an invented fleet; with them the fleet is fixed to the last bit. */
public record PracticeParameters(
    @Means("seed of all draws") long seed,
    @Means("positions; each holds one assembly at a time") int positions,
    @Means("first day of the record") LocalDate recordBegins,
    @Means("years of the record; tests are made before its end") int years,
    @Means("only type of the fleet; none: a mixture") AssemblyType onlyType,
    @Means("the town") PracticeTown town,
    @Means("wear") TrueWear wear,
    @Means("fouling") TrueFouling fouling,
    @Means("repairs") TrueRepairs repairs,
    @Means("readings") TrueReadings readings,
    @Means("routes") TestRoute route,
    @Means("reports") ReportHabits reports) {

  /** Mean length of a year of the Gregorian calendar is 365.2425; this is the usual 365.25. */
  public static final double DAYS_A_YEAR = 365.25;

  public PracticeParameters {
    if (positions < 0 || positions > 9_999_999) {
      throw new IllegalArgumentException(
          "A practice fleet has 0 to 9999999 positions, not " + positions + ".");
    }
    if (years < 1 || years > 60) {
      throw new IllegalArgumentException("A practice record has 1 to 60 years, not " + years + ".");
    }
    if (town.positionsPerTester() < 16 || town.positionsPerTester() % 16 != 0) {
      throw new IllegalArgumentException("positionsPerTester is a multiple of 16.");
    }
    if (town.zones() < 1) {
      throw new IllegalArgumentException("A practice town has at least one zone.");
    }
  }

  /** A fleet with everything that makes real records hard. */
  public static PracticeParameters usual(long seed, int positions) {
    return new PracticeParameters(
        seed,
        positions,
        LocalDate.of(2016, 1, 1),
        8,
        null,
        PracticeTown.usual(),
        TrueWear.usual(),
        TrueFouling.usual(),
        TrueRepairs.usual(),
        TrueReadings.usual(),
        TestRoute.usual(),
        ReportHabits.usual());
  }

  /** New assemblies, tested every year, that fail by wear alone and are reported without flaw. */
  public static PracticeParameters plain(
      long seed, int positions, TrueWear wear, TrueRepairs repairs) {
    return new PracticeParameters(
        seed,
        positions,
        LocalDate.of(2012, 1, 1),
        12,
        AssemblyType.DC,
        PracticeTown.usual(),
        wear,
        TrueFouling.none(),
        repairs,
        TrueReadings.exact(),
        TestRoute.punctual(),
        ReportHabits.flawless());
  }

  /** The same fleet with other wear. */
  public PracticeParameters with(TrueWear other) {
    return of(positions, years, onlyType, town, other, fouling, repairs, readings, route, reports);
  }

  /** The same fleet with other fouling. */
  public PracticeParameters with(TrueFouling other) {
    return of(positions, years, onlyType, town, wear, other, repairs, readings, route, reports);
  }

  /** The same fleet with other repairs. */
  public PracticeParameters with(TrueRepairs other) {
    return of(positions, years, onlyType, town, wear, fouling, other, readings, route, reports);
  }

  /** The same fleet with other readings. */
  public PracticeParameters with(TrueReadings other) {
    return of(positions, years, onlyType, town, wear, fouling, repairs, other, route, reports);
  }

  /** The same fleet on other routes. */
  public PracticeParameters with(TestRoute other) {
    return of(positions, years, onlyType, town, wear, fouling, repairs, readings, other, reports);
  }

  /** The same fleet with other reports. */
  public PracticeParameters with(ReportHabits other) {
    return of(positions, years, onlyType, town, wear, fouling, repairs, readings, route, other);
  }

  /** The same fleet in another town. */
  public PracticeParameters with(PracticeTown other) {
    return of(positions, years, onlyType, other, wear, fouling, repairs, readings, route, reports);
  }

  /** The same fleet of one type, or of a mixture for null. */
  public PracticeParameters ofType(AssemblyType type) {
    return of(positions, years, type, town, wear, fouling, repairs, readings, route, reports);
  }

  /** The same fleet with a record of other length. */
  public PracticeParameters overYears(int count) {
    return of(positions, count, onlyType, town, wear, fouling, repairs, readings, route, reports);
  }

  /** More or fewer positions; those that both fleets have are the same. */
  public PracticeParameters ofSize(int count) {
    return of(count, years, onlyType, town, wear, fouling, repairs, readings, route, reports);
  }

  private PracticeParameters of(
      int newPositions,
      int newYears,
      AssemblyType newType,
      PracticeTown newTown,
      TrueWear newWear,
      TrueFouling newFouling,
      TrueRepairs newRepairs,
      TrueReadings newReadings,
      TestRoute newRoute,
      ReportHabits newReports) {
    return new PracticeParameters(
        seed,
        newPositions,
        recordBegins,
        newYears,
        newType,
        newTown,
        newWear,
        newFouling,
        newRepairs,
        newReadings,
        newRoute,
        newReports);
  }

  int beginDay() {
    return (int) recordBegins.toEpochDay();
  }

  /** First day after the record, days since 1970-01-01. */
  int endDay() {
    return (int) recordBegins.plusYears(years).toEpochDay();
  }
}
