package sealspan.table;

import java.time.LocalDate;
import sealspan.event.Means;

/**
 * One component that had failed as found and was then worked on: what was known before, what was
 * decided first, and how the next routine test found it.
 */
public record RepairEpisodeRow(
    @Means("assembly id") String assemblyId,
    @Means("visit id; the day where none was recorded") String visitId,
    @Means("day of the work") LocalDate day,
    @Means("component") String component,
    @Means("assembly type that day") String type,
    @Means("nominal size, inches, as entered") String sizeInch,
    @Means("water zone that day") String zoneId,
    @Means("CLEANED or SEAL_RENEWED: what was done first; none: neither of the two")
        String decision,
    @Means("FOULING, DAMAGE, NOTHING_FOUND or NOT_KNOWN: what was found on opening") String found,
    @Means("lowest failed reading as a share of its limit; none: no number was read")
        Double readingShare,
    @Means("days since installation, where known") Integer ageDays,
    @Means("days since the seal was new, where known") Integer sealAgeDays,
    @Means("days since the last work on the component, or since installation, where known")
        Integer sinceActionDays,
    @Means("failures of the component found before, on this record") int failuresBefore,
    @Means("cleanings of this seal before, on this record") int cleaningsBefore,
    @Means("work on the component before: NONE, CLEANED, SEAL_RENEWED or OTHER")
        String actionBefore,
    @Means("result of the component in the retest of the same visit") String retestResult,
    @Means("whether the seal was renewed in the same visit, at first or later")
        boolean sealRenewedInVisit,
    @Means("day of the next routine as-found result of the component") LocalDate nextOn,
    @Means("days from the last pass of the visit to that day") Integer exposureDays,
    @Means("whether the component failed there") Boolean failedNext,
    @Means("whether a component that had held and was not touched failed there")
        Boolean untouchedFailedNext,
    @Means("why it is not compared; none: it is") String leftOutBecause) {}
