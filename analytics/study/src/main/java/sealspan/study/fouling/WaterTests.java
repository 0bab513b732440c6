package sealspan.study.fouling;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sealspan.study.Members;
import sealspan.study.Subsample;
import sealspan.table.AssemblyRows;
import sealspan.table.TestRow;

/**
 * The tests that can tell of the water, in order of zone, day and assembly.
 *
 * @param tests the tests
 * @param lastDay last day that the record knows of, days since 1970-01-01
 * @param leftOut how many were left out, by the reason in words
 */
record WaterTests(List<WaterTest> tests, int lastDay, Map<String, Integer> leftOut) {

  /** The tests of all assemblies. */
  static WaterTests of(Members assemblies, WaterRecord water) {
    Map<String, Integer> leftOut = new LinkedHashMap<>();
    int lastDay = water.lastDay();
    int all = 0;
    for (AssemblyRows rows : assemblies) {
      for (TestRow round : rows.tests()) {
        if (FoulingVisits.countsIn(round)) {
          lastDay = Math.max(lastDay, (int) round.day().toEpochDay());
          String reason = obstacle(round, water);
          if (reason == null) {
            all++;
          } else {
            leftOut.merge(reason, 1, Integer::sum);
          }
        }
      }
    }
    List<WaterTest> taken = taken(assemblies, water, Subsample.oneOf(all));
    if (taken.size() < all) {
      leftOut.put("tests beyond those that are more than enough", all - taken.size());
    }
    return new WaterTests(taken, lastDay, leftOut);
  }

  /** Of so many assemblies the tests of one, in order. */
  private static List<WaterTest> taken(Members assemblies, WaterRecord water, int oneOf) {
    List<WaterTest> taken = new ArrayList<>();
    for (AssemblyRows rows : assemblies) {
      if (Subsample.keeps(rows.assemblyId(), oneOf)) {
        for (TestRow round : rows.tests()) {
          if (FoulingVisits.countsIn(round) && obstacle(round, water) == null) {
            taken.add(test(round));
          }
        }
      }
    }
    taken.sort(
        Comparator.comparing(WaterTest::zoneId)
            .thenComparingInt(WaterTest::day)
            .thenComparing(WaterTest::assemblyId)
            .thenComparingInt(WaterTest::afterDay));
    return taken;
  }

  private static String obstacle(TestRow round, WaterRecord water) {
    if (round.zoneId() == null) {
      return "tests without a recorded water zone";
    }
    if (FoulingFailure.of(round) == FoulingFailure.UNCLASSIFIED) {
      return "failed tests that could not be classified";
    }
    if (round.ageDays() != null && round.ageDays() < 0) {
      return "tests dated before the installation of their assembly";
    }
    if (round.day().toEpochDay() - round.exposureDays() < water.firstDay()) {
      return "tests whose time since the last pass begins before the water record, on "
          + LocalDate.ofEpochDay(water.firstDay());
    }
    return null;
  }

  private static WaterTest test(TestRow round) {
    int day = (int) round.day().toEpochDay();
    return new WaterTest(
        round.assemblyId(),
        round.zoneId(),
        round.type(),
        day - round.exposureDays(),
        day,
        FoulingFailure.of(round) == FoulingFailure.FOULED);
  }

  /** What was left out, as one text; null for nothing. */
  String leftOutText(Map<String, Integer> more) {
    Map<String, Integer> all = new LinkedHashMap<>(leftOut);
    more.forEach((reason, count) -> all.merge(reason, count, Integer::sum));
    return all.isEmpty()
        ? null
        : all.entrySet().stream()
            .sorted(Map.Entry.comparingByKey())
            .map(reason -> reason.getKey() + ": " + reason.getValue())
            .collect(java.util.stream.Collectors.joining("; "));
  }
}
