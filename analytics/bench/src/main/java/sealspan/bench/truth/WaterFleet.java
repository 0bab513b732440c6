package sealspan.bench.truth;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.event.LoggedEvent;
import sealspan.stats.Estimate;
import sealspan.stats.regression.Design;
import sealspan.stats.regression.Family;
import sealspan.stats.regression.Observations;
import sealspan.stats.regression.StratifiedFit;
import sealspan.stats.regression.StratifiedRegression;
import sealspan.study.BatchTables;
import sealspan.study.practice.PracticeFleet;
import sealspan.study.practice.PracticeParameters;
import sealspan.table.AssemblyRows;
import sealspan.table.Bundle;
import sealspan.table.TestRow;
import sealspan.table.WaterDisturbanceRow;
import sealspan.table.ZoneRows;

/**
 * A practice fleet that fails by fouling alone, with the ratio of rates that a break in the time
 * since the last pass truly comes to. A break raises the rate for some days only, so that ratio
 * depends on when tests are made: it is the one that the model has when it is fitted to the true
 * probabilities of the tests in place of what they found.
 *
 * @param assemblies rows of the assemblies
 * @param zones rows of the zones, by id
 * @param tests tests with an exposure that lies in the water record
 * @param fouled of these, fouled
 * @param trueRatio the ratio; 1 where breaks do nothing
 */
record WaterFleet(
    List<AssemblyRows> assemblies, List<ZoneRows> zones, int tests, int fouled, double trueRatio) {
  private static final int CHECKS = 2;

  static WaterFleet of(PracticeParameters parameters, AcceptanceCriteria criteria) {
    List<LoggedEvent> events = new PracticeFleet(parameters).events().toList();
    List<AssemblyRows> assemblies = new ArrayList<>();
    List<ZoneRows> zones = new ArrayList<>();
    for (Bundle bundle : BatchTables.of(events, List.of(), criteria, null)) {
      if (bundle instanceof AssemblyRows rows) {
        assemblies.add(rows);
      } else if (bundle instanceof ZoneRows rows) {
        zones.add(rows);
      }
    }
    return of(parameters, assemblies, zones);
  }

  private static WaterFleet of(
      PracticeParameters parameters, List<AssemblyRows> assemblies, List<ZoneRows> zones) {
    Map<String, List<Long>> breaks = new HashMap<>();
    long firstDay = Long.MAX_VALUE;
    for (ZoneRows zone : zones) {
      List<Long> own = new ArrayList<>();
      for (WaterDisturbanceRow one : zone.disturbances()) {
        own.add(one.fromDay().toEpochDay());
        firstDay = Math.min(firstDay, one.fromDay().toEpochDay());
      }
      firstDay =
          Math.min(
              firstDay,
              zone.samples().stream().mapToLong(s -> s.day().toEpochDay()).min().orElse(firstDay));
      breaks.put(zone.zoneId(), own);
    }
    List<double[]> rows = new ArrayList<>();
    Map<String, Integer> zoneNumbers = new HashMap<>();
    int fouled = 0;
    for (AssemblyRows assembly : assemblies) {
      for (TestRow test : assembly.tests()) {
        if (!test.counted() || test.exposureDays() == null || test.exposureDays() < 1) {
          continue;
        }
        long day = test.day().toEpochDay();
        long after = day - test.exposureDays();
        if (after < firstDay) {
          continue;
        }
        List<Long> own = breaks.get(test.zoneId());
        boolean met = own.stream().anyMatch(one -> one > after && one <= day);
        double hazard =
            CHECKS
                * parameters.fouling().perYear()
                / PracticeParameters.DAYS_A_YEAR
                * (test.exposureDays()
                    + (parameters.fouling().breakRatio() - 1)
                        * raisedDays(own, after, day, parameters.fouling().breakDays()));
        int zone = zoneNumbers.computeIfAbsent(test.zoneId(), z -> zoneNumbers.size());
        double turn = 2 * Math.PI * LocalDate.ofEpochDay(day).getDayOfYear() / 365.25;
        rows.add(
            new double[] {
              met ? 1 : 0,
              -Math.expm1(-hazard),
              Math.log(test.exposureDays()),
              zone,
              Math.sin(turn),
              Math.cos(turn)
            });
        fouled += "FOULING".equals(test.failureClass()) ? 1 : 0;
      }
    }
    return new WaterFleet(assemblies, zones, rows.size(), fouled, ratio(rows));
  }

  /** Days from the pass to the test on which some break still raised the rate. */
  private static int raisedDays(List<Long> breaks, long after, long day, int breakDays) {
    int raised = 0;
    for (long at = after; at < day; at++) {
      long moment = at;
      raised += breaks.stream().anyMatch(one -> moment >= one && moment < one + breakDays) ? 1 : 0;
    }
    return raised;
  }

  private static double ratio(List<double[]> rows) {
    Design design =
        Design.ofRows(rows.size())
            .column("sine", column(rows, 4))
            .column("cosine", column(rows, 5))
            .column("break", column(rows, 0));
    Observations data = Observations.of(design, column(rows, 1)).offset(column(rows, 2));
    int[] zone = rows.stream().mapToInt(row -> (int) row[3]).toArray();
    Estimate<StratifiedFit> fit = StratifiedRegression.fit(Family.CLOGLOG, data, zone);
    return fit instanceof Estimate.Identified<StratifiedFit> found
        ? Math.exp(found.value().coefficient("break"))
        : Double.NaN;
  }

  private static double[] column(List<double[]> rows, int at) {
    return rows.stream().mapToDouble(row -> row[at]).toArray();
  }
}
