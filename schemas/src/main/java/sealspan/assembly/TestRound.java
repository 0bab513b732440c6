package sealspan.assembly;

import java.time.LocalDate;
import java.util.List;
import sealspan.event.AssemblyType;
import sealspan.event.ComponentAt;
import sealspan.event.TestPerformed;
import sealspan.event.TestPerformed.Phase;

/**
 * A test round with what the history makes of it.
 *
 * @param source the event
 * @param test the report that holds
 * @param visitId the visit; where none was recorded, the day
 * @param phase as found or as left; where not recorded, the first round of a visit without an
 *     earlier repair is as found
 * @param place the place as of the day
 * @param type the type as of the day; null where not recorded
 * @param sizeInch nominal size as entered; null where not recorded
 * @param ageDays days since installation; null where unknown
 * @param verdict the verdict as computed
 * @param outcome how the round ended
 * @param compliance what fails compliance: installation, gauge, certificate
 * @param counting whether it enters rates
 * @param gaugeCalibratedOn day of the gauge's last calibration known by then; null for none
 */
public record TestRound(
    StandingEvent source,
    TestPerformed test,
    String visitId,
    Phase phase,
    Place place,
    AssemblyType type,
    String sizeInch,
    Integer ageDays,
    Verdict verdict,
    Outcome outcome,
    List<Finding> compliance,
    Counting counting,
    LocalDate gaugeCalibratedOn) {

  /** Whether the report meets the compliance checks. */
  public boolean compliant() {
    return compliance.isEmpty() && verdict.installation() != Result.FAILED;
  }

  /** The result of a component, or of the assembly for {@code whole}; UNKNOWN where not known. */
  public Result result(ComponentAt at) {
    if (at.component() == sealspan.event.Component.WHOLE) {
      return verdict.performance();
    }
    ComponentResult component = verdict.of(at);
    return component == null ? Result.UNKNOWN : component.result();
  }

  /** What it says of the state in which a component, or the assembly, was left. */
  public Result leftAs(ComponentAt at) {
    if (at.component() == sealspan.event.Component.WHOLE) {
      return verdict.leftAs();
    }
    ComponentResult component = verdict.of(at);
    return component == null ? Result.UNKNOWN : component.leftAs();
  }
}
