package sealspan.answers;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.study.watch.RaisedAlarm;
import sealspan.study.watch.WatchModel;
import sealspan.study.watch.WatchSite;
import sealspan.table.FoulingCoefficientRow;
import sealspan.table.LedgerEntry;
import sealspan.table.WatchAlarmRow;
import sealspan.table.WatchRows;
import sealspan.table.WatchStateRow;

/** A watch written by hand: two alarms as known, one of them closed, and one restated. */
final class HandMadeWatch {
  static final Instant FROZEN = Instant.parse("2024-02-01T06:00:00Z");

  private HandMadeWatch() {}

  static WatchRows rows() {
    return new WatchRows(
        "all",
        3,
        List.of(
            alarm("A-1", "AS_KNOWN", "2024-03-05T10:00:00Z", 4, .7),
            alarm("A-2", "AS_KNOWN", "2024-06-07T10:00:00Z", 3, .05),
            alarm("A-3", "RESTATED", "2024-03-06T10:00:00Z", 5, .7)),
        List.of(state("AS_KNOWN", 2), state("RESTATED", 1)));
  }

  /** The model, two alarms entered, one of them closed; the third is not entered yet. */
  static List<LedgerEntry> ledger() {
    List<LedgerEntry> entries = new ArrayList<>();
    WatchModel model =
        new WatchModel(
            null,
            null,
            "0:5",
            "1",
            40,
            200,
            1_000,
            List.of(new FoulingCoefficientRow("constant", -3, null, null)),
            List.of(new WatchSite("S1", "Z1", 50.0, 1.0)));
    entries.add(entry("m-1", WatchModel.KIND, model.contents().get(0), "engine"));
    entries.add(entry("r-1", RaisedAlarm.KIND, content(0), "engine"));
    entries.add(entry("r-2", RaisedAlarm.KIND, content(1), "engine"));
    String closed = RaisedAlarm.closed("A-1", "main flushed\nafter a break");
    entries.add(entry("c-1", RaisedAlarm.CLOSED_KIND, closed, "p-7"));
    return entries;
  }

  private static String content(int alarm) {
    return RaisedAlarm.content(rows().alarms().get(alarm));
  }

  private static LedgerEntry entry(String id, String kind, String content, String by) {
    return new LedgerEntry(id, kind, content, FROZEN, by);
  }

  private static WatchAlarmRow alarm(
      String id, String run, String raisedAt, int cases, double share) {
    return new WatchAlarmRow(
        id,
        run,
        Instant.parse(raisedAt),
        "t9",
        "m-1",
        FROZEN,
        "4 sites within 0.8 km of site S1",
        "CIRCLE",
        null,
        "S1",
        50.0,
        1.0,
        .8,
        4,
        "S1, S2, S3, S4",
        4,
        share,
        1_100,
        1_000,
        150,
        200,
        5,
        Instant.parse("2024-02-20T10:00:00Z"),
        LocalDate.of(2024, 2, 19),
        9,
        cases,
        .6,
        "t5, t7, t9",
        141,
        7,
        8.1,
        7 / 8.1,
        .347,
        1.78,
        "HOLDS",
        "the probabilities hold so far, so the stated time to a false alarm does");
  }

  private static WatchStateRow state(String run, int alarms) {
    return new WatchStateRow(
        run,
        1,
        "m-1",
        FROZEN,
        5,
        1,
        "S9",
        14,
        320,
        2,
        1,
        0,
        alarms,
        210,
        1_000,
        170,
        200,
        5,
        Instant.parse("2024-06-07T10:00:00Z"),
        320,
        17,
        18.2,
        17 / 18.2,
        .544,
        1.5,
        .8,
        "HOLDS",
        "the probabilities hold so far, so the stated time to a false alarm does");
  }
}
