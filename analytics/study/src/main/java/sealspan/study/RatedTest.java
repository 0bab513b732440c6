package sealspan.study;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sealspan.table.ExposureRow;
import sealspan.table.TestRow;

/**
 * One counted round with an exposure, as rates take it.
 *
 * @param days exposure, at least 1
 * @param failed whether the assembly failed
 * @param failureClass class of the failure; null for a pass
 * @param compliant whether its report meets the compliance checks
 * @param levels type, size, zone and age of that day, in the order of {@link RateFactor}
 */
record RatedTest(
    int days, boolean failed, String failureClass, boolean compliant, List<String> levels) {
  private static final double YOUNG_YEARS = 5;
  private static final double OLD_YEARS = 15;

  /** Those of one assembly; an exposure of no day tells nothing of a rate. */
  static List<RatedTest> of(List<TestRow> tests, List<ExposureRow> exposures) {
    Map<String, TestRow> rounds = new HashMap<>();
    tests.forEach(test -> rounds.put(test.eventId(), test));
    List<RatedTest> rated = new ArrayList<>();
    for (ExposureRow exposure : exposures) {
      if (exposure.component().equals(RatePriors.WHOLE) && exposure.exposureDays() > 0) {
        TestRow round = rounds.get(exposure.eventId());
        rated.add(
            new RatedTest(
                exposure.exposureDays(),
                exposure.failed(),
                exposure.failureClass(),
                round == null || round.compliant(),
                round == null
                    ? RateFactor.NOTHING_RECORDED
                    : levels(round.type(), round.sizeInch(), round.zoneId(), round.ageDays())));
      }
    }
    return rated;
  }

  /** The same with another list of the same levels. */
  RatedTest with(List<String> same) {
    return new RatedTest(days, failed, failureClass, compliant, same);
  }

  /** The levels of the factors. */
  static List<String> levels(String type, String size, String zone, Integer ageDays) {
    return List.of(recorded(type), recorded(size), recorded(zone), age(ageDays));
  }

  private static String recorded(String level) {
    return level == null ? RateFactor.NOT_RECORDED : level;
  }

  private static String age(Integer days) {
    if (days == null) {
      return RateFactor.NOT_RECORDED;
    }
    double years = days / RatePriors.YEAR_DAYS;
    return years < YOUNG_YEARS ? "under 5" : years < OLD_YEARS ? "5 to 15" : "15 and over";
  }
}
