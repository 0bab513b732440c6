package sealspan.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.assembly.RandomHistory;
import sealspan.assembly.Story;
import sealspan.event.AssemblyType;
import sealspan.event.LoggedEvent;
import sealspan.event.TestPerformed.Phase;
import sealspan.table.AssemblyRows;
import sealspan.table.FrozenForecastRow;
import sealspan.table.LedgerEntry;

/** What becomes of forecasts that were issued; invariant: later events never change them. */
class FrozenForecastsTest {
  /** Story events are recorded a second apart from this instant. */
  private static final Instant BEGIN = Instant.parse("2024-01-01T00:00:00Z");

  private static final AcceptanceCriteria CRITERIA = AcceptanceCriteria.shipped();

  private static IssuedForecast issued(String basis, String day, Instant at) {
    return new IssuedForecast(
        Story.ASSEMBLY,
        "entry " + at,
        at,
        "0:9",
        "3",
        basis,
        LocalDate.parse(day),
        0.01,
        0.1,
        0.3,
        0.5,
        0.2,
        0.25,
        1 / 15.0,
        "check1",
        "DC");
  }

  private static List<FrozenForecastRow> rows(Story story, IssuedForecast... issued) {
    return AssemblyTables.of(
            Story.ASSEMBLY, story.events(), CRITERIA, LatestFits.none(), List.of(issued), 1)
        .frozenForecasts();
  }

  private static Story begun() {
    return new Story()
        .installed("2020-01-10", AssemblyType.DC)
        .test("t1", "2021-01-10", 1, Phase.AS_FOUND, Story.dc("1.5", "1.5"))
        .test("t2", "2022-01-10", 1, Phase.AS_FOUND, Story.dc("1.2", "1.5"));
  }

  @Test
  void anEntryIsReadBackToTheLastBit() {
    IssuedForecast one = issued("t2", "2022-01-10", BEGIN);
    IssuedForecast two = issued("t3", "2023-01-10", BEGIN);
    LedgerEntry entry =
        new LedgerEntry(
            "entry " + BEGIN,
            IssuedForecast.KIND,
            IssuedForecast.content(List.of(one, two)),
            BEGIN,
            "engine");
    assertEquals(List.of(one, two), IssuedForecast.of(entry));
    assertEquals(List.of(two), IssuedForecast.of(two.alone()));
    LedgerEntry other =
        new LedgerEntry("x", IssuedForecast.KIND, "forecasts 2\ta\tb", BEGIN, "engine");
    assertThrows(IllegalArgumentException.class, () -> IssuedForecast.of(other));
    assertFalse(IssuedForecast.isWritable("a\tb"));
  }

  /** Bytes written by the first version; they must be readable for ever. */
  @Test
  void theFirstFormStaysReadable() {
    String content =
        "forecasts 1\t0:9\t3\nA-1\tt2\t2022-01-10\t0.01\t0.1\t0.3\t0.5\t0.2\t0.25"
            + "\t0.06666666666666667\tcheck1\tDC";
    LedgerEntry entry =
        new LedgerEntry("entry " + BEGIN, IssuedForecast.KIND, content, BEGIN, "engine");
    assertEquals(List.of(issued("t2", "2022-01-10", BEGIN)), IssuedForecast.of(entry));
    assertEquals(content, IssuedForecast.content(IssuedForecast.of(entry)));
  }

  /** By hand: half way between 12 and 24 months the hazards are half way: 1 - sqrt(.7 x .5). */
  @Test
  void theProbabilityForADayLiesBetweenThoseIssued() {
    IssuedForecast forecast = issued("t2", "2022-01-01", BEGIN);
    assertEquals(0.01, forecast.probabilityAfter(0), 1e-12);
    assertEquals(0.3, forecast.probabilityAfter(365), 1e-12);
    assertEquals(0.5, forecast.probabilityAfter(730), 1e-12);
    assertEquals(
        1 - Math.sqrt(0.35),
        (forecast.probabilityAfter(547) + forecast.probabilityAfter(548)) / 2,
        1e-6);
    assertTrue(Double.isNaN(forecast.probabilityAfter(731)));
    assertEquals(0.2, forecast.baseAfter(365), 1e-12);
    assertEquals(0.36, forecast.baseAfter(730), 1e-12);
  }

  @Test
  void theNextCountedRoundRecordedLaterIsTheOutcome() {
    IssuedForecast forecast = issued("t2", "2022-01-10", BEGIN.plusSeconds(10));
    Story before = begun();
    FrozenForecastRow waiting = rows(before, forecast).get(0);
    assertNull(waiting.probabilityThen());
    assertEquals("no counted round since", waiting.note());
    // Rounds up to here were recorded within three seconds: before it was issued.
    List<LoggedEvent> events = new ArrayList<>(before.events());
    Story after = begun().test("t3", "2023-01-10", 1, Phase.AS_FOUND, Story.dc("0.9", "1.5"));
    LoggedEvent outcome = after.events().get(after.events().size() - 1);
    events.add(outcome);
    assertEquals(
        "no counted round since",
        AssemblyTables.of(Story.ASSEMBLY, events, CRITERIA, LatestFits.none(), List.of(forecast), 1)
            .frozenForecasts()
            .get(0)
            .note());
    events.set(
        events.size() - 1, Story.logged(outcome.id(), outcome.event(), BEGIN.plusSeconds(20)));
    FrozenForecastRow scored =
        AssemblyTables.of(Story.ASSEMBLY, events, CRITERIA, LatestFits.none(), List.of(forecast), 1)
            .frozenForecasts()
            .get(0);
    assertEquals(0.3, scored.probabilityThen(), 1e-12);
    assertEquals(0.2, scored.baseProbabilityThen(), 1e-12);
    assertTrue(scored.failed());
    assertEquals("t3", scored.outcomeEventId());
  }

  @Test
  void aLaterForecastTakesThePlaceOfAnEarlierOneAndRepetitionsDoNotCount() {
    IssuedForecast first = issued("t1", "2021-01-10", BEGIN.plusSeconds(1));
    IssuedForecast second = issued("t2", "2022-01-10", BEGIN.plusSeconds(10));
    IssuedForecast again = issued("t2", "2022-01-10", BEGIN.plusSeconds(11));
    List<FrozenForecastRow> rows = rows(begun(), again, second, first);
    assertEquals(2, rows.size());
    // The first was issued before t2 was recorded, which is its outcome.
    assertEquals("t2", rows.get(0).outcomeEventId());
    assertFalse(rows.get(0).failed());
    assertEquals(second.issuedAt(), rows.get(1).issuedAt());
    IssuedForecast early = issued("t0", "2020-06-10", BEGIN.minusSeconds(5));
    IssuedForecast late = issued("t1", "2021-01-10", BEGIN.minusSeconds(4));
    assertEquals("a later forecast took its place", rows(begun(), early, late).get(0).note());
  }

  /** I8: what was said stays as it was said, whatever is recorded later. */
  @Property(tries = 100, seed = "8")
  void laterEventsNeverChangeWhatWasSaid(@ForAll long seed) {
    List<LoggedEvent> log = new ArrayList<>(RandomHistory.of(seed, "A"));
    Random random = new Random(seed);
    List<IssuedForecast> issued = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      IssuedForecast f =
          issued("b" + i, LocalDate.of(2015 + i, 1, 1).toString(), BEGIN.plusSeconds(20L * i));
      issued.add(
          new IssuedForecast(
              "A",
              f.ledgerId(),
              f.issuedAt(),
              f.fitCutId(),
              f.codeVersion(),
              f.basisEventId(),
              f.basisDay(),
              random.nextDouble(),
              .1,
              .2,
              .4,
              .1,
              .1,
              .1,
              "check1",
              "DC"));
    }
    List<String> said = said(AssemblyTables.of("A", log, CRITERIA, LatestFits.none(), issued, 1));
    for (int cut = 1; cut < log.size(); cut += 1 + log.size() / 5) {
      List<LoggedEvent> part = log.subList(0, cut);
      Collections.shuffle(issued, random);
      assertEquals(
          said, said(AssemblyTables.of("A", part, CRITERIA, LatestFits.none(), issued, 1)));
    }
  }

  private static List<String> said(AssemblyRows rows) {
    return rows.frozenForecasts().stream()
        .map(
            r ->
                r.basisEventId()
                    + r.basisDay()
                    + r.issuedAt()
                    + r.probabilityAtOnce()
                    + r.probability6Months()
                    + r.probability12Months()
                    + r.probability24Months()
                    + r.baseProbability()
                    + r.drivenBy())
        .toList();
  }
}
