package sealspan.table;

import java.time.LocalDate;
import sealspan.event.Means;

/** The true level of one component, as its readings since the last action tell. */
public record LevelRow(
    @Means("assembly id") String assemblyId,
    @Means("component") String component,
    @Means("what is measured") String measure,
    @Means("day of the last reading") LocalDate day,
    @Means("readings since the last action on it") int readings,
    @Means("last reading, psi") double readPsi,
    @Means("least value that passes, psi") double limitPsi,
    @Means("true level on that day, psi; none: no fit yet") Double levelPsi,
    @Means("lower end of its 95 % interval") Double levelLowerPsi,
    @Means("upper end of its 95 % interval") Double levelUpperPsi,
    @Means("drift of this unit, psi a year, drawn towards its type") Double driftPerYear,
    @Means("lower end of its 95 % interval") Double driftLowerPerYear,
    @Means("upper end of its 95 % interval") Double driftUpperPerYear,
    @Means("probability that the reading is below the limit when the next test is due")
        Double probabilityReadingBelow,
    @Means("probability that the true level is below the limit then") Double probabilityLevelBelow,
    @Means("stratum whose drift was used; none: no fit yet") String stratum,
    @Means("what the data cannot tell, in words") String note) {}
