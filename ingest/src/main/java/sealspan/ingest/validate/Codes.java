package sealspan.ingest.validate;

import java.util.List;
import sealspan.event.Action;
import sealspan.event.AssemblyRemoved;
import sealspan.event.AssemblyType;
import sealspan.event.Cause;
import sealspan.event.FailureMode;
import sealspan.event.InspectionPerformed;
import sealspan.event.Mechanism;
import sealspan.event.Observation;
import sealspan.event.ReplacementReason;
import sealspan.event.ServiceStateChanged;
import sealspan.event.SiteDescribed;
import sealspan.event.TestPerformed;
import sealspan.event.VisitAttempted;
import sealspan.event.WaterDisturbed;
import sealspan.event.WaterSampled;

/** The code lists of the columns. */
public final class Codes {
  /** Answers to a question that is answered by yes or no. */
  enum Answer {
    YES,
    NO
  }

  static final CodeList<EventKind> EVENT = CodeList.of("event", EventKind.class);
  static final CodeList<AssemblyType> TYPE = CodeList.of("type", AssemblyType.class);
  static final CodeList<Answer> YES_NO = CodeList.of("yes_no", Answer.class);
  static final CodeList<Observation> READING = CodeList.of("reading", Observation.class);
  static final CodeList<Observation> TIGHTNESS = CodeList.of("tightness", Observation.class);
  static final CodeList<Observation> OPENING = CodeList.of("opening", Observation.class);
  static final CodeList<TestPerformed.Phase> PHASE =
      CodeList.of("phase", TestPerformed.Phase.class);
  static final CodeList<TestPerformed.Purpose> PURPOSE =
      CodeList.of("purpose", TestPerformed.Purpose.class);
  static final CodeList<TestPerformed.Conduct> CONDUCT =
      CodeList.of("conduct", TestPerformed.Conduct.class);
  static final CodeList<TestPerformed.FlowState> FLOW_STATE =
      CodeList.of("flow_state", TestPerformed.FlowState.class);
  static final CodeList<TestPerformed.ShutoffState> SHUTOFF =
      CodeList.of("shutoff", TestPerformed.ShutoffState.class);
  static final CodeList<TestPerformed.CompensatingStep> COMPENSATING_STEP =
      CodeList.of("compensating_step", TestPerformed.CompensatingStep.class);
  static final CodeList<TestPerformed.Discharge> DISCHARGE =
      CodeList.of("discharge", TestPerformed.Discharge.class);
  static final CodeList<TestPerformed.IssuedVerdict> VERDICT =
      CodeList.of("verdict", TestPerformed.IssuedVerdict.class);
  static final CodeList<SiteDescribed.HazardClass> HAZARD =
      CodeList.of("hazard", SiteDescribed.HazardClass.class);
  static final CodeList<SiteDescribed.Protection> PROTECTION =
      CodeList.of("protection", SiteDescribed.Protection.class);
  static final CodeList<SiteDescribed.WaterUse> USE =
      CodeList.of("use", SiteDescribed.WaterUse.class);
  static final CodeList<Action> ACTION = CodeList.of("action", Action.class);
  static final CodeList<FailureMode> MODE = CodeList.of("mode", FailureMode.class);
  static final CodeList<Mechanism> MECHANISM = CodeList.of("mechanism", Mechanism.class);
  static final CodeList<Cause> CAUSE = CodeList.of("cause", Cause.class);
  static final CodeList<ReplacementReason> REASON = CodeList.of("reason", ReplacementReason.class);
  static final CodeList<VisitAttempted.Reason> ATTEMPT_REASON =
      CodeList.of("attempt_reason", VisitAttempted.Reason.class);
  static final CodeList<InspectionPerformed.Kind> INSPECTION_KIND =
      CodeList.of("inspection_kind", InspectionPerformed.Kind.class);
  static final CodeList<InspectionPerformed.Outcome> INSPECTION_OUTCOME =
      CodeList.of("inspection_outcome", InspectionPerformed.Outcome.class);
  static final CodeList<ServiceStateChanged.State> SERVICE_STATE =
      CodeList.of("service_state", ServiceStateChanged.State.class);
  static final CodeList<AssemblyRemoved.Reason> REMOVAL_REASON =
      CodeList.of("removal_reason", AssemblyRemoved.Reason.class);
  static final CodeList<WaterDisturbed.Kind> DISTURBANCE =
      CodeList.of("disturbance", WaterDisturbed.Kind.class);
  static final CodeList<WaterSampled.Detection> DETECTION =
      CodeList.of("detection", WaterSampled.Detection.class);

  private static final List<CodeList<?>> ALL =
      List.of(
          EVENT,
          TYPE,
          YES_NO,
          READING,
          TIGHTNESS,
          OPENING,
          PHASE,
          PURPOSE,
          CONDUCT,
          FLOW_STATE,
          SHUTOFF,
          COMPENSATING_STEP,
          DISCHARGE,
          VERDICT,
          HAZARD,
          PROTECTION,
          USE,
          ACTION,
          MODE,
          MECHANISM,
          CAUSE,
          REASON,
          ATTEMPT_REASON,
          INSPECTION_KIND,
          INSPECTION_OUTCOME,
          SERVICE_STATE,
          REMOVAL_REASON,
          DISTURBANCE,
          DETECTION);

  private Codes() {}

  /** All code lists. */
  public static List<CodeList<?>> all() {
    return ALL;
  }
}
