package sealspan.study;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.stats.recurrence.EventHistory;
import sealspan.table.AssemblyRows;
import sealspan.table.SealRow;

/**
 * The seal replacements of each assembly of a stratum by age, at the positions whose first seal has
 * a known origin.
 *
 * @param histories assemblies with such a position that was watched for a day, in order of their id
 * @param types type of each; null where not recorded
 * @param seals seals at these positions
 * @param leftOut seals at positions of unknown origin
 */
record ReplacementHistories(
    List<EventHistory> histories, List<String> types, int seals, int leftOut) {

  /** Of all seals, or of one component's where one is named. */
  static ReplacementHistories of(String component, Members members) {
    List<EventHistory> histories = new ArrayList<>();
    List<String> types = new ArrayList<>();
    int leftOut = 0;
    int seals = 0;
    for (AssemblyRows rows : members) {
      List<SealPosition> watched = new ArrayList<>();
      for (SealPosition position : SealPosition.of(rows, component)) {
        if (position.originKnown()) {
          watched.add(position);
        } else {
          leftOut += position.seals().size();
        }
      }
      EventHistory history = watched.isEmpty() ? null : history(watched);
      if (history != null) {
        seals += watched.stream().mapToInt(p -> p.seals().size()).sum();
        histories.add(history);
        types.add(rows.assembly().type());
      }
    }
    return new ReplacementHistories(histories, types, seals, leftOut);
  }

  /** An assembly since its first seal was new; null where it was not watched for a day. */
  private static EventHistory history(List<SealPosition> positions) {
    SealRow first = positions.get(0).seals().get(0);
    LocalDate origin = first.startDay();
    LocalDate entry = first.entryDay();
    LocalDate exit = first.endDay();
    List<LocalDate> events = new ArrayList<>();
    for (SealPosition position : positions) {
      for (SealRow seal : position.seals()) {
        exit = seal.endDay().isAfter(exit) ? seal.endDay() : exit;
        if (SealPosition.replaced(seal)) {
          events.add(seal.endDay());
        }
      }
    }
    int entryAge = SealPosition.days(origin, entry);
    int exitAge = SealPosition.days(origin, exit);
    int[] days =
        events.stream()
            .mapToInt(day -> SealPosition.days(origin, day))
            .filter(day -> day > entryAge)
            .sorted()
            .toArray();
    return exitAge > entryAge ? EventHistory.watched(entryAge, exitAge, days) : null;
  }
}
