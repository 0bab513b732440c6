package sealspan.answers;

import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import sealspan.answers.tables.RowLoader;
import sealspan.study.BatchTables;
import sealspan.table.Bundle;

/**
 * The model as it would have been at the end of a day: the same study functions over the events
 * that the log had recorded by then, the same tables and sums, in memory. Later corrections are not
 * in, later imports are not in, however old what they tell.
 *
 * @param day the last day that is in
 * @param zone the utility's time zone, in which the day ends
 */
public record AsOf(LocalDate day, ZoneId zone) {
  /** First instant that is no longer in. */
  Instant end() {
    return day.plusDays(1).atStartOfDay(zone).toInstant();
  }

  /** The day in words. */
  String words() {
    return day + " (end of the day in " + zone + ")";
  }

  /**
   * Makes the model and opens it.
   *
   * @param folder the answers of the data folder
   * @param progress told of the steps
   */
  Answers open(AnswersFolder folder, Progress progress) throws SQLException {
    RecordUntil record = RecordUntil.of(folder, end(), progress);
    try {
      load(record, progress);
      record.publication().addTo(record.model());
      return new Answers(
          record.model(),
          words() + ": " + Cut.of(record.model()).words(),
          PublishedQuestions.ofThisProgram());
    } catch (SQLException | RuntimeException e) {
      record.close();
      throw e;
    }
  }

  private static void load(RecordUntil record, Progress progress) throws SQLException {
    RecordedEvents events = record.events();
    AsOfLedger ledger = record.ledger();
    progress.at("working out histories", 0, events.events().size());
    List<Bundle> bundles =
        BatchTables.of(
            events.logged(),
            ledger.offsets() == null ? List.of() : events.before(ledger.offsets()),
            record.criteria(),
            ledger.cut(events),
            ledger.forecasts(),
            ledger.models());
    try (RowLoader loader = new RowLoader(record.model())) {
      long done = 0;
      for (Bundle bundle : bundles) {
        loader.add(bundle);
        progress.at("filling tables", ++done, bundles.size());
      }
    }
  }
}
