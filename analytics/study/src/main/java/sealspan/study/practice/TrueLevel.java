package sealspan.study.practice;

import java.time.LocalDate;
import sealspan.event.ComponentAt;
import sealspan.event.Means;

/** True level of a component after the last round of a day, if no shock lay on it. */
public record TrueLevel(
    @Means("assembly id") String assemblyId,
    @Means("component") ComponentAt component,
    @Means("day") LocalDate day,
    @Means("true level, psi") double psi) {}
