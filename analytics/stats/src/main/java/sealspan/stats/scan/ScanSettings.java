package sealspan.stats.scan;

/**
 * How a scan is made.
 *
 * @param replicates Monte Carlo replicates, at least 1
 * @param seed seed of the replicates
 * @param fewestExpected zones that expect fewer cases are not looked at
 * @param mostClusters most clusters to look for
 * @param largestP clusters are looked for until one has a larger p-value; that one is given too
 */
public record ScanSettings(
    int replicates, long seed, double fewestExpected, int mostClusters, double largestP) {
  /** 999 replicates, at least one expected case, ten clusters, until p exceeds 0.05. */
  public static ScanSettings usual(long seed) {
    return new ScanSettings(999, seed, 1, 10, 0.05);
  }
}
