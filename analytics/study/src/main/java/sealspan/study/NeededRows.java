package sealspan.study;

import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import sealspan.table.AssemblyRows;
import sealspan.table.ExposureRow;
import sealspan.table.ReadingRow;
import sealspan.table.RepairRow;
import sealspan.table.SealRow;
import sealspan.table.TestRow;

/**
 * Which of an assembly's rows the fit of a stratum reads, and what of each: most of the rest are
 * texts. Strata of one component read a small part.
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
    List<SealRow> seals = some(rows.seals(), seal -> own(seal.component())).toList();
    boolean replaced = seals.stream().anyMatch(SealPosition::replaced);
    boolean whole = component == null;
    return new AssemblyRows(
        rows.assemblyId(),
        0,
        rows.assembly(),
        whole || replaced ? rows.tests().stream().map(NeededRows::read).toList() : List.of(),
        readings
            ? some(rows.readings(), r -> r.run() != null || failed(r))
                .map(NeededRows::read)
                .toList()
            : List.of(),
        some(rows.exposures(), e -> exposed.equals(e.component())).map(this::read).toList(),
        replaced ? rows.repairs() : whole ? List.of() : some(rows.repairs(), this::works).toList(),
        seals,
        List.of(),
        List.of(),
        List.of(),
        null,
        some(rows.repairEpisodes(), episode -> own(episode.component())).toList(),
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

  /** What is read of a reading; its round where it failed, and may be a gradual failure. */
  private static ReadingRow read(ReadingRow reading) {
    return new ReadingRow(
        null,
        failed(reading) ? reading.eventId() : null,
        reading.day(),
        null,
        reading.component(),
        reading.measure(),
        null,
        null,
        null,
        reading.psi(),
        null,
        reading.result(),
        false,
        reading.run(),
        reading.limitPsi(),
        reading.gaugeErrorPsi(),
        reading.stepPsi(),
        reading.gaugePeriod());
  }

  private static boolean failed(ReadingRow reading) {
    return "FAILED".equals(reading.result());
  }

  /** What is read of an exposure; its round for whole assemblies alone. */
  private ExposureRow read(ExposureRow exposure) {
    return new ExposureRow(
        null,
        component == null ? exposure.eventId() : null,
        exposure.component(),
        exposure.fromDay(),
        exposure.toDay(),
        exposure.exposureDays(),
        0,
        exposure.failed(),
        exposure.failureClass(),
        null);
  }

  private boolean own(String of) {
    return component == null || component.equals(of);
  }

  private boolean works(RepairRow repair) {
    return own(repair.component()) || RatePriors.WHOLE.equals(repair.component());
  }

  private static <T> Stream<T> some(List<T> rows, Predicate<T> which) {
    return rows.stream().filter(which);
  }
}
