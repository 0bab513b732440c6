package sealspan.study.practice;

/**
 * Random numbers for one purpose, from a generator keyed by what they are for. The generator is
 * SplitMix64 (Steele, Lea and Flood 2014, doi 10.1145/2660193.2660195), whose output function also
 * mixes the key. StrictMath keeps every value the same on every machine.
 */
final class Draws {
  private static final long STEP = 0x9E3779B97F4A7C15L;

  /** What a draw is for. The order is part of the key: add new purposes at the end. */
  enum Purpose {
    SITE,
    POSITION,
    UNIT,
    WEAR,
    FOULING,
    LEVEL,
    DRIFT,
    ROUTE,
    VISIT,
    ROUND,
    REPAIR,
    REPORT,
    COST,
    CREW,
    CERTIFICATE,
    GAUGE,
    ZONE,
    DISTURBANCE,
    SAMPLE,
    LAY_UP,
    ROUTED
  }

  private long state;

  private Draws(long state) {
    this.state = state;
  }

  /** The generator of one purpose for one thing, named by up to three numbers. */
  static Draws of(long seed, Purpose purpose, long a, long b, long c) {
    long key = mix(seed + STEP * (purpose.ordinal() + 1));
    key = mix(key + STEP * (a + 1));
    key = mix(key + STEP * (b + 1));
    return new Draws(mix(key + STEP * (c + 1)));
  }

  private static long mix(long value) {
    long z = (value ^ (value >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }

  private long next() {
    state += STEP;
    return mix(state);
  }

  /** Uniform on the open interval from 0 to 1. */
  double uniform() {
    return ((next() >>> 11) + 0.5) * 0x1.0p-53;
  }

  /** Uniform on the open interval from {@code low} to {@code high}. */
  double uniform(double low, double high) {
    return low + (high - low) * uniform();
  }

  /** A whole number from {@code low} to {@code high}, both included, each as likely. */
  int whole(int low, int high) {
    return low + (int) ((high - low + 1) * uniform());
  }

  /** True with the given probability; never for 0, always for 1. */
  boolean happens(double probability) {
    return uniform() < probability;
  }

  /** Exponential with mean 1. */
  double exponential() {
    return -StrictMath.log(uniform());
  }

  /** Normal with mean 0 and variance 1 (Box and Muller 1958). */
  double normal() {
    double radius = StrictMath.sqrt(2 * exponential());
    return radius * StrictMath.cos(2 * StrictMath.PI * uniform());
  }

  /** Gamma with mean 1 and the given coefficient of variation (Marsaglia and Tsang 2000). */
  double gammaOfMeanOne(double cv) {
    if (cv == 0) {
      return 1;
    }
    double shape = 1 / (cv * cv);
    double boost = shape < 1 ? StrictMath.pow(uniform(), 1 / shape) : 1;
    double d = (shape < 1 ? shape + 1 : shape) - 1.0 / 3;
    double c = 1 / StrictMath.sqrt(9 * d);
    while (true) {
      double x = normal();
      double v = (1 + c * x) * (1 + c * x) * (1 + c * x);
      if (v > 0 && StrictMath.log(uniform()) < 0.5 * x * x + d - d * v + d * StrictMath.log(v)) {
        return boost * d * v / shape;
      }
    }
  }

  /** The place of a drawn item when the shares of the items are given; they sum to 1. */
  int place(double... shares) {
    double left = uniform();
    for (int i = 0; i < shares.length - 1; i++) {
      left -= shares[i];
      if (left < 0) {
        return i;
      }
    }
    return shares.length - 1;
  }
}
