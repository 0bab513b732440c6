package sealspan.study.practice;

import java.time.DayOfWeek;
import java.time.LocalDate;
import sealspan.event.AssemblyType;
import sealspan.study.practice.Draws.Purpose;

/**
 * The yearly visit of one site.
 *
 * @param day day of the test, counted from 1970-01-01; {@link #MISSED} where none is made
 * @param withoutAccessOn day of an earlier visit without access; {@link #MISSED} for none
 */
record Route(int day, int withoutAccessOn) {
  static final int MISSED = Integer.MIN_VALUE;

  /** Days of the first area's window, and between the first and the last area. */
  private static final int WINDOW_DAYS = 30;

  private static final int YEAR_DAYS = 330;
  private static final int LATEST_DAYS = 240;

  /** Whether assemblies of a type are laid up in winter. */
  static boolean isSeasonal(PracticeParameters parameters, AssemblyType type) {
    return parameters.route().layUp() == TestRoute.LayUp.WINTER
        && (type == AssemblyType.PVB || type == AssemblyType.SVB);
  }

  /** The visit of a year; all assemblies of a site that are not seasonal share it. */
  static Route of(PracticeParameters parameters, Site site, int year, boolean seasonal) {
    TestRoute truth = parameters.route();
    Draws own = Draws.of(parameters.seed(), Purpose.ROUTE, site.first(), 0, 0);
    int window = YEAR_DAYS * site.zone() / parameters.town().zones();
    int usual = window + own.whole(0, WINDOW_DAYS - 1);
    Draws draws = Draws.of(parameters.seed(), Purpose.ROUTE, site.first(), year, 1);
    int inYear = usual + draws.whole(-4, 4);
    double lateness = draws.happens(truth.lateShare()) ? truth.lateDays() * draws.exponential() : 0;
    boolean missed = draws.happens(truth.missedShare());
    boolean noAccess = draws.happens(truth.noAccessShare());
    int laterBy = draws.whole(5, 30);
    if (missed) {
      return new Route(MISSED, MISSED);
    }
    int yearStart = (int) LocalDate.of(year, 1, 5).toEpochDay();
    int day = yearStart + inYear + Math.min((int) lateness, LATEST_DAYS);
    if (seasonal) {
      day = inSeason(day, usual);
    }
    day = onWorkDay(day);
    return noAccess ? new Route(onWorkDay(day + laterBy), day) : new Route(day, MISSED);
  }

  /** Moves a day between November and mid April to the spring, when irrigation is in use. */
  private static int inSeason(int day, int spread) {
    LocalDate date = LocalDate.ofEpochDay(day);
    LocalDate from = LocalDate.of(date.getYear(), 4, 15);
    LocalDate until = LocalDate.of(date.getYear(), 10, 15);
    if (!date.isBefore(from) && date.isBefore(until)) {
      return day;
    }
    LocalDate spring = date.isBefore(from) ? from : from.plusYears(1);
    return (int) spring.plusDays(spread % 45).toEpochDay();
  }

  static int onWorkDay(int day) {
    DayOfWeek weekday = LocalDate.ofEpochDay(day).getDayOfWeek();
    return switch (weekday) {
      case SATURDAY -> day + 2;
      case SUNDAY -> day + 1;
      default -> day;
    };
  }
}
