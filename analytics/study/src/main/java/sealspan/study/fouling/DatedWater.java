package sealspan.study.fouling;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import sealspan.stats.Estimate;
import sealspan.stats.exposure.CaseSeries;
import sealspan.stats.exposure.DistributedLag;
import sealspan.stats.exposure.RiskWindow;
import sealspan.stats.exposure.WatchedSpan;
import sealspan.stats.exposure.WindowRatio;
import sealspan.study.Members;
import sealspan.table.AssemblyRows;
import sealspan.table.TestRow;
import sealspan.table.WaterEffectRow;

/**
 * Fouling whose day is known, because somebody noticed it: as-found rounds made because of a
 * complaint, an incident or a visible discharge. Each zone is compared with itself, in windows
 * around events and by weeks after them; whatever does not change in a zone cancels. Where windows
 * of two events overlap, the day belongs to the later event.
 */
final class DatedWater {
  private static final Set<String> NOTICED = Set.of("COMPLAINT", "INCIDENT", "VISIBLE_DISCHARGE");
  private static final int FEWEST_FOR_LAGS = 20;
  private static final double LEVEL = .95;

  /** The window before takes out days on which fouling may have brought on the event. */
  private static final List<RiskWindow> WINDOWS =
      List.of(
          new RiskWindow("14 to 1 days before it", -14, -1),
          new RiskWindow("0 to 30 days after it", 0, 30),
          new RiskWindow("31 to 90 days after it", 31, 90));

  private final WaterRecord water;
  private final Map<String, List<Integer>> outcomes = new TreeMap<>();
  private int withoutZone;
  private final List<WaterEffectRow> rows = new ArrayList<>();

  private DatedWater(Members assemblies, WaterRecord water) {
    this.water = water;
    for (AssemblyRows assembly : assemblies) {
      for (TestRow round : assembly.tests()) {
        if (NOTICED.contains(String.valueOf(round.purpose()))
            && "AS_FOUND".equals(round.phase())
            && FoulingFailure.of(round) == FoulingFailure.FOULED) {
          int day = (int) round.day().toEpochDay();
          if (round.zoneId() == null) {
            withoutZone++;
          } else if (day >= water.firstDay() && day <= water.lastDay()) {
            outcomes.computeIfAbsent(round.zoneId(), z -> new ArrayList<>()).add(day);
          }
        }
      }
    }
  }

  /** Rows for main breaks and flushing, numbered from a place on. */
  static List<WaterEffectRow> rows(int place, Members assemblies, WaterRecord water) {
    DatedWater dated = new DatedWater(assemblies, water);
    for (EventExposure event : water.events()) {
      if (event.text().equals("MAIN_BREAK") || event.text().equals("FLUSHING")) {
        dated.windows(place, event);
        dated.lags(place, event);
      }
    }
    return dated.rows;
  }

  private int count() {
    return outcomes.values().stream().mapToInt(List::size).sum();
  }

  private String obstacle(EventExposure event, int fewest) {
    if (count() == 0) {
      return "not possible with these data: no fouling failure was found because of a complaint, an"
          + " incident or a visible discharge, and only these have a day";
    }
    if (count() < fewest) {
      return "fouling failures found because of a complaint, an incident or a visible discharge: "
          + count()
          + "; it needs "
          + fewest;
    }
    int events = events(event);
    return events < WaterEffectFit.FEWEST
        ? "different events on record: " + events + "; it needs five"
        : null;
  }

  private int events(EventExposure event) {
    return (int)
        water.zones().stream()
            .flatMapToInt(zone -> Arrays.stream(event.firstDays(zone)))
            .distinct()
            .count();
  }

  private void windows(int place, EventExposure event) {
    String obstacle = obstacle(event, WaterEffectFit.FEWEST);
    Estimate<CaseSeries> series =
        obstacle != null
            ? Estimate.notIdentified(obstacle)
            : CaseSeries.of(spans(event), WINDOWS, DatedWater::quarter, LEVEL);
    for (int w = 0; w < WINDOWS.size(); w++) {
      String name = WINDOWS.get(w).name();
      if (series instanceof Estimate.Identified<CaseSeries> found) {
        CaseSeries value = found.value();
        WindowRatio ratio = value.windows().get(w);
        double[] three = {ratio.ratio(), ratio.interval().lower(), ratio.interval().upper()};
        String words =
            "fouling noticed "
                + name.replace(" it", "")
                + " "
                + WaterWords.article(event.text())
                + " in the same zone comes "
                + WaterWords.times(three)
                + " as often as on other days; "
                + ratio.outcomes()
                + " of "
                + value.outcomes();
        add(
            place,
            event,
            name,
            "SELF_CONTROLLED",
            words,
            value.outcomes(),
            ratio.outcomes(),
            value.units(),
            three,
            "days in the window with other days of the zone, by quarter",
            null);
      } else {
        unknown(
            place,
            event,
            name,
            "SELF_CONTROLLED",
            ((Estimate.NotIdentified<CaseSeries>) series).because());
      }
    }
  }

  private static int quarter(int day) {
    return (LocalDate.ofEpochDay(day).getMonthValue() - 1) / 3;
  }

  private List<WatchedSpan> spans(EventExposure event) {
    List<WatchedSpan> spans = new ArrayList<>();
    outcomes.forEach(
        (zone, days) ->
            spans.add(
                new WatchedSpan(
                    water.firstDay(),
                    water.lastDay() + 1,
                    days.stream().mapToInt(Integer::intValue).toArray(),
                    event.firstDays(zone))));
    return spans;
  }

  private void lags(int place, EventExposure event) {
    String name = "0 to " + OutcomeWeeks.WEEKS + " weeks after it, all together";
    String obstacle = obstacle(event, FEWEST_FOR_LAGS);
    Estimate<DistributedLag> lags =
        obstacle != null
            ? Estimate.notIdentified(obstacle)
            : OutcomeWeeks.fit(water, event, outcomes);
    if (lags instanceof Estimate.Identified<DistributedLag> found) {
      DistributedLag value = found.value();
      double[] three = {
        StrictMath.exp(value.total().value() / (OutcomeWeeks.WEEKS + 1)),
        StrictMath.exp(value.total().interval().lower() / (OutcomeWeeks.WEEKS + 1)),
        StrictMath.exp(value.total().interval().upper() / (OutcomeWeeks.WEEKS + 1))
      };
      String words =
          "over "
              + (OutcomeWeeks.WEEKS + 1)
              + " weeks from "
              + WaterWords.article(event.text())
              + " in the same zone fouling is noticed "
              + WaterWords.times(three)
              + " as often in a week as in other weeks of the same zone and quarter; "
              + count()
              + " outcomes";
      add(
          place,
          event,
          name,
          "DISTRIBUTED_LAG",
          words,
          count(),
          null,
          outcomes.size(),
          three,
          "the mean over weeks of the ratio (geometric), within quarters of a zone",
          "weeks, with dispersion "
              + WaterWords.number(value.dispersion())
              + "; weeks of a zone may be alike up to "
              + OutcomeWeeks.WEEKS
              + " apart");
    } else {
      unknown(
          place,
          event,
          name,
          "DISTRIBUTED_LAG",
          ((Estimate.NotIdentified<DistributedLag>) lags).because());
    }
  }

  private void unknown(int place, EventExposure event, String lag, String method, String because) {
    String words =
        "whether fouling is noticed more often "
            + lag.replace("it", WaterWords.article(event.text()))
            + " is not identified: "
            + because;
    rows.add(
        row(
            place,
            event,
            lag,
            method,
            words,
            count(),
            null,
            outcomes.size(),
            null,
            null,
            null,
            because));
  }

  private void add(
      int place,
      EventExposure event,
      String lag,
      String method,
      String words,
      int outcomesUsed,
      Integer inWindow,
      int zones,
      double[] ratio,
      String compares,
      String independent) {
    rows.add(
        row(
            place,
            event,
            lag,
            method,
            words,
            outcomesUsed,
            inWindow,
            zones,
            ratio,
            compares,
            independent == null ? "outcomes of a zone" : independent,
            null));
  }

  private WaterEffectRow row(
      int place,
      EventExposure event,
      String lag,
      String method,
      String words,
      int outcomesUsed,
      Integer inWindow,
      int zones,
      double[] ratio,
      String compares,
      String independent,
      String because) {
    String leftOut =
        withoutZone == 0 ? null : "noticed failures without a recorded water zone: " + withoutZone;
    return new WaterEffectRow(
        place + rows.size(),
        event.text(),
        lag,
        method,
        words,
        outcomesUsed,
        outcomesUsed,
        null,
        inWindow,
        events(event),
        zones,
        WaterEffects.at(ratio, 0),
        WaterEffects.at(ratio, 1),
        WaterEffects.at(ratio, 2),
        compares,
        null,
        null,
        null,
        null,
        null,
        0,
        null,
        null,
        null,
        null,
        null,
        null,
        independent,
        leftOut,
        because);
  }
}
