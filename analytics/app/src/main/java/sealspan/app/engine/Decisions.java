package sealspan.app.engine;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.ingest.log.Cut;
import sealspan.ingest.log.Ledger;
import sealspan.study.IssuedForecast;
import sealspan.study.watch.RaisedAlarm;
import sealspan.study.watch.WatchModel;
import sealspan.table.LedgerEntry;
import sealspan.table.WatchAlarmRow;

/** What was decided and cannot be derived again: kept in the ledger, asked for here. */
final class Decisions {
  private static final String CUT_FITTED = "CUT_FITTED";
  private static final String CRITERIA_ADOPTED = "CRITERIA_ADOPTED";
  private static final String PLACES_MOVED = "PLACES_MOVED";

  /** Forecasts in one entry: some hundred kilobytes. */
  private static final int FORECASTS_PER_ENTRY = 1_000;

  private static final String BY = "engine";
  private static final String AFTER = "# in force after ";

  private final Ledger ledger;

  Decisions(Ledger ledger) {
    this.ledger = ledger;
  }

  /**
   * The cut that was fitted last, as text; empty before the first fit, and where events have been
   * moved since, because a cut tells places.
   */
  String lastCutFitted() {
    return lastOf(CUT_FITTED, PLACES_MOVED)
        .filter(entry -> entry.kind().equals(CUT_FITTED))
        .map(LedgerEntry::content)
        .orElse("");
  }

  /** Notes that events do not stand where they stood when earlier entries were made. */
  void moved(String why) {
    enter(PLACES_MOVED, why);
  }

  /** The criteria that were adopted last, as CSV; empty before the first. */
  Optional<String> lastCriteria() {
    return lastOf(CRITERIA_ADOPTED).map(Decisions::tableOf);
  }

  /** Id of the last entry with forecasts; null before the first. */
  String lastForecastsIssued() {
    return lastOf(IssuedForecast.KIND).map(LedgerEntry::id).orElse(null);
  }

  /** Issues forecasts, which are kept as they are for ever; gives the id of the last entry. */
  String issue(List<IssuedForecast> forecasts) {
    List<LedgerEntry> entries = new ArrayList<>();
    for (int from = 0; from < forecasts.size(); from += FORECASTS_PER_ENTRY) {
      int to = Math.min(forecasts.size(), from + FORECASTS_PER_ENTRY);
      String content = IssuedForecast.content(forecasts.subList(from, to));
      entries.add(new LedgerEntry(null, IssuedForecast.KIND, content, Instant.now(), BY));
    }
    ledger.append(entries);
    return lastForecastsIssued();
  }

  /** Id of the last entry with a model of the watch; null before the first. */
  String lastModelFrozen() {
    return lastOf(WatchModel.KIND).map(LedgerEntry::id).orElse(null);
  }

  /**
   * Freezes a model of the watch, which is kept as it is for ever; gives the id of its last entry.
   */
  String freeze(WatchModel model) {
    List<LedgerEntry> entries = new ArrayList<>();
    for (String content : model.contents()) {
      entries.add(new LedgerEntry(null, WatchModel.KIND, content, Instant.now(), BY));
    }
    ledger.append(entries);
    return lastModelFrozen();
  }

  /** Enters alarms of the watch, which are kept as they are for ever. */
  void raise(List<WatchAlarmRow> alarms) {
    List<LedgerEntry> entries = new ArrayList<>();
    for (WatchAlarmRow alarm : alarms) {
      String content = RaisedAlarm.content(alarm);
      entries.add(new LedgerEntry(null, RaisedAlarm.KIND, content, Instant.now(), BY));
    }
    ledger.append(entries);
  }

  /** Notes that a cut was fitted. */
  void fitted(String cut) {
    enter(CUT_FITTED, cut);
  }

  /**
   * Notes the criteria in force, unless they were already. An entry of the same content is entered
   * once for ever, so one that comes back into force names the entry that it follows.
   */
  void adopt(AcceptanceCriteria criteria) {
    Optional<LedgerEntry> before = lastOf(CRITERIA_ADOPTED);
    if (before.isEmpty()) {
      enter(CRITERIA_ADOPTED, criteria.csv());
    } else if (!tableOf(before.get()).equals(criteria.csv())) {
      enter(CRITERIA_ADOPTED, AFTER + before.get().id() + "\n" + criteria.csv());
    }
  }

  private static String tableOf(LedgerEntry entry) {
    String content = entry.content();
    return content.startsWith(AFTER) ? content.substring(content.indexOf('\n') + 1) : content;
  }

  private Optional<LedgerEntry> lastOf(String... kinds) {
    AtomicReference<LedgerEntry> found = new AtomicReference<>();
    ledger.read(
        Cut.START,
        ledger.end(),
        recorded -> {
          if (List.of(kinds).contains(recorded.entry().kind())) {
            found.set(recorded.entry());
          }
        });
    return Optional.ofNullable(found.get());
  }

  private void enter(String kind, String content) {
    ledger.append(List.of(new LedgerEntry(null, kind, content, Instant.now(), BY)));
  }
}
