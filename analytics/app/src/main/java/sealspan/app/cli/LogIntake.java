package sealspan.app.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.app.Problem;
import sealspan.app.engine.LogClient;
import sealspan.event.LoggedEvent;
import sealspan.ingest.log.AppendLog.Ready;
import sealspan.ingest.log.AppendLog.Sending;
import sealspan.ingest.log.EventLog;
import sealspan.ingest.log.Receipt;
import sealspan.ingest.log.StandingRows;
import sealspan.ingest.source.Appending;
import sealspan.ingest.source.DraftSource;
import sealspan.ingest.source.ImportSummary;
import sealspan.ingest.source.Importing;
import sealspan.ingest.source.Mapping;
import sealspan.ingest.source.SourceException;
import sealspan.ingest.source.Sources;
import sealspan.ingest.source.StationZones;
import sealspan.ingest.validate.Intake;
import sealspan.ingest.validate.Validator;
import sealspan.table.QuarantinedRow;

/** Joins the reading of files to the log. */
final class LogIntake {
  /**
   * Source of reports where none is named. It is the same for all files, because reports of one
   * number in two files are more often one report than two.
   */
  static final String USUAL_SOURCE = "reports";

  private LogIntake() {}

  /** How a file is to be read. */
  record Reading(Path file, Mapping mapping, StationZones zones, String source) {}

  /**
   * Takes a file into the log. Rows that were set aside before and are at fault no more are marked
   * as put right, once the file was read to its end.
   *
   * @param standing what stands in quarantine of the file
   * @throws Problem when it cannot be read
   */
  static ImportSummary take(
      Reading reading, LogClient log, StandingRows standing, Importing.Progress progress) {
    ImportSummary summary =
        run(
            reading,
            new ToLog(log.events()),
            rows -> log.quarantine().append(rows.stream().map(standing::complainedOf).toList()),
            progress);
    List<QuarantinedRow> putRight =
        summary.stopped() ? List.of() : standing.putRight(summary.file());
    if (!putRight.isEmpty()) {
      log.quarantine().append(putRight);
    }
    return summary;
  }

  /** What stands in quarantine of files of one source. */
  static StandingRows standing(List<Reading> readings, LogClient log) {
    List<String> names = readings.stream().map(r -> r.file().getFileName().toString()).toList();
    return StandingRows.of(log.quarantine(), readings.get(0).source(), names);
  }

  /** Reads and judges a file and takes nothing in. */
  static ImportSummary tryOut(Reading reading, Importing.Progress progress) {
    return run(reading, new Appending.TrialRun(), Importing.Setting.NOTHING, progress);
  }

  /** Appends events to the log. */
  private record ToLog(EventLog events) implements Appending<Ready<LoggedEvent>> {
    @Override
    public Ready<LoggedEvent> ready(LoggedEvent event) {
      return events.ready(event);
    }

    @Override
    public Appending.Outcomes send(List<Ready<LoggedEvent>> batch) {
      Sending<LoggedEvent> sending = events.send(batch);
      return () -> sending.receipts().stream().map(LogIntake::outcome).toList();
    }
  }

  private static <R> ImportSummary run(
      Reading reading,
      Appending<R> appending,
      Importing.Setting setting,
      Importing.Progress progress) {
    try {
      DraftSource source = Sources.open(reading.file(), reading.mapping(), reading.zones());
      Intake intake =
          new Intake(
              reading.source(),
              LocalDate.now(),
              reading.mapping().usualReportLagDays(),
              LoggedEvent.Arrival.IMPORTED);
      return new Importing<>(reading.source(), new Validator(intake), appending, setting, progress)
          .run(source);
    } catch (SourceException | IOException e) {
      throw new Problem(e.getMessage(), e);
    }
  }

  private static Appending.Outcome outcome(Receipt<LoggedEvent> receipt) {
    if (receipt instanceof Receipt.Appended<LoggedEvent>) {
      return new Appending.Outcome.Appended();
    }
    if (receipt instanceof Receipt.Conflict<LoggedEvent> conflict) {
      return new Appending.Outcome.Conflict(conflict.there().entry());
    }
    return new Appending.Outcome.Duplicate();
  }

  /** What became of a file, line by line. */
  static List<String> words(ImportSummary s) {
    List<String> lines = new ArrayList<>();
    lines.add(s.file() + " (" + String.join(", ", s.notes()) + ")");
    lines.add("  rows read            " + s.rowsRead());
    lines.add("  events in them       " + s.accepted());
    lines.add("  new in the log       " + s.appended());
    lines.add("  there already        " + s.duplicates());
    if (s.conflicts() > 0) {
      lines.add("  conflicts            " + s.conflicts() + " (same report, other content)");
    }
    if (s.rejectedRows() > 0) {
      lines.add("  rows rejected        " + s.rejectedRows());
      s.rejectedByFault().forEach((fault, rows) -> lines.add("    " + fault.words() + ": " + rows));
    }
    s.leftOut()
        .forEach((reason, rows) -> lines.add("  left out             " + rows + ": " + reason));
    if (s.stopped()) {
      lines.add("  stopped before the end; start the same import again to go on");
    }
    return lines;
  }
}
