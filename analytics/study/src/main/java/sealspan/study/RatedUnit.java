package sealspan.study;

import java.util.List;
import java.util.Map;
import sealspan.stats.rates.HiddenFailures;
import sealspan.table.AssemblyRow;
import sealspan.table.AssemblyRows;

/**
 * One assembly, as rates take it.
 *
 * @param assemblyId its id
 * @param siteId its site; null where not recorded
 * @param inPlace whether it stands there now
 * @param levels levels of the factors now: its type, size and zone, and its age at its last test
 * @param tests its tests with an exposure
 */
record RatedUnit(
    String assemblyId, String siteId, boolean inPlace, List<String> levels, List<RatedTest> tests) {

  static RatedUnit of(AssemblyRows rows) {
    return of(rows.assembly(), RatedTest.of(rows.tests(), rows.exposures()));
  }

  static RatedUnit of(AssemblyRow assembly, List<RatedTest> tests) {
    List<String> now =
        RatedTest.levels(assembly.type(), assembly.sizeInch(), assembly.zoneId(), null);
    int age = RateFactor.AGE.ordinal();
    String lastAge = tests.isEmpty() ? now.get(age) : tests.get(tests.size() - 1).levels().get(age);
    return new RatedUnit(
        assembly.assemblyId(),
        assembly.siteId(),
        assembly.removedOn() == null,
        List.of(now.get(0), now.get(1), now.get(2), lastAge),
        tests);
  }

  /** The same, with each of its lists of levels taken from those known if it is there. */
  RatedUnit sharing(Map<List<String>, List<String>> known) {
    return new RatedUnit(
        assemblyId,
        siteId,
        inPlace,
        one(levels, known),
        tests.stream().map(test -> test.with(one(test.levels(), known))).toList());
  }

  private static List<String> one(List<String> levels, Map<List<String>, List<String>> known) {
    List<String> before = known.putIfAbsent(levels, levels);
    return before == null ? levels : before;
  }

  /** Its type; null where not recorded. */
  String type() {
    String type = levels.get(RateFactor.TYPE.ordinal());
    return type.equals(RateFactor.NOT_RECORDED) ? null : type;
  }

  /** Its tests as they are. */
  HiddenFailures hiddenFailures() {
    return hiddenFailures(tests);
  }

  static HiddenFailures hiddenFailures(List<RatedTest> tests) {
    int[] days = new int[tests.size()];
    boolean[] failed = new boolean[days.length];
    for (int i = 0; i < days.length; i++) {
      days[i] = tests.get(i).days();
      failed[i] = tests.get(i).failed();
    }
    return HiddenFailures.of(days, failed);
  }
}
