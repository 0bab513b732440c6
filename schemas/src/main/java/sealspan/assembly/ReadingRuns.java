package sealspan.assembly;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Map;
import sealspan.event.Action;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyInstalled.DayMeaning;
import sealspan.event.AssemblyRemoved;
import sealspan.event.ComponentAt;
import sealspan.event.Measure;
import sealspan.event.Quantity;
import sealspan.event.Reading;
import sealspan.event.RepairItem;
import sealspan.event.RepairPerformed;
import sealspan.event.TestPerformed.Phase;

/**
 * The readings of a history that tell how components drift: numbers held against a least number,
 * and readings of such a component that gave none (it leaked, it did not open). A run of them ends
 * where somebody acts on the component, where the unit is put in or taken out, and with a failed
 * reading: what comes after may be another level. Readings of no use (the shutoff leaked) and
 * limits that are only advised or derived are passed over.
 */
public final class ReadingRuns {
  private final AcceptanceCriteria criteria;
  private final Map<Spot, RunReading> bySpot = new HashMap<>();
  private final Map<Series, Run> runs = new HashMap<>();

  private record Spot(String eventId, int index) {}

  private record Series(ComponentAt at, Measure measure) {}

  private static final class Run {
    private int number;
    private boolean open;
  }

  private ReadingRuns(AcceptanceCriteria criteria) {
    this.criteria = criteria;
  }

  /**
   * Folds a history.
   *
   * @param history the history
   * @param criteria the limits in force, which tell the error of gauges
   */
  public static ReadingRuns of(AssemblyHistory history, AcceptanceCriteria criteria) {
    ReadingRuns fold = new ReadingRuns(criteria);
    Map<StandingEvent, TestRound> rounds = new IdentityHashMap<>();
    history.rounds().forEach(round -> rounds.put(round.source(), round));
    for (StandingEvent event : history.events()) {
      TestRound round = rounds.get(event);
      if (round != null) {
        fold.round(round);
      } else if (event.event() instanceof RepairPerformed repair) {
        fold.repair(repair);
      } else if (event.event() instanceof AssemblyRemoved
          || event.event() instanceof AssemblyInstalled installed
              && installed.dayMeaning() == DayMeaning.INSTALLED) {
        fold.runs.values().forEach(run -> run.open = false);
      }
    }
    return fold;
  }

  /**
   * What a reading tells of a drift; null where it tells nothing.
   *
   * @param round the round
   * @param index place of the reading in the report, from 0
   */
  public RunReading of(TestRound round, int index) {
    return bySpot.get(new Spot(round.source().id(), index));
  }

  /**
   * Number of the run that still goes on; null where none does.
   *
   * @param component the component in its text form
   * @param measure name of what is measured
   */
  public Integer openRun(String component, String measure) {
    for (Map.Entry<Series, Run> entry : runs.entrySet()) {
      Series series = entry.getKey();
      if (series.at().text().equals(component) && series.measure().name().equals(measure)) {
        return entry.getValue().open ? entry.getValue().number : null;
      }
    }
    return null;
  }

  private void round(TestRound round) {
    boolean flushed =
        round.phase() == Phase.AS_FOUND && Boolean.TRUE.equals(round.test().flushedToPass());
    if (flushed) {
      runs.values().forEach(run -> run.open = false);
    }
    for (int i = 0; i < round.verdict().readings().size(); i++) {
      JudgedReading judged = round.verdict().readings().get(i);
      Double limit = limitPsi(judged);
      if (limit != null) {
        bySpot.put(new Spot(round.source().id(), i), next(round, judged, limit));
      }
    }
  }

  private RunReading next(TestRound round, JudgedReading judged, double limitPsi) {
    Reading reading = judged.reading();
    Run run = runs.computeIfAbsent(new Series(reading.at(), reading.measure()), s -> new Run());
    if (!run.open) {
      run.number++;
      run.open = true;
    }
    RunReading next =
        new RunReading(
            reading,
            reading.at(),
            reading.measure(),
            run.number,
            limitPsi,
            gaugeErrorPsi(round),
            stepPsi(reading),
            gaugePeriod(round));
    run.open = judged.result() == Result.PASSED;
    return next;
  }

  private void repair(RepairPerformed repair) {
    for (RepairItem item : repair.items()) {
      if (item.action() != null && item.action() != Action.NONE) {
        runs.forEach((series, run) -> run.open &= !ActedOn.touches(item, series.at()));
      }
    }
  }

  /** The least value that passes; null where the reading is held against none. */
  private static Double limitPsi(JudgedReading judged) {
    Criterion limit = judged.criterion();
    boolean decided = judged.result() == Result.PASSED || judged.result() == Result.FAILED;
    if (limit == null || !decided || limit.derived() != null || limit.limit() == null) {
      return null;
    }
    boolean least =
        limit.comparator() == Criterion.Comparator.AT_LEAST
            || limit.comparator() == Criterion.Comparator.MORE_THAN;
    return least
        ? ReadingUnits.psi(new Quantity(limit.limit().toPlainString(), limit.unit()))
        : null;
  }

  private Double gaugeErrorPsi(TestRound round) {
    ProgrammeRule accuracy =
        criteria.gaugeRule(
            ProgrammeRule.Subject.GAUGE_ACCURACY,
            round.place().jurisdiction(),
            round.test().when().day());
    return accuracy == null
        ? null
        : ReadingUnits.psi(new Quantity(accuracy.amount().toPlainString(), accuracy.unit()));
  }

  /** The step as recorded, or that of the last decimal written. */
  private static double stepPsi(Reading reading) {
    Quantity value = reading.value();
    if (value == null) {
      return 0;
    }
    String step =
        reading.resolution() != null
            ? reading.resolution()
            : BigDecimal.ONE.movePointLeft(Math.max(0, value.value().scale())).toPlainString();
    Double psi = ReadingUnits.psi(new Quantity(step, value.unit()));
    return psi == null ? 0 : Math.abs(psi);
  }

  /** Where gauge or calibration are not recorded, a period lasts no longer than the visit. */
  private static String gaugePeriod(TestRound round) {
    String gauge = round.test().gaugeId();
    LocalDate calibrated = round.gaugeCalibratedOn();
    return gauge == null || calibrated == null
        ? "visit " + round.visitId()
        : gauge + " " + calibrated;
  }
}
