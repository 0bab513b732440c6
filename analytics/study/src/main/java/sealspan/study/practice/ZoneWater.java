package sealspan.study.practice;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import sealspan.event.AssemblyEvent;
import sealspan.event.Moment;
import sealspan.event.WaterDisturbed;
import sealspan.event.WaterSampled;
import sealspan.study.practice.Draws.Purpose;

/** The water of one zone: what disturbed it, and samples taken month by month. */
final class ZoneWater {
  private static final double IRON_LIMIT_MG_L = 0.05;

  private final PracticeParameters parameters;
  private final int zone;
  private final List<Disturbance> disturbances;
  private final double foulingFactor;

  ZoneWater(PracticeParameters parameters, int zone) {
    this.parameters = parameters;
    this.zone = zone;
    this.disturbances = disturbances();
    this.foulingFactor =
        Draws.of(parameters.seed(), Purpose.ZONE, zone, 0, 0)
            .gammaOfMeanOne(parameters.fouling().zoneCv());
  }

  /** All disturbances of the record, by day. */
  List<Disturbance> all() {
    return disturbances;
  }

  /** Factor of the zone on the fouling rate; its mean over zones is 1. */
  double foulingFactor() {
    return foulingFactor;
  }

  private List<Disturbance> disturbances() {
    List<Disturbance> drawn = new ArrayList<>();
    TrueFouling truth = parameters.fouling();
    draw(drawn, WaterDisturbed.Kind.MAIN_BREAK, truth.breaksPerYear());
    draw(drawn, WaterDisturbed.Kind.FLUSHING, truth.flushingsPerYear());
    for (PracticeTown.Injected one : parameters.town().injected()) {
      if (one.zone() == zone) {
        int day = (int) one.day().toEpochDay();
        drawn.add(new Disturbance("", zone, one.kind(), day, one.eastM(), one.northM()));
      }
    }
    drawn.sort(
        Comparator.comparingInt(Disturbance::day)
            .thenComparing(Disturbance::kind)
            .thenComparingDouble(Disturbance::eastM));
    List<Disturbance> named = new ArrayList<>();
    for (Disturbance one : drawn) {
      String id = "W" + Names.zone(zone).substring(1) + "-" + (named.size() + 1);
      named.add(new Disturbance(id, zone, one.kind(), one.day(), one.eastM(), one.northM()));
    }
    return List.copyOf(named);
  }

  private void draw(List<Disturbance> into, WaterDisturbed.Kind kind, double perYear) {
    if (perYear == 0) {
      return;
    }
    PracticeTown town = parameters.town();
    Draws draws = Draws.of(parameters.seed(), Purpose.DISTURBANCE, zone, kind.ordinal(), 0);
    double day = parameters.beginDay();
    while (true) {
      day += draws.exponential() * PracticeParameters.DAYS_A_YEAR / perYear;
      if (day >= parameters.endDay()) {
        return;
      }
      double east = Site.westOf(town, zone) + town.zoneSideM() * draws.uniform();
      double north = Site.southOf(town, zone) + town.zoneSideM() * draws.uniform();
      into.add(new Disturbance("", zone, kind, (int) day, east, north));
    }
  }

  /** The events of the zone. */
  List<AssemblyEvent> events() {
    List<AssemblyEvent> events = new ArrayList<>();
    for (Disturbance one : disturbances) {
      events.add(
          new WaterDisturbed(
              Names.zone(zone),
              moment(LocalDate.ofEpochDay(one.day()), 540),
              null,
              one.id(),
              one.kind(),
              Site.latitude(parameters.town(), one.northM()),
              Site.longitude(parameters.town(), one.eastM()),
              null));
    }
    YearMonth month = YearMonth.from(parameters.recordBegins());
    for (int i = 0; i < 12 * parameters.years(); i++) {
      sample(events, month.plusMonths(i), i);
    }
    return events;
  }

  private void sample(List<AssemblyEvent> into, YearMonth month, int number) {
    Draws draws = Draws.of(parameters.seed(), Purpose.SAMPLE, zone, number, 0);
    LocalDate day = month.atDay(draws.whole(1, 28));
    double stirred = stirredOn((int) day.toEpochDay()) ? 4 : 1;
    double iron = stirred * 0.06 * foulingFactor * StrictMath.exp(0.7 * draws.normal());
    double turbidity = stirred * 0.3 * StrictMath.exp(0.5 * draws.normal());
    double hardness = 110 + 15 * draws.normal();
    double chlorine = Math.max(0.1, 1.1 + 0.25 * draws.normal());
    boolean seen = iron >= IRON_LIMIT_MG_L;
    into.add(result(day, number, "Iron", "Total", seen ? text(iron, 3) : null, "mg/l"));
    into.add(result(day, number, "Turbidity", null, text(turbidity, 2), "NTU"));
    into.add(result(day, number, "Hardness, Ca, Mg", "Total", text(hardness, 0), "mg/l CaCO3"));
    into.add(result(day, number, "Chlorine", "Free Available", text(chlorine, 2), "mg/l"));
  }

  private WaterSampled result(
      LocalDate day,
      int number,
      String characteristic,
      String fraction,
      String value,
      String unit) {
    String station = "PRACTICE-" + Names.zone(zone);
    String activity = station + "-" + (number + 1);
    return new WaterSampled(
        Names.zone(zone),
        moment(day, 600),
        station,
        activity,
        activity + "-" + characteristic.charAt(0),
        characteristic,
        fraction,
        value,
        unit,
        value == null ? WaterSampled.Detection.NOT_DETECTED : WaterSampled.Detection.MEASURED,
        value == null ? "0.05" : null,
        value == null ? "mg/l" : null,
        null,
        "Final",
        "PRACTICE");
  }

  private boolean stirredOn(int day) {
    for (Disturbance one : disturbances) {
      if (day >= one.day() && day < one.day() + 14) {
        return true;
      }
    }
    return false;
  }

  private Moment moment(LocalDate day, int minuteOfDay) {
    return new Moment(day, minuteOfDay, parameters.town().timeZone());
  }

  private static String text(double value, int decimals) {
    return String.format(Locale.ROOT, "%." + decimals + "f", value);
  }
}
