package sealspan.assembly;

import java.time.LocalDate;
import java.util.List;
import sealspan.event.InstallationCheck;
import sealspan.event.Moment;
import sealspan.event.Quantity;
import sealspan.event.Reading;
import sealspan.event.TestPerformed;
import sealspan.event.TestPerformed.CompensatingStep;
import sealspan.event.TestPerformed.Conduct;
import sealspan.event.TestPerformed.Discharge;
import sealspan.event.TestPerformed.IssuedVerdict;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.TestPerformed.Purpose;
import sealspan.event.TestPerformed.ShutoffState;
import sealspan.event.Visit;

/** A test report with its fields open, for tests. */
public final class Report {
  public String assemblyId = Story.ASSEMBLY;
  public Moment when;
  public Visit visit;
  public String number;
  public Phase phase;
  public Purpose purpose = Purpose.ROUTINE;
  public Conduct conduct = Conduct.COMPLETED;
  public String testerId;
  public LocalDate certificateValidUntil;
  public String gaugeId;
  public LocalDate gaugeCalibratedOn;
  public ShutoffState downstreamShutoff;
  public CompensatingStep compensatingStep;
  public String method;
  public String edition;
  public List<Reading> readings = List.of();
  public Reading confirmation;
  public Discharge reliefDischarge;
  public List<InstallationCheck> installationChecks = List.of();
  public Boolean flushedToPass;
  public String serialSeen;
  public Boolean signed;
  public IssuedVerdict issued;
  public Quantity linePressure;

  /** The event. */
  public TestPerformed event() {
    return new TestPerformed(
        assemblyId,
        when,
        null,
        visit,
        number,
        phase,
        purpose,
        conduct,
        testerId,
        null,
        certificateValidUntil,
        gaugeId,
        gaugeCalibratedOn,
        linePressure,
        null,
        downstreamShutoff,
        compensatingStep,
        method,
        edition,
        readings,
        confirmation,
        reliefDischarge,
        null,
        installationChecks,
        null,
        flushedToPass,
        serialSeen,
        signed,
        issued,
        null,
        List.of());
  }
}
