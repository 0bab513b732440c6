package sealspan.event;

import java.util.List;

/** What was done to an assembly in one repair block of a visit. */
public record RepairPerformed(
    @Means("id of the assembly") String assemblyId,
    @Means("day and time") Moment when,
    @Means("visit and place in it") Visit visit,
    @Means("report number") String reportNumber,
    @Means("what was done, by component") List<RepairItem> items,
    @Means("ids of the crew") List<String> crewIds,
    @Means("working time, minutes") Integer workMinutes,
    @Means("whether the work is under warranty") Boolean warranty,
    @Means("remarks; no personal data") String remarks)
    implements AssemblyEvent {

  public RepairPerformed {
    items = List.copyOf(items);
    crewIds = List.copyOf(crewIds);
  }

  @Override
  public Subject subject() {
    return Subject.assembly(assemblyId);
  }
}
