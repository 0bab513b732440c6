package sealspan.stats.ageing;

/** What a repair leaves of the age (Kijima 1989, J. Appl. Prob. 26). */
public enum VirtualAge {
  /** A share of what came on since the last repair; what was left then stays for good. */
  KIJIMA_I,
  /** A share of the whole age. */
  KIJIMA_II
}
