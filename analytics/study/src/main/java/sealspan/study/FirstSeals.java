package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import sealspan.table.AssemblyRows;
import sealspan.table.SealRow;

/**
 * The first seals of known origin at the positions of a component. Later seals of the same position
 * are not independent of them, so curves that take lives to be independent rest on these alone.
 *
 * @param seals first seals of known origin
 * @param leftOut positions whose first seal has an unknown origin
 * @param later seals that followed the first ones, not used
 */
record FirstSeals(List<SealRow> seals, int leftOut, int later) {

  static FirstSeals of(String component, List<AssemblyRows> members) {
    List<SealRow> seals = new ArrayList<>();
    int leftOut = 0;
    int later = 0;
    for (AssemblyRows rows : members) {
      for (SealPosition position : SealPosition.of(rows, component)) {
        if (position.originKnown()) {
          seals.add(position.seals().get(0));
          later += position.seals().size() - 1;
        } else {
          leftOut++;
        }
      }
    }
    return new FirstSeals(List.copyOf(seals), leftOut, later);
  }

  /** Age of the seal when it came under observation, days. */
  static int entryAge(SealRow seal) {
    return Math.max(0, SealPosition.days(seal.startDay(), seal.entryDay()));
  }

  /** What the curves rest on, in words. */
  String basis() {
    return "first seals of known origin"
        + (later == 0 ? "" : "; " + later + " later seals are not independent and are left out");
  }
}
