package sealspan.answers;

/** Is told how far a longer piece of work has come. */
@FunctionalInterface
public interface Progress {
  /** Tells nobody. */
  Progress NONE = (step, done, all) -> {};

  /**
   * A step has come so far.
   *
   * @param step what is being done, in words
   * @param done how much is done
   * @param all how much there is in all
   */
  void at(String step, long done, long all);
}
