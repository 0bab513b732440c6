package sealspan.table;

/**
 * The names of the topics of results and of the consumer group of the jobs, on which the jobs and
 * the writer of the answers agree.
 *
 * <p>A generation is one build of the results from the log; a rebuild makes a new one beside it.
 * Its name is of letters, digits, dot, dash and underscore.
 */
public final class ResultTopics {
  private ResultTopics() {}

  /** Result bundles of a generation, by {@link Bundle#key()}; compacted. */
  public static String rows(String generation) {
    return "sealspan.rows." + generation;
  }

  /**
   * The fits of a generation once more, by themselves, so that the scores find them without reading
   * all rows; compacted.
   */
  public static String fits(String generation) {
    return "sealspan.fits." + generation;
  }

  /**
   * The group that commits offsets of the events: the rows of every event below a committed offset
   * are on the topic of rows.
   */
  public static String historiesGroup(String generation) {
    return "sealspan.histories." + generation;
  }
}
