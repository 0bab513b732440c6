package sealspan.study;

import java.util.List;

/**
 * The first seals of known origin at the positions of a component. Later seals of the same position
 * are not independent of them, so curves that take lives to be independent rest on these alone.
 *
 * @param seals first seals of known origin
 * @param leftOut positions whose first seal has an unknown origin
 * @param later seals that followed the first ones, not used
 */
record FirstSeals(List<FirstSeal> seals, int leftOut, int later) {

  /** What the curves rest on, in words. */
  String basis() {
    return "first seals of known origin"
        + (later == 0 ? "" : "; " + later + " later seals are not independent and are left out");
  }
}
