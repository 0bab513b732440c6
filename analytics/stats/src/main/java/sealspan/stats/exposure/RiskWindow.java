package sealspan.stats.exposure;

/**
 * Days counted from the day of an exposure, which is day 0.
 *
 * @param name name
 * @param firstDay first day, included; negative for days before the exposure
 * @param lastDay last day, included
 */
public record RiskWindow(String name, int firstDay, int lastDay) {
  public RiskWindow {
    if (firstDay > lastDay) {
      throw new IllegalArgumentException(
          "the window " + name + " ends on day " + lastDay + ", before its day " + firstDay);
    }
  }
}
