package sealspan.study;

import java.util.Collection;
import java.util.Map;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.event.LoggedEvent;
import sealspan.table.AssemblyRows;
import sealspan.table.RatePriorRow;

/** From the events of one assembly to everything that the tables say of it; a pure function. */
public final class AssemblyTables {
  private AssemblyTables() {}

  /**
   * The rows of one assembly.
   *
   * @param assemblyId the assembly
   * @param events its own events and those of the subjects it refers to, in any order, with any
   *     repetition
   * @param criteria the limits in force
   * @param priors the last fitted priors of failure rates, by stratum; may be empty
   * @param revision revision that the bundle gets
   */
  public static AssemblyRows of(
      String assemblyId,
      Collection<LoggedEvent> events,
      AcceptanceCriteria criteria,
      Map<String, RatePriorRow> priors,
      long revision) {
    throw new UnsupportedOperationException();
  }
}
