package sealspan.event;

import java.util.List;

/** An inspection; never a test, and never part of a failure rate. */
public record InspectionPerformed(
    @Means("id of the assembly") String assemblyId,
    @Means("day and time") Moment when,
    @Means("visit and place in it") Visit visit,
    @Means("report number") String reportNumber,
    @Means("what was inspected") Kind kind,
    @Means("outcome") Outcome outcome,
    @Means("what was found, in words") List<String> findings,
    @Means("separation of an air gap") Quantity separation,
    @Means("inner diameter of the supply pipe of an air gap") Quantity supplyPipeDiameter,
    @Means("inspector id") String inspectorId)
    implements AssemblyEvent {

  /** What was inspected; forward flow and internal inspection are obligations of their own. */
  public enum Kind {
    VISUAL,
    AIR_GAP,
    FORWARD_FLOW,
    INTERNAL
  }

  /** Outcome of an inspection. */
  public enum Outcome {
    SATISFACTORY,
    DEFICIENT
  }

  public InspectionPerformed {
    findings = List.copyOf(findings);
  }

  @Override
  public Subject subject() {
    return Subject.assembly(assemblyId);
  }
}
