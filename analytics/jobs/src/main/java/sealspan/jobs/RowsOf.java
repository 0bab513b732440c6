package sealspan.jobs;

import java.util.List;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.event.LoggedEvent;
import sealspan.event.Subject;
import sealspan.study.AssemblyTables;
import sealspan.study.IssuedForecast;
import sealspan.study.LatestFits;
import sealspan.study.ZoneTables;
import sealspan.study.watch.WatchedTests;
import sealspan.table.AssemblyRows;
import sealspan.table.Bundle;

/** Which function of the study makes the rows of a subject. */
final class RowsOf {
  private RowsOf() {}

  /**
   * The rows of an assembly or a zone.
   *
   * @param subject key of the subject
   * @param events its history
   * @param criteria the limits in force
   * @param fit the last fit
   * @param issued the forecasts that were issued for it
   */
  static Bundle subject(
      String subject,
      List<LoggedEvent> events,
      AcceptanceCriteria criteria,
      LastFit fit,
      List<IssuedForecast> issued) {
    Subject of = Subject.ofKey(subject);
    try {
      // All terms only grow, so the revision does, in whichever order they arrive.
      return of.kind() == Subject.Kind.ZONE
          ? ZoneTables.of(of.id(), events, events.size())
          : AssemblyTables.of(
              of.id(),
              events,
              criteria,
              fit.latest(),
              issued,
              events.size() + fit.revision() + issued.size());
    } catch (RuntimeException e) {
      throw new JobException(
          "The history of %s cannot be worked out: %s".formatted(subject, JobTrouble.words(e)), e);
    }
  }

  /** The tests of an assembly as the watch over fouling takes them. */
  static Watched watched(String subject, List<LoggedEvent> events, AcceptanceCriteria criteria) {
    String id = Subject.ofKey(subject).id();
    WatchedBytes tests = new WatchedBytes(events.size(), WatchedTests.of(id, events, criteria));
    return new Watched(id, tests.pack(), Watched.What.TESTS);
  }

  /** The rows of an assembly as a fit takes them: without what an earlier fit found. */
  static AssemblyRows forFit(
      String subject, List<LoggedEvent> events, AcceptanceCriteria criteria) {
    return AssemblyTables.of(Subject.ofKey(subject).id(), events, criteria, LatestFits.none(), 0);
  }
}
