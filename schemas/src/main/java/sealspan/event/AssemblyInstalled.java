package sealspan.event;

import java.time.LocalDate;

/**
 * One physical unit put in at a position, or known to stand there. The same unit may be installed
 * more than once.
 */
public record AssemblyInstalled(
    @Means("id of the assembly: one physical unit") String assemblyId,
    @Means("install day where known, else the day since when it is known to stand there")
        Moment when,
    @Means("whether the day is that of installation, or only the start of the record")
        DayMeaning dayMeaning,
    @Means("site (premises) id") String siteId,
    @Means("position in the pipework that it occupies") String positionId,
    @Means("assembly that it replaces at the position") String replacesAssemblyId,
    @Means("assembly that it is part of, where tracked apart") String parentAssemblyId,
    @Means("installation whose parallel lines include this one") String parallelInstallationId,
    @Means("mainlines in parallel inside this assembly; none: one") Integer mainlineCount,
    @Means("type") AssemblyType type,
    @Means("maker") String maker,
    @Means("model") String model,
    @Means("serial of the assembly or mainline") String serial,
    @Means("serial of the bypass of a detector assembly") String bypassSerial,
    @Means("nominal size, inches, decimal text") String sizeInch,
    @Means("orientation as the form names it") String orientation,
    @Means("day of manufacture") LocalDate manufacturedOn,
    @Means("from when it has been in service, where later than installation")
        LocalDate inServiceSince,
    @Means("whether it was on the approved list when installed") Boolean approved)
    implements AssemblyEvent {

  /** What the day of the event is. */
  public enum DayMeaning {
    /** The unit was installed that day: age 0. */
    INSTALLED,
    /** The record begins that day; the age of the unit and its seals is unknown. */
    RECORD_BEGINS
  }

  @Override
  public Subject subject() {
    return Subject.assembly(assemblyId);
  }
}
