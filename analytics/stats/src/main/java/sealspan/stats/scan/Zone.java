package sealspan.stats.scan;

/**
 * Places and a window, with what was found there.
 *
 * @param places the places, nearest to the centre first
 * @param window the window
 * @param cases cases found
 * @param expected cases expected
 * @param score log likelihood ratio, times the penalty of the shape
 * @param total all cases
 */
public record Zone(
    int[] places, Window window, int cases, double expected, double score, int total) {

  /** Cases per expected case inside over the same outside; infinite where all cases are inside. */
  public double relativeRisk() {
    return cases / expected / ((total - cases) / (total - expected));
  }

  /** Cases per expected case. */
  public double observedOverExpected() {
    return cases / expected;
  }
}
