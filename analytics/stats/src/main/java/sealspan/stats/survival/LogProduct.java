package sealspan.stats.survival;

/**
 * A sum of logarithms of numbers in (0, 1], taken as one logarithm of many products: logarithms are
 * most of the cost of a likelihood.
 */
final class LogProduct {
  private static final double SMALL = 1e-150;

  private double sum;
  private double product = 1;

  /** Adds count x log(number); a number of 0 makes the sum negative infinite. */
  void add(double count, double number) {
    if (count == 1 && number > SMALL) {
      product *= number;
      if (product < SMALL) {
        sum += StrictMath.log(product);
        product = 1;
      }
    } else {
      sum += count * StrictMath.log(number);
    }
  }

  double value() {
    return sum + StrictMath.log(product);
  }
}
