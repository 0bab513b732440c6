package sealspan.event;

import java.time.LocalDate;
import java.util.List;

/** One test round of an assembly, as found or as left, as the report gives it. */
public record TestPerformed(
    @Means("id of the assembly") String assemblyId,
    @Means("day and time of the round") Moment when,
    @Means("end of the round, minutes since local midnight") Integer endMinuteOfDay,
    @Means("visit and place in it") Visit visit,
    @Means("report number") String reportNumber,
    @Means("as found (before any repair or flushing) or as left") Phase phase,
    @Means("why the round was made") Purpose purpose,
    @Means("whether the round was carried through") Conduct conduct,
    @Means("tester id") String testerId,
    @Means("certificate number on the report") String certificateNumber,
    @Means("last day on which the certificate on the report is valid")
        LocalDate certificateValidUntil,
    @Means("gauge id or serial") String gaugeId,
    @Means("day of the gauge's last calibration on the report") LocalDate gaugeCalibratedOn,
    @Means("static inlet pressure") Quantity linePressure,
    @Means("flow condition during the round") FlowState flowState,
    @Means("whether the downstream shutoff held") ShutoffState downstreamShutoff,
    @Means("step taken because the downstream shutoff leaked") CompensatingStep compensatingStep,
    @Means("test method, such as DIRECTION_OF_FLOW") String method,
    @Means("edition of the procedure") String procedureEdition,
    @Means("readings and observations") List<Reading> readings,
    @Means("confirmation reading, where one was taken") Reading confirmation,
    @Means("discharge of the relief valve outside the test") Discharge reliefDischarge,
    @Means("bypass meter reading, as entered") String bypassMeterReading,
    @Means("installation and compliance checks") List<InstallationCheck> installationChecks,
    @Means("water temperature") Quantity waterTemperature,
    @Means("whether it passed only after flushing") Boolean flushedToPass,
    @Means("serial seen on the unit") String serialSeen,
    @Means("whether the tester signed") Boolean signedByTester,
    @Means("verdict written on the report") IssuedVerdict verdictIssued,
    @Means("remarks; no personal data") String remarks,
    @Means("SHA-256 of attachments, hex") List<String> attachmentHashes)
    implements AssemblyEvent {

  /** When in the visit the round was made. */
  public enum Phase {
    AS_FOUND,
    AS_LEFT
  }

  /** Why a round was made; only ROUTINE as-found rounds enter failure rates. */
  public enum Purpose {
    ROUTINE,
    INSTALLATION,
    AFTER_REPAIR,
    REPLACEMENT,
    RELOCATION,
    RETURN_TO_SERVICE,
    COMPLAINT,
    INCIDENT,
    VISIBLE_DISCHARGE,
    OTHER
  }

  /** Whether the round was carried through. */
  public enum Conduct {
    COMPLETED,
    /** The procedure ended at the first deficiency: later components are unknown. */
    STOPPED_AT_DEFICIENCY,
    /** The assembly could not be tested: submerged, cocks missing, no isolation. */
    NOT_TESTABLE
  }

  /** Flow condition during a round. */
  public enum FlowState {
    NO_FLOW,
    FLOW
  }

  /** Whether a shutoff closed tight. */
  public enum ShutoffState {
    TIGHT,
    LEAKED
  }

  /** How a leaking downstream shutoff was compensated. */
  public enum CompensatingStep {
    NONE,
    OTHER_VALVE_CLOSED,
    TEMPORARY_BYPASS_HOSE
  }

  /** Discharge seen at a relief valve. */
  public enum Discharge {
    NONE,
    INTERMITTENT,
    CONTINUOUS
  }

  /** Verdict as written on the report. */
  public enum IssuedVerdict {
    PASSED,
    FAILED
  }

  public TestPerformed {
    readings = List.copyOf(readings);
    installationChecks = List.copyOf(installationChecks);
    attachmentHashes = List.copyOf(attachmentHashes);
  }

  @Override
  public Subject subject() {
    return Subject.assembly(assemblyId);
  }
}
