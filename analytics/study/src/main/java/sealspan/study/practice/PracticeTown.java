package sealspan.study.practice;

import java.time.LocalDate;
import java.util.List;
import sealspan.event.Means;
import sealspan.event.WaterDisturbed;

/**
 * The invented town: a grid of square water zones in open sea, where no town is.
 *
 * @param injected disturbances of the water beside those that come by chance
 */
public record PracticeTown(
    @Means("source that the events name") String source,
    @Means("WGS84 latitude of the south-west corner, degrees") double latitude,
    @Means("WGS84 longitude of that corner, degrees") double longitude,
    @Means("IANA time zone") String timeZone,
    @Means("jurisdiction; none: not recorded") String jurisdiction,
    @Means("water zones") int zones,
    @Means("side of a zone, metres") double zoneSideM,
    @Means("positions that one tester looks after; a multiple of 16") int positionsPerTester,
    @Means("disturbances beside those by chance") List<Injected> injected) {

  /**
   * A disturbance at a chosen place and day.
   *
   * @param zone number of the zone, from 0
   * @param day first and last day
   * @param kind MAIN_BREAK acts near by, FLUSHING in the whole zone, others not at all
   * @param eastM metres east of the south-west corner of the town
   * @param northM metres north of that corner
   */
  public record Injected(
      int zone, LocalDate day, WaterDisturbed.Kind kind, double eastM, double northM) {}

  public PracticeTown {
    injected = List.copyOf(injected);
  }

  /** Twelve zones in the North Pacific, far from any land. */
  public static PracticeTown usual() {
    return new PracticeTown("practice", 37.0, -140.0, "Etc/GMT+9", null, 12, 3000, 1200, List.of());
  }

  /** The same town with chosen disturbances. */
  public PracticeTown withInjected(List<Injected> disturbances) {
    return new PracticeTown(
        source,
        latitude,
        longitude,
        timeZone,
        jurisdiction,
        zones,
        zoneSideM,
        positionsPerTester,
        disturbances);
  }
}
