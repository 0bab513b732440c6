package sealspan.app.engine;

import java.nio.file.Path;
import java.time.Instant;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sealspan.answers.AnswersException;
import sealspan.answers.DueForecasts;

/**
 * Issues the forecasts that a fit has made due, as the published answers tell them, until every
 * assembly is scored with that fit. It remembers nothing that the ledger does not hold: after a
 * restart it goes on where it was.
 */
final class ForecastDesk {
  private static final Logger LOG = LoggerFactory.getLogger(ForecastDesk.class);

  private final Path dataFolder;
  private final Decisions decisions;
  private String lastIssuedId;
  private boolean open;
  private final LookPace pace = new LookPace();

  ForecastDesk(Path dataFolder, Decisions decisions) {
    this.dataFolder = dataFolder;
    this.decisions = decisions;
    this.lastIssuedId = decisions.lastForecastsIssued();
    this.open = true;
  }

  /** There is a new fit, or a new generation of answers. */
  void reopen() {
    open = true;
  }

  /** Whether to look for forecasts that are due. */
  boolean isDue(Instant now) {
    return open && pace.isDue(now);
  }

  /**
   * Issues what is due.
   *
   * @param cutId id of the cut of the last fit; empty before the first
   */
  void issue(String cutId) {
    pace.look(() -> look(cutId));
  }

  private void look(String cutId) {
    if (cutId.isEmpty()) {
      open = false;
      return;
    }
    DueForecasts due;
    try {
      due = DueForecasts.read(dataFolder, cutId, lastIssuedId);
    } catch (AnswersException notPublishedYet) {
      LOG.debug("No forecasts are issued yet: {}", notPublishedYet.getMessage());
      return;
    }
    if (!due.forecasts().isEmpty()) {
      lastIssuedId = decisions.issue(due.forecasts());
      LOG.info("Issued {} forecasts.", due.forecasts().size());
    }
    open = !due.scored() || !due.forecasts().isEmpty();
  }
}
