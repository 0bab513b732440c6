package sealspan.stats.ageing;

import java.util.Arrays;
import java.util.Comparator;

/**
 * What one unit went through since it was new: stretches of time that ended in a result, stretches
 * that nobody looked into, and repairs. Times are in a unit of the caller's. Consecutive passes are
 * kept as one, which changes no likelihood.
 */
public final class RepairedLife {
  static final byte PASSED = 0;
  static final byte FAILED = 1;
  static final byte FAILED_AT_END = 2;
  static final byte REPLACED = 3;

  /** Repair of the first kind; further kinds follow. */
  static final byte REPAIRED = 4;

  /** Kinds of repair that are told apart. */
  public static final int KINDS = 2;

  static final Comparator<RepairedLife> ORDER =
      Comparator.comparing((RepairedLife life) -> life.steps, Arrays::compare)
          .thenComparing(life -> life.from, Arrays::compare)
          .thenComparing(life -> life.to, Arrays::compare);

  final byte[] steps;

  /** Of a stretch, its start since the last repair; of a repair, nothing. */
  final double[] from;

  /** Of a stretch, its end since the last repair; of a repair, the time since the one before. */
  final double[] to;

  private RepairedLife(byte[] steps, double[] from, double[] to) {
    this.steps = steps;
    this.from = from;
    this.to = to;
  }

  /** A unit that is new. */
  public static Builder sinceNew() {
    return new Builder();
  }

  /** How often the unit was found failed. */
  public int failures() {
    int failures = 0;
    for (byte step : steps) {
      failures += step == FAILED || step == FAILED_AT_END ? 1 : 0;
    }
    return failures;
  }

  /** Collects a life in order of time. */
  public static final class Builder {
    private byte[] steps = new byte[8];
    private double[] from = new double[8];
    private double[] to = new double[8];
    private int size;
    private double now;

    private Builder() {}

    /** Time that nobody looked into: the unit ages, nothing is seen. */
    public Builder unseen(double time) {
      now += require(time);
      return this;
    }

    /** The unit held all that time; no time tells nothing. */
    public Builder passed(double time) {
      double before = now;
      now += require(time);
      boolean goesOn = size > 0 && steps[size - 1] == PASSED && to[size - 1] == before;
      if (goesOn) {
        to[size - 1] = now;
      } else if (now > before) {
        add(PASSED, before, now);
      }
      return this;
    }

    /** The unit was found failed after that time, and failed at some time in it. */
    public Builder failed(double time) {
      double before = now;
      now += requirePositive(time);
      add(FAILED, before, now);
      return this;
    }

    /** The unit failed at the very end of that time. */
    public Builder failedAtEnd(double time) {
      double before = now;
      now += requirePositive(time);
      add(FAILED_AT_END, before, now);
      return this;
    }

    /** A repair that leaves a share of the age; kind is 0 or 1. */
    public Builder repaired(int kind) {
      if (kind < 0 || kind >= KINDS) {
        throw new IllegalArgumentException("a repair is of kind 0 or 1, not " + kind);
      }
      add((byte) (REPAIRED + kind), 0, now);
      now = 0;
      return this;
    }

    /** The unit was replaced by a new one. */
    public Builder replaced() {
      add(REPLACED, 0, now);
      now = 0;
      return this;
    }

    /** The life so far. */
    public RepairedLife build() {
      return new RepairedLife(
          Arrays.copyOf(steps, size), Arrays.copyOf(from, size), Arrays.copyOf(to, size));
    }

    private void add(byte step, double start, double end) {
      if (size == steps.length) {
        steps = Arrays.copyOf(steps, 2 * size);
        from = Arrays.copyOf(from, 2 * size);
        to = Arrays.copyOf(to, 2 * size);
      }
      steps[size] = step;
      from[size] = start;
      to[size++] = end;
    }

    private static double require(double time) {
      if (!(time >= 0 && time < Double.POSITIVE_INFINITY)) {
        throw new IllegalArgumentException("a time is 0 or more and finite, but got " + time);
      }
      return time;
    }

    private static double requirePositive(double time) {
      if (require(time) == 0) {
        throw new IllegalArgumentException("a failure needs a time above 0 to have come in");
      }
      return time;
    }
  }
}
