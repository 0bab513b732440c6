package sealspan.study;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.assembly.AssemblyHistory;
import sealspan.assembly.ReadingRuns;
import sealspan.assembly.StandingEvent;
import sealspan.assembly.TestRound;
import sealspan.event.JobCosted;
import sealspan.event.LoggedEvent;
import sealspan.table.AssemblyRow;
import sealspan.table.AssemblyRows;
import sealspan.table.ExposureRow;
import sealspan.table.JobRow;
import sealspan.table.OccurrenceRow;
import sealspan.table.ReadingRow;
import sealspan.table.TestRow;

/** From the events of one assembly to everything that the tables say of it; a pure function. */
public final class AssemblyTables {
  private AssemblyTables() {}

  /**
   * The rows of one assembly for which no forecast was issued.
   *
   * @param assemblyId the assembly
   * @param events its own events and those of the subjects it refers to, in any order, with any
   *     repetition
   * @param criteria the limits in force
   * @param fits what the last fit found
   * @param revision revision that the bundle gets
   */
  public static AssemblyRows of(
      String assemblyId,
      Collection<LoggedEvent> events,
      AcceptanceCriteria criteria,
      LatestFits fits,
      long revision) {
    return of(assemblyId, events, criteria, fits, List.of(), revision);
  }

  /**
   * The rows of one assembly, with what came of the forecasts that were issued for it.
   *
   * @param assemblyId the assembly
   * @param events its own events and those of the subjects it refers to, in any order, with any
   *     repetition
   * @param criteria the limits in force
   * @param fits what the last fit found
   * @param issued its forecasts, in any order, with any repetition
   * @param revision revision that the bundle gets
   */
  public static AssemblyRows of(
      String assemblyId,
      Collection<LoggedEvent> events,
      AcceptanceCriteria criteria,
      LatestFits fits,
      Collection<IssuedForecast> issued,
      long revision) {
    AssemblyHistory history = AssemblyHistory.of(assemblyId, events, criteria);
    ReadingRuns runs = ReadingRuns.of(history, criteria);
    List<TestRow> tests = new ArrayList<>(history.rounds().size());
    List<ReadingRow> readings = new ArrayList<>();
    for (TestRound round : history.rounds()) {
      tests.add(TestRows.test(history, round));
      readings.addAll(TestRows.readings(assemblyId, round, runs));
    }
    List<ExposureRow> exposures = ExposureRows.of(history);
    List<JobRow> jobs = new ArrayList<>(0);
    List<OccurrenceRow> occurrences = new ArrayList<>();
    for (StandingEvent event : history.events()) {
      if (event.event() instanceof JobCosted job) {
        jobs.add(JobRows.of(event.id(), job));
      }
      occurrences.addAll(Occurrences.of(assemblyId, event));
    }
    NextTest next = NextTest.of(history, runs, readings, exposures, fits);
    AssemblyRow assembly = AssemblySummary.of(history);
    return new AssemblyRows(
        assemblyId,
        revision,
        assembly,
        tests,
        readings,
        exposures,
        RepairRows.of(history),
        SealRows.of(history),
        FindingRows.of(history),
        jobs,
        occurrences,
        RateRows.of(assembly, tests, exposures, fits),
        RepairEpisodes.of(history),
        next.levels(),
        next.forecast(),
        FrozenForecasts.of(issued, tests));
  }

  /**
   * The test rounds of one assembly alone.
   *
   * @param assemblyId the assembly
   * @param events its own events and those of the subjects it refers to, in any order, with any
   *     repetition
   * @param criteria the limits in force
   */
  public static List<TestRow> tests(
      String assemblyId, Collection<LoggedEvent> events, AcceptanceCriteria criteria) {
    AssemblyHistory history = AssemblyHistory.of(assemblyId, events, criteria);
    List<TestRow> tests = new ArrayList<>(history.rounds().size());
    for (TestRound round : history.rounds()) {
      tests.add(TestRows.test(history, round));
    }
    return tests;
  }
}
