package sealspan.study.practice;

import java.util.List;
import sealspan.event.Means;

/** What is true of one position, beside its events. */
public record PositionTruth(
    @Means("position id") String positionId,
    @Means("zone id") String zoneId,
    @Means("its assemblies within the record, one after the other") List<TrueUnit> units,
    @Means("failures that a visit of the record came upon") List<TrueFailure> failures,
    @Means("actions on seals within the record") List<TrueAction> actions,
    @Means("levels of what is read, at the rounds of the record") List<TrueLevel> levels) {

  /** One assembly. */
  public record TrueUnit(
      @Means("assembly id") String assemblyId,
      @Means("factor of its hazards; mean 1 over assemblies") double frailty,
      @Means("true day of installation, days since 1970-01-01") int installedDay) {}

  public PositionTruth {
    units = List.copyOf(units);
    failures = List.copyOf(failures);
    actions = List.copyOf(actions);
    levels = List.copyOf(levels);
  }
}
