package sealspan.study.fouling;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sealspan.study.FitCut;
import sealspan.study.Members;
import sealspan.table.AssemblyRows;
import sealspan.table.FoulingFitRow;
import sealspan.table.FoulingRows;
import sealspan.table.TestRow;
import sealspan.table.ZoneRows;

/** From the rows of all assemblies and zones to what they tell of fouling; a pure function. */
public final class FoulingTables {
  /** Grows whenever the same input may give other figures. */
  public static final String CODE_VERSION = "2";

  private FoulingTables() {}

  /** An assembly's rows without those that the study of fouling does not read. */
  public static AssemblyRows needed(AssemblyRows rows) {
    return new AssemblyRows(
        rows.assemblyId(),
        0,
        rows.assembly(),
        rows.tests().stream()
            .filter(round -> "AS_FOUND".equals(round.phase()))
            .map(FoulingTables::read)
            .toList(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        null,
        List.of(),
        List.of(),
        null,
        List.of());
  }

  /** What is read of a round; the rest is mostly texts. */
  private static TestRow read(TestRow round) {
    return new TestRow(
        round.assemblyId(),
        null,
        null,
        null,
        round.day(),
        null,
        null,
        round.phase(),
        round.purpose(),
        null,
        null,
        null,
        null,
        round.type(),
        null,
        round.siteId(),
        round.zoneId(),
        round.ageDays(),
        null,
        round.outcome(),
        null,
        false,
        round.counted(),
        null,
        false,
        round.exposureDays(),
        round.failureClass(),
        null,
        null);
  }

  /**
   * What a cut tells of fouling.
   *
   * @param assemblies of all assemblies as of the cut at least the rows that are {@link #needed}
   * @param zones the rows of all water zones as of the cut, in any order
   * @param cut the cut
   */
  public static FoulingRows of(Members assemblies, List<ZoneRows> zones, FitCut cut) {
    List<ZoneRows> water = new ArrayList<>(zones);
    water.sort(Comparator.comparing(ZoneRows::zoneId));
    FoulingVisits visits = FoulingVisits.of(assemblies);
    FoulingFit fit = FoulingFit.of(visits.classified());
    FoulingScan scan =
        FoulingModel.of(fit.coefficients())
            .map(model -> FoulingScan.of(visits.classified(), model))
            .orElse(null);
    return new FoulingRows(
        "all",
        cut.revision(),
        fitRow(visits, fit, cut),
        fit.coefficients(),
        scan == null ? null : scan.row(),
        scan == null ? List.of() : scan.clusters(),
        scan == null ? List.of() : scan.members(),
        WaterEffects.of(assemblies, water));
  }

  private static FoulingFitRow fitRow(FoulingVisits visits, FoulingFit fit, FitCut cut) {
    List<FoulingVisit> all = visits.visits();
    int fouled = 0;
    int unclassified = 0;
    long days = 0;
    for (FoulingVisit visit : all) {
      fouled += visit.fouled() ? 1 : 0;
      unclassified += visit.outcome() == FoulingFailure.UNCLASSIFIED ? 1 : 0;
      days += visit.exposureDays();
    }
    return new FoulingFitRow(
        cut.id(),
        cut.offsets(),
        cut.newestRecordedAt(),
        CODE_VERSION,
        FoulingFailure.RULE,
        visits.rounds(),
        visits.failedRounds(),
        visits.foulingRounds(),
        visits.unclassifiedRounds(),
        all.size(),
        fouled,
        unclassified,
        all.isEmpty() ? null : all.get(0).day(),
        all.isEmpty() ? null : all.get(all.size() - 1).day(),
        days,
        fit.method(),
        fit.baseType(),
        fit.because());
  }
}
