package sealspan.study.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import sealspan.table.FoulingCoefficientRow;
import sealspan.table.LedgerEntry;

class WatchModelTest {
  private static final Instant THEN = Instant.parse("2026-01-02T03:04:05Z");

  static WatchModel model(String cut, List<WatchSite> sites, double threshold, double constant) {
    return new WatchModel(
        null,
        null,
        cut,
        "1",
        40,
        200,
        threshold,
        List.of(new FoulingCoefficientRow("constant", constant, null, null)),
        sites);
  }

  static List<LedgerEntry> entered(WatchModel model, Instant at) {
    List<LedgerEntry> entries = new ArrayList<>();
    for (String content : model.contents()) {
      String id = model.cutId() + "-" + entries.size();
      entries.add(new LedgerEntry(id, WatchModel.KIND, content, at, "engine"));
    }
    return entries;
  }

  /** The text must be readable for ever: it is pinned to the letter. */
  @Test
  void readsTheFirstForm() {
    String text =
        "watch model 1\t0:12\t1\t40\t200.5\t1003.0\t1\t1\n"
            + "coefficient\tconstant\t-3.25\n"
            + "coefficient\ttype=RP\t0.5\n"
            + "place\tS-1\tZ1\t52.5\t-1.25\n"
            + "place\tS-2\t\t\t";
    WatchModel read =
        WatchModel.of(List.of(new LedgerEntry("e", WatchModel.KIND, text, THEN, "engine"))).get(0);
    WatchModel expected =
        new WatchModel(
            "e",
            THEN,
            "0:12",
            "1",
            40,
            200.5,
            1003,
            List.of(
                new FoulingCoefficientRow("constant", -3.25, null, null),
                new FoulingCoefficientRow("type=RP", .5, null, null)),
            List.of(
                new WatchSite("S-1", "Z1", 52.5, -1.25), new WatchSite("S-2", null, null, null)));
    assertEquals(expected, read);
    assertEquals(List.of(text), expected.contents());
  }

  @Test
  void travelsInPartsAndCountsWhenAllAreThere() {
    List<WatchSite> sites = new ArrayList<>();
    for (int i = 0; i < 12_000; i++) {
      sites.add(new WatchSite("S-" + i, "Z" + i % 7, 50 + i * 1e-5, 1 + i * 1e-5));
    }
    List<LedgerEntry> entries = entered(model("0:9", sites, 500, -3), THEN);
    assertEquals(3, entries.size());
    assertEquals(List.of(), WatchModel.of(entries.subList(1, 3)));
    Collections.reverse(entries);
    List<LedgerEntry> twice = new ArrayList<>(entries);
    twice.addAll(entries);
    WatchModel read = WatchModel.of(twice).get(0);
    assertEquals(sites, read.sites());
    assertEquals("0:9-0", read.id());
    assertEquals(THEN, read.frozenAt());
  }

  @Test
  void saysWhatItCannotRead() {
    LedgerEntry newer = new LedgerEntry("x", WatchModel.KIND, "watch model 9\tz", THEN, "engine");
    String words =
        assertThrows(IllegalArgumentException.class, () -> WatchModel.of(List.of(newer)))
            .getMessage();
    assertTrue(words.contains("it begins with watch model 9"), words);
    LedgerEntry other = new LedgerEntry("y", "CUT_FITTED", "0:9", THEN, "engine");
    assertEquals(List.of(), WatchModel.of(List.of(other)));
  }

  @Test
  void needsTheTestsOfFiveYearsForAnAlarm() {
    assertEquals(1_003, WatchModel.thresholdFor(200.5));
    assertEquals(100, WatchModel.thresholdFor(0.2));
  }
}
