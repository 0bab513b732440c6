package sealspan.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.study.practice.PracticeFleet;
import sealspan.study.practice.PracticeParameters;
import sealspan.study.practice.TrueFouling;
import sealspan.table.AssemblyRows;
import sealspan.table.RepairEffectRow;
import sealspan.table.RepairEpisodeRow;

class RepairEffectsTest {
  private static final LocalDate DAY = LocalDate.of(2020, 1, 1);
  private static final List<RepairEpisodeRow> FLEET = new ArrayList<>();
  private static final List<AssemblyRows> MEMBERS = new ArrayList<>();

  /** A fleet with everything that makes records hard, in which fouling comes back. */
  @BeforeAll
  static void fleet() {
    PracticeFleet fleet =
        new PracticeFleet(
            PracticeParameters.usual(5, 1_500)
                .with(new TrueFouling(0.06, 0.3, 0, 0, 1, 0, 0, 0, 1, 0)));
    AcceptanceCriteria criteria = AcceptanceCriteria.shipped();
    for (int position = 0; position < 1_500; position++) {
      var events = fleet.eventsAt(position);
      for (var unit : fleet.truthAt(position).units()) {
        AssemblyRows rows =
            AssemblyTables.of(unit.assemblyId(), events, criteria, LatestFits.none(), 1);
        MEMBERS.add(rows);
        FLEET.addAll(rows.repairEpisodes());
      }
    }
  }

  private static RepairEffects effects(String stratum, String component) {
    return RepairEffects.of(stratum, RepairEffects.episodes(component, Members.of(MEMBERS)));
  }

  private static Map<String, RepairEffectRow> figures(
      String stratum, String component, String found) {
    Map<String, RepairEffectRow> figures = new TreeMap<>();
    for (RepairEffectRow row : effects(stratum, component).figures()) {
      if (row.found().equals(found)) {
        figures.put(row.quantity(), row);
      }
    }
    return figures;
  }

  @Test
  void everyEpisodeIsComparedOrCountedWithAReason() {
    Map<String, RepairEffectRow> figures = figures("all", null, "ANY");
    RepairEffectRow words = figures.get("in words");
    int leftOut = 0;
    for (RepairEffectRow row : figures.values()) {
      if (row.quantity().startsWith("left out: ")) {
        leftOut += row.figure().intValue();
      }
    }
    assertTrue(FLEET.size() > 800, FLEET.size() + " episodes");
    assertEquals(FLEET.size(), words.cleaned() + words.renewed() + leftOut);
  }

  @Test
  void theAnswerInWordsSaysWhatTheFiguresSay() {
    Map<String, RepairEffectRow> figures = figures("all", null, "ANY");
    RepairEffectRow cleaned = figures.get("failing the next yearly test, had all been cleaned");
    assertNotNull(cleaned.figure(), cleaned.note());
    assertTrue(cleaned.lower() < cleaned.figure() && cleaned.figure() < cleaned.upper());
    String words = figures.get("in words").note();
    assertTrue(
        words.startsWith("Had all been cleaned, ") && words.contains("n = " + total(cleaned)),
        words);
    RepairEffectRow raw =
        figures.get("as it happened, not comparable: cleaned, failed at the next test");
    assertEquals(cleaned.cleanedFailed() / (double) cleaned.cleaned(), raw.figure(), 1e-12);
  }

  private static int total(RepairEffectRow row) {
    return row.cleaned() + row.renewed();
  }

  /** The parts of a fleet by what was found add up to it, and so do those by component. */
  @Test
  void strataAddUp() {
    int byFound = 0;
    for (String found : List.of("FOULING", "DAMAGE", "NOTHING_FOUND", "NOT_KNOWN")) {
      RepairEffectRow words = figures("all", null, found).get("in words");
      byFound += words == null ? 0 : total(words);
    }
    int byComponent = 0;
    for (String component :
        FLEET.stream().map(RepairEpisodeRow::component).distinct().sorted().toList()) {
      byComponent += total(figures("component", component, "ANY").get("in words"));
    }
    int all = total(figures("all", null, "ANY").get("in words"));
    assertEquals(all, byFound);
    assertEquals(all, byComponent);
  }

  @Test
  void balanceNamesEveryCovariateOnce() {
    var balance =
        effects("all", null).balance().stream().filter(b -> b.found().equals("ANY")).toList();
    assertEquals(balance.size(), balance.stream().map(b -> b.covariate()).distinct().count());
    assertTrue(balance.stream().anyMatch(b -> b.covariate().equals("age of the seal, log")));
    // A fleet in which the older and worn are renewed, so seals differ before and not after.
    var age =
        balance.stream()
            .filter(b -> b.covariate().equals("found: damage"))
            .findFirst()
            .orElseThrow();
    assertTrue(age.differenceBefore() > 0.2, age.toString());
    assertTrue(Math.abs(age.differenceAfter()) < 0.1, age.toString());
  }

  private static List<RepairEpisodeRow> made(
      int cleaned, int cleanedFailed, int renewed, int renewedFailed) {
    List<RepairEpisodeRow> rows = new ArrayList<>();
    for (int i = 0; i < cleaned + renewed; i++) {
      boolean isRenewed = i >= cleaned;
      boolean failed = isRenewed ? i - cleaned < renewedFailed : i < cleanedFailed;
      rows.add(
          new RepairEpisodeRow(
              "A" + i,
              "V",
              DAY,
              "check1",
              "DC",
              "2",
              "Z",
              isRenewed ? "SEAL_RENEWED" : "CLEANED",
              "FOULING",
              0.5,
              1_000,
              1_000,
              1_000,
              0,
              0,
              "NONE",
              "PASSED",
              isRenewed,
              DAY.plusDays(365),
              365,
              failed,
              null,
              null));
    }
    return rows;
  }

  private static String words(List<RepairEpisodeRow> rows) {
    EpisodeCohort cohort = EpisodeCohort.of(rows);
    List<RepairEffectRow> figures = EffectFigures.of("all", "ANY", cohort, RepairEffect.of(cohort));
    for (RepairEffectRow row : figures) {
      for (Double figure : new Double[] {row.figure(), row.lower(), row.upper()}) {
        assertFalse(figure != null && !Double.isFinite(figure), row.toString());
      }
    }
    return figures.get(0).note();
  }

  @Test
  void saysInPlainWordsWhyThereIsNoAnswer() {
    assertEquals(
        "Not identified, because there is no such repair yet; n = 0 (0 cleaned, 0 seals renewed).",
        words(List.of()));
    assertEquals(
        "Not identified, because no seal was renewed; n = 9 (9 cleaned, 0 seals renewed).",
        words(made(9, 6, 0, 0)));
    assertEquals(
        "Not identified, because none of 90 cases failed after cleaning; n = 180 (90 cleaned, 90"
            + " seals renewed).",
        words(made(90, 0, 90, 0)));
    assertEquals(
        "Not identified, because none of 90 cases held after cleaning; n = 180 (90 cleaned, 90"
            + " seals renewed).",
        words(made(90, 90, 90, 90)));
    assertEquals(
        "Not identified, because only 4 of 90 cases failed after a new seal; n = 180 (90 cleaned,"
            + " 90 seals renewed).",
        words(made(90, 20, 90, 4)));
  }

  /** By hand: 40 of 100 and 20 of 100, all alike; the year of 365.25 days adds a little. */
  @Test
  void casesThatAreAlikeCompareAsTheyCame() {
    String words = words(made(100, 40, 100, 20));
    assertTrue(words.startsWith("Had all been cleaned, 40 % (3"), words);
    assertTrue(words.contains("had all seals been renewed, 20 % ("), words);
    assertTrue(words.contains(": a new seal holds better; n = 200"), words);
    assertTrue(words(made(100, 20, 100, 40)).contains("cleaning holds better"));
    assertTrue(words(made(100, 20, 100, 21)).contains("a toss-up"));
  }

  @Test
  void withoutAnyRepairThereIsOneRowThatSaysSo() {
    RepairEffects effects = RepairEffects.of("all", List.of());
    assertEquals("ANY", effects.figures().get(0).found());
    assertTrue(effects.figures().stream().allMatch(r -> r.figure() == null));
    assertEquals(List.of(), effects.balance());
    assertNull(effects.figures().get(1).lower());
  }
}
