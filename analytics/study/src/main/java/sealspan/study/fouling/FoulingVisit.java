package sealspan.study.fouling;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/**
 * The unit of everything about fouling: all routine as-found rounds with an exposure that were made
 * at one site on one day.
 *
 * @param day day
 * @param siteId site of that day; null where none is recorded: then the assembly stands for it
 * @param visitId the least of the ids of its visits; null where none is recorded
 * @param zoneId water zone that day; null where none is recorded
 * @param latitude WGS84 latitude of the site, degrees; null where unknown
 * @param longitude WGS84 longitude of the site, degrees; null where unknown
 * @param assemblyIds its assemblies, ordered
 * @param eventIds its rounds, in the order of the assemblies
 * @param type type of its assemblies, {@link #SEVERAL_TYPES}, or null where none is recorded
 * @param exposureDays sum of the days since each assembly last passed
 * @param outcome whether any of its rounds found a fouling failure
 * @param recordedAt when the log took in the last of its rounds; null where no row tells
 */
public record FoulingVisit(
    LocalDate day,
    String siteId,
    String visitId,
    String zoneId,
    Double latitude,
    Double longitude,
    List<String> assemblyIds,
    List<String> eventIds,
    String type,
    long exposureDays,
    FoulingFailure outcome,
    Instant recordedAt) {
  /** The type of a visit to assemblies of different types. */
  public static final String SEVERAL_TYPES = "SEVERAL";

  /** Number of rounds, at least 1. */
  public int rounds() {
    return eventIds.size();
  }

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
    return siteId == null ? "assembly " + assemblyIds.get(0) : siteId;
  }
}
