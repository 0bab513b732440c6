package sealspan.study.fouling;

import java.time.LocalDate;

/**
 * How a person wants to look for clusters of fouling.
 *
 * @param shape shape of the zones
 * @param pipes the pipes; null for every shape but {@link ZoneShape#PIPES}
 * @param pipeWithinM sites farther from the nearest open pipe are left out, metres
 * @param wholeTime only the whole time is looked at: where, whenever it was
 * @param permuted cases are held against their own times dealt out anew, not against the tests made
 * @param since first day of visits; null for no limit
 * @param until last day of visits; null for no limit
 * @param looks how often people mean to look in all; the 5 percent are shared out among the looks
 */
public record ExplorationChoice(
    ZoneShape shape,
    PipeLines pipes,
    double pipeWithinM,
    boolean wholeTime,
    boolean permuted,
    LocalDate since,
    LocalDate until,
    int looks) {
  /** More looks than this cannot be told apart by the replicates. */
  public static final int MOST_LOOKS = 50;

  /** Refuses, in words for people, what makes no sense. */
  public ExplorationChoice {
    if ((pipes != null) != (shape == ZoneShape.PIPES)) {
      throw new IllegalArgumentException(
          pipes == null
              ? "The shape pipes needs the pipes themselves: a GeoJSON file of lines."
              : "Pipes are read for the shape pipes only; choose it, or leave the file out.");
    }
    if (!(pipeWithinM > 0 && pipeWithinM <= 10_000)) {
      throw new IllegalArgumentException(
          "A site may be more than 0 and at most 10000 metres from its pipe, not "
              + pipeWithinM
              + ".");
    }
    if (wholeTime && permuted) {
      throw new IllegalArgumentException(
          "Dealing times out anew tells nothing where only the place is looked at. Look at place and"
              + " time, or hold the cases against the tests that were made.");
    }
    if (since != null && until != null && until.isBefore(since)) {
      throw new IllegalArgumentException(
          "No visit lies between "
              + since
              + " and "
              + until
              + ": the last day is before the first.");
    }
    if (looks < 1 || looks > MOST_LOOKS) {
      throw new IllegalArgumentException(
          "The number of looks is from 1 to " + MOST_LOOKS + ", not " + looks + ".");
    }
  }

  /** The p-value that a cluster must not exceed: 5 percent shared out among the looks. */
  public double level() {
    return FoulingScan.LEVEL / looks;
  }
}
