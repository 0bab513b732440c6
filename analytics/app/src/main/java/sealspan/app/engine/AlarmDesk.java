package sealspan.app.engine;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sealspan.answers.AnswersException;
import sealspan.answers.AnswersFolder;
import sealspan.answers.DueWatchModel;
import sealspan.answers.NewAlarms;
import sealspan.ingest.log.Cut;
import sealspan.table.WatchAlarmRow;

/**
 * Freezes the models that the watch over fouling goes by, and enters the alarms that it raises in
 * the ledger. It remembers nothing that the ledger does not hold.
 *
 * <p>An alarm is entered when nothing can come before it any more: when a snapshot holds the log up
 * to an end that was seen some time after the alarm's test had been recorded.
 */
final class AlarmDesk {
  private static final Logger LOG = LoggerFactory.getLogger(AlarmDesk.class);

  /** How long a record may be on its way into the log after it got its time. */
  private static final Duration ON_ITS_WAY = Duration.ofSeconds(10);

  private final Path dataFolder;
  private final Decisions decisions;
  private String lastModelId;
  private boolean modelOpen = true;
  private boolean alarmsOpen = true;
  private String seenEnd = "";
  private Instant seenAt;
  private final LookPace pace = new LookPace();

  /** A snapshot that does not reach the end that is waited for. */
  private Path tooOld;

  AlarmDesk(Path dataFolder, Decisions decisions) {
    this.dataFolder = dataFolder;
    this.decisions = decisions;
    this.lastModelId = decisions.lastModelFrozen();
  }

  /** There is a new fit, or a new generation of answers. */
  void reopen() {
    modelOpen = true;
    alarmsOpen = true;
  }

  /** After a look at the log: its end then, unless an earlier end is still waited for. */
  void looked(Instant now, String end) {
    if (seenAt == null && (alarmsOpen || !end.equals(seenEnd))) {
      alarmsOpen = true;
      seenAt = now;
      seenEnd = end;
    }
  }

  /** Whether there is something to look for. */
  boolean isDue(Instant now) {
    return (modelOpen || alarmsOpen && seenAt != null) && pace.isDue(now);
  }

  /**
   * Freezes the model that is due and enters the alarms that are.
   *
   * @param cutId id of the cut of the last fit; empty before the first
   */
  void work(String cutId) {
    pace.look(() -> look(cutId));
  }

  private void look(String cutId) {
    try {
      if (modelOpen) {
        freeze(cutId);
      }
      if (alarmsOpen && seenAt != null) {
        enter();
      }
    } catch (AnswersException notPublishedYet) {
      LOG.debug("Nothing is watched yet: {}", notPublishedYet.getMessage());
    }
  }

  private void freeze(String cutId) {
    if (cutId.isEmpty()) {
      modelOpen = false;
      return;
    }
    DueWatchModel due = DueWatchModel.read(dataFolder, cutId, lastModelId, Instant.now());
    if (due.model() != null) {
      lastModelId = decisions.freeze(due.model());
      LOG.info(
          "Froze the model of the watch over fouling, of {} places.", due.model().sites().size());
    }
    modelOpen = !due.fitted();
  }

  private void enter() {
    Path newest = new AnswersFolder(dataFolder).newestSnapshot();
    if (newest.equals(tooOld)) {
      return;
    }
    NewAlarms alarms = NewAlarms.read(dataFolder);
    if (!reaches(Cuts.parse(alarms.offsets()), Cuts.parse(seenEnd))) {
      tooOld = newest;
      return;
    }
    Instant settledBefore = seenAt.minus(ON_ITS_WAY);
    List<WatchAlarmRow> settled =
        alarms.alarms().stream().filter(a -> a.raisedAt().isBefore(settledBefore)).toList();
    if (!settled.isEmpty()) {
      decisions.raise(settled);
      LOG.info("Entered {} alarms of the watch over fouling.", settled.size());
    }
    // What is left is looked at again, with an end of the log that is seen later.
    alarmsOpen = alarms.alarms().size() > settled.size();
    seenAt = null;
  }

  private static boolean reaches(Cut snapshot, Cut end) {
    for (int partition = 0; partition < end.offsets().size(); partition++) {
      if (snapshot.offset(partition) < end.offset(partition)) {
        return false;
      }
    }
    return true;
  }
}
