package sealspan.study;

import java.util.List;
import java.util.function.Predicate;
import sealspan.table.AssemblyRows;
import sealspan.table.RepairRow;
import sealspan.table.SealRow;
import sealspan.table.TestRow;

/**
 * Which of an assembly's rows the fit of a stratum reads: about a third of them by size, and a
 * tenth for strata of one component.
 *
 * @param component the component; null for strata of whole assemblies
 * @param readings whether it reads single readings: the drifts of one type do
 */
public record NeededRows(String component, boolean readings) {

  /** What the fit of one of {@link Fits#strataOf} reads. */
  public static NeededRows of(String stratum) {
    String component = Fits.component(stratum);
    return new NeededRows(component, component == null && !stratum.equals(Fits.ALL));
  }

  /** The part of an assembly's rows. */
  public AssemblyRows of(AssemblyRows rows) {
    String exposed = component == null ? RatePriors.WHOLE : component;
    // Replacements are dated by the visit before, of whatever kind: see ReplacementDays.
    List<SealRow> seals = some(rows.seals(), seal -> own(seal.component()));
    boolean replaced = seals.stream().anyMatch(SealPosition::replaced);
    boolean whole = component == null;
    return new AssemblyRows(
        rows.assemblyId(),
        0,
        rows.assembly(),
        whole || replaced ? rows.tests().stream().map(NeededRows::read).toList() : List.of(),
        readings ? some(rows.readings(), reading -> reading.run() != null) : List.of(),
        some(rows.exposures(), exposure -> exposed.equals(exposure.component())),
        replaced ? rows.repairs() : whole ? List.of() : some(rows.repairs(), this::works),
        seals,
        List.of(),
        List.of(),
        List.of(),
        null,
        some(rows.repairEpisodes(), episode -> own(episode.component())),
        List.of(),
        null,
        List.of());
  }

  /** What is read of a round: rows of rounds are the largest part of all, and mostly texts. */
  private static TestRow read(TestRow round) {
    return new TestRow(
        null,
        round.eventId(),
        null,
        null,
        round.day(),
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        round.type(),
        round.sizeInch(),
        null,
        round.zoneId(),
        round.ageDays(),
        null,
        null,
        null,
        false,
        false,
        null,
        round.compliant(),
        null,
        null,
        null,
        null);
  }

  private boolean own(String of) {
    return component == null || component.equals(of);
  }

  private boolean works(RepairRow repair) {
    return own(repair.component()) || RatePriors.WHOLE.equals(repair.component());
  }

  private static <T> List<T> some(List<T> rows, Predicate<T> which) {
    return rows.stream().filter(which).toList();
  }
}
