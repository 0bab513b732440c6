package sealspan.study.practice;

import sealspan.event.Means;

/**
 * How grit gets on seats: at a constant rate, raised for some days after a main break near by and
 * after flushing of the zone. Where several hold, the highest ratio counts, not their product.
 */
public record TrueFouling(
    @Means("foulings of one component a year, without any water event") double perYear,
    @Means("coefficient of variation of the zone factor of that rate") double zoneCv,
    @Means("foulings that clear by themselves, a year of being fouled") double clearsPerYear,
    @Means("main breaks a year and zone") double breaksPerYear,
    @Means("ratio of the rate after a main break") double breakRatio,
    @Means("days after a main break with the raised rate") int breakDays,
    @Means("distance up to which a main break raises the rate, metres") double breakRadiusM,
    @Means("flushings a year and zone") double flushingsPerYear,
    @Means("ratio of the rate after flushing of the zone") double flushingRatio,
    @Means("days after flushing with the raised rate") int flushingDays) {

  /** Fouling with main breaks and flushing. */
  public static TrueFouling usual() {
    return new TrueFouling(0.006, 0.3, 0, 1.5, 6, 90, 900, 0.7, 2, 30);
  }

  /** No fouling and no water events. */
  public static TrueFouling none() {
    return new TrueFouling(0, 0, 0, 0, 1, 0, 0, 0, 1, 0);
  }
}
