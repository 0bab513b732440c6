package sealspan.app.sample;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.event.LoggedEvent;
import sealspan.ingest.source.DraftSource;
import sealspan.ingest.source.Item;
import sealspan.ingest.source.Mapping;
import sealspan.ingest.source.Sources;
import sealspan.ingest.source.StationZones;
import sealspan.ingest.validate.Intake;
import sealspan.ingest.validate.Problem;
import sealspan.ingest.validate.Validation;
import sealspan.ingest.validate.Validator;

/**
 * A file as the import reads it, without a log.
 *
 * @param rows rows that are not empty
 * @param events events of the sound rows
 * @param problems what is wrong with the others, first problem of each
 * @param leftOut rows that are no event by their nature
 */
record ReadFile(int rows, List<LoggedEvent> events, List<Problem> problems, int leftOut) {
  private static final LocalDate LATEST = LocalDate.of(2026, 1, 1);

  /** Reads a file under a name of its source. */
  static ReadFile of(Path file, String source, Mapping mapping) throws Exception {
    Validator validator = new Validator(Intake.imported(source, LATEST));
    List<LoggedEvent> events = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    int rows = 0;
    int leftOut = 0;
    try (DraftSource drafts = Sources.open(file, mapping, StationZones.NONE)) {
      for (Item item = drafts.next(); item != null; item = drafts.next()) {
        rows++;
        if (item instanceof Item.Draft draft) {
          Validation judged = validator.validate(draft.draft());
          if (judged instanceof Validation.Accepted accepted) {
            events.addAll(accepted.events());
          } else {
            problems.add(((Validation.Rejected) judged).problems().get(0));
          }
        } else if (item instanceof Item.Broken broken) {
          problems.add(broken.problem());
        } else {
          leftOut++;
        }
      }
    } catch (IOException e) {
      throw new AssertionError(file + " can be read", e);
    }
    return new ReadFile(rows, events, problems, leftOut);
  }
}
