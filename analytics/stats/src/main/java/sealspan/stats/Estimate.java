package sealspan.stats;

/**
 * The result of an estimator: a value, or the plain reason why these data cannot give one. An
 * estimator never answers with NaN or an exception because data are few.
 *
 * @param <T> what is estimated
 */
public sealed interface Estimate<T> {
  /** The data identify the quantity. */
  record Identified<T>(T value) implements Estimate<T> {}

  /**
   * The data do not identify the quantity.
   *
   * @param because a sentence for people, without full stop
   */
  record NotIdentified<T>(String because) implements Estimate<T> {}

  /** Wraps a value. */
  static <T> Estimate<T> of(T value) {
    return new Identified<>(value);
  }

  /** States why there is no value. */
  static <T> Estimate<T> notIdentified(String because) {
    return new NotIdentified<>(because);
  }

  /** The value; only for callers that know it is there (IllegalStateException otherwise). */
  default T orThrow() {
    if (this instanceof Identified<T> identified) {
      return identified.value();
    }
    throw new IllegalStateException("not identified: " + ((NotIdentified<T>) this).because());
  }
}
