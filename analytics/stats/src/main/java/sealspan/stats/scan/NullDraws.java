package sealspan.stats.scan;

/** How cases fall where nothing clusters. */
public interface NullDraws {
  /**
   * Draws where the cases of one replicate fall: a fixed function of the replicate's number.
   *
   * @param replicate number of the replicate, from 0
   * @param cells filled with the cell of each case, in any order; as long as there are cases
   */
  void draw(long replicate, int[] cells);
}
