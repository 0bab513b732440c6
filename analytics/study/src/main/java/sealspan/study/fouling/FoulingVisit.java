package sealspan.study.fouling;

import java.time.LocalDate;

/**
 * The unit of everything about fouling: all routine as-found rounds with an exposure that were made
 * at one site on one day.
 *
 * @param day day
 * @param siteId site of that day; null where none is recorded: then the assembly stands for it
 * @param assemblyId the first of its assemblies by id
 * @param zoneId water zone that day; null where none is recorded
 * @param latitude WGS84 latitude of the site, degrees; null where unknown
 * @param longitude WGS84 longitude of the site, degrees; null where unknown
 * @param type type of its assemblies, {@link #SEVERAL_TYPES}, or null where none is recorded
 * @param rounds number of its rounds, at least 1
 * @param exposureDays sum of the days since each assembly last passed
 * @param outcome whether any of its rounds found a fouling failure
 */
public record FoulingVisit(
    LocalDate day,
    String siteId,
    String assemblyId,
    String zoneId,
    Double latitude,
    Double longitude,
    String type,
    int rounds,
    long exposureDays,
    FoulingFailure outcome) {
  /** The type of a visit to assemblies of different types. */
  public static final String SEVERAL_TYPES = "SEVERAL";

  /** Whether a fouling failure was found. */
  public boolean fouled() {
    return outcome == FoulingFailure.FOULED;
  }

  /** Whether it is known where it was. */
  public boolean hasPlace() {
    return latitude != null && longitude != null;
  }

  /** The site, or the assembly that stands for it. */
  public String place() {
    return siteId == null ? "assembly " + assemblyId : siteId;
  }
}
