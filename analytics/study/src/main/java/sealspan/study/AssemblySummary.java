package sealspan.study;

import java.time.LocalDate;
import sealspan.assembly.AssemblyHistory;
import sealspan.assembly.Counting;
import sealspan.assembly.Outcome;
import sealspan.assembly.Place;
import sealspan.assembly.Result;
import sealspan.assembly.SealInterval;
import sealspan.assembly.TestRound;
import sealspan.event.AssemblyInstalled;
import sealspan.event.TestPerformed.Phase;
import sealspan.table.AssemblyRow;

/** The row of an assembly, with the totals of its history. */
final class AssemblySummary {
  private AssemblySummary() {}

  static AssemblyRow of(AssemblyHistory history) {
    int counted = 0;
    int failures = 0;
    int notCounted = 0;
    TestRound last = null;
    LocalDate lastPassOn = null;
    for (TestRound round : history.rounds()) {
      if (round.counting() == Counting.COUNTED) {
        counted++;
        failures += round.verdict().performance() == Result.FAILED ? 1 : 0;
      } else if (round.phase() == Phase.AS_FOUND) {
        notCounted++;
      }
      if (round.outcome() == Outcome.PASSED) {
        lastPassOn = round.test().when().day();
      }
      last = round;
    }
    ExposureTotals totals = ExposureTotals.of(history);
    int replacements = 0;
    for (SealInterval seal : history.seals()) {
      replacements += seal.end() == SealInterval.End.REPLACED ? 1 : 0;
    }
    AssemblyInstalled unit = history.installation();
    Place place = history.place();
    return new AssemblyRow(
        history.assemblyId(),
        place.siteId(),
        place.siteLabel(),
        place.positionId(),
        place.zoneId(),
        place.jurisdiction(),
        Text.of(place.hazard()),
        Text.of(place.protection()),
        Text.of(place.use()),
        place.ownerId(),
        place.latitude(),
        place.longitude(),
        Text.of(history.type()),
        history.sizeInch(),
        unit == null ? null : unit.maker(),
        unit == null ? null : unit.model(),
        unit == null ? null : unit.serial(),
        history.installedOn(),
        history.recordBegins(),
        history.service().removedOn(),
        history.service().state().name(),
        unit == null ? null : unit.replacesAssemblyId(),
        last == null ? null : last.test().when().day(),
        last == null ? null : last.outcome().name(),
        lastPassOn,
        counted,
        failures,
        totals.tests(),
        totals.failures(),
        totals.days(),
        notCounted,
        replacements,
        history.events().size(),
        history.duplicatesIgnored(),
        history.lastRecordedAt());
  }
}
