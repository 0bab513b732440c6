package sealspan.stats.scan;

/**
 * Random numbers by counter: number {@code i} of stream {@code s} under seed {@code k} is a fixed
 * function of the three, whatever was drawn before and in whichever thread. So a replicate is the
 * same however the replicates are ordered, batched or spread.
 *
 * <p>It is SplitMix64 (Steele, Lea and Flood 2014) read at a place instead of stepped: an odd
 * constant times the counter, added to a key, through the finaliser that Stafford calls variant 13.
 * The key of a stream is the finaliser applied twice, to seed and stream.
 */
public final class CounterRandom {
  private static final long STEP = 0x9E3779B97F4A7C15L;
  private static final double UNIT = 0x1.0p-53;

  private final long key;

  private CounterRandom(long key) {
    this.key = key;
  }

  /** The stream of a number under a seed. */
  public static CounterRandom of(long seed, long stream) {
    return new CounterRandom(mix(mix(seed + STEP) + STEP * (stream + 1)));
  }

  /** The 64 bits at a place of the stream. */
  public long bits(long counter) {
    return mix(key + STEP * (counter + 1));
  }

  /** The number at a place of the stream, uniform from 0 (in) to 1 (out), a multiple of 2^-53. */
  public double uniform(long counter) {
    return (bits(counter) >>> 11) * UNIT;
  }

  private static long mix(long z) {
    long a = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    long b = (a ^ (a >>> 27)) * 0x94D049BB133111EBL;
    return b ^ (b >>> 31);
  }
}
