package sealspan.study.fouling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sealspan.assembly.Story.dc;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.assembly.Story;
import sealspan.event.AssemblyType;
import sealspan.event.TestPerformed.Phase;
import sealspan.stats.scan.ScanSettings;
import sealspan.study.BatchTables;
import sealspan.study.Members;
import sealspan.table.AssemblyRows;
import sealspan.table.FoulingClusterMemberRow;
import sealspan.table.FoulingClusterRow;

class ExplorationTest {
  private static final int REPLICATES = 99;
  private static final List<AssemblyRows> TOWN = ThinTown.rows();

  private static ExplorationChoice by(ZoneShape shape) {
    return new ExplorationChoice(
        shape,
        shape == ZoneShape.PIPES ? pipes(List.of()) : null,
        100,
        false,
        false,
        null,
        null,
        1);
  }

  private static PipeLines pipes(List<double[]> closedValves) {
    return new PipeLines(ThinTown.mains(), 0, closedValves, 0);
  }

  private static Exploration look(List<AssemblyRows> rows, ExplorationChoice choice) {
    return Exploration.of(rows, choice, REPLICATES, number -> {});
  }

  private static Set<String> members(Exploration found) {
    return found.members().stream()
        .filter(m -> m.number() == 1)
        .map(FoulingClusterMemberRow::siteId)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static String notes(Exploration found) {
    return String.join("\n", ExplorationNotes.of(found));
  }

  /** What the other shapes are for: the sites along one main, which circles see in part. */
  @Test
  void aThinClusterIsFoundAlongItsMainAndByAnEllipseBetterThanByCircles() {
    FoulingClusterRow circle = look(TOWN, by(ZoneShape.CIRCLES)).clusters().get(0);
    Exploration ellipses = look(TOWN, by(ZoneShape.ELLIPSES));
    FoulingClusterRow ellipse = ellipses.clusters().get(0);
    Exploration reaches = look(TOWN, by(ZoneShape.PIPES));
    FoulingClusterRow reach = reaches.clusters().get(0);
    assertEquals(ThinTown.thin(), members(reaches));
    assertTrue(reach.significant(), reach.toString());
    assertTrue(ellipse.significant(), ellipse.toString());
    assertTrue(circle.cases() < 11, circle.toString());
    assertEquals(11, reach.cases());
    assertTrue(ellipse.cases() > circle.cases(), ellipse.toString());
    // Scores of ellipses are lowered for their shape, and still larger.
    assertTrue(ellipse.logLikelihoodRatio() > circle.logLikelihoodRatio(), ellipse.toString());
    assertTrue(reach.logLikelihoodRatio() > ellipse.logLikelihoodRatio(), reach.toString());
    ClusterOutline.Ellipse oval =
        assertInstanceOf(ClusterOutline.Ellipse.class, ellipses.outlines().get(0));
    assertEquals(90, oval.bearingDegrees(), "the streets run from west to east");
    assertEquals(3, oval.ratio());
    // Five steps of 300 m either way, 11 m to the main and back.
    ClusterOutline.AlongPipes along =
        assertInstanceOf(ClusterOutline.AlongPipes.class, reaches.outlines().get(0));
    assertEquals(1.522, along.reachKm(), .002);
  }

  @Test
  void subsetsAreTheFouledSitesOfABallAndNoOthers() {
    Exploration found = look(TOWN, by(ZoneShape.SUBSETS));
    List<FoulingClusterMemberRow> own =
        found.members().stream().filter(m -> m.number() == 1).toList();
    assertTrue(own.stream().allMatch(m -> m.cases() > 0 && m.shareOfNearBest() > 0));
    assertTrue(
        members(found).stream().filter(ThinTown.thin()::contains).count() >= 6,
        members(found).toString());
    ClusterOutline.Chosen chosen =
        assertInstanceOf(ClusterOutline.Chosen.class, found.outlines().get(0));
    assertTrue(chosen.ballSites() >= own.size() && chosen.ballSites() <= 30);
    assertTrue(own.stream().allMatch(m -> m.distanceKm() <= chosen.ballKm() + 1e-9));
    String words = String.join("\n", ExplorationWords.answer(found));
    own.forEach(m -> assertTrue(words.contains(m.siteId() + " ("), words));
    assertTrue(notes(found).contains("Only sites found fouled in its time are ever chosen"));
  }

  /** By circles it is the scan of the engine, to the last digit. */
  @Test
  void byCirclesItIsTheScanOfTheEngine() {
    Exploration found = look(TOWN, by(ZoneShape.CIRCLES));
    List<FoulingVisit> visits = FoulingVisits.of(Members.of(TOWN)).classified();
    FoulingModel model = FoulingModel.of(FoulingFit.of(visits).coefficients()).orElseThrow();
    FoulingScan scan =
        FoulingScan.of(
            visits,
            model,
            new ScanSettings(
                REPLICATES, FoulingScan.SEED, 1, FoulingScan.MOST_CLUSTERS, FoulingScan.LEVEL));
    assertEquals(scan.clusters(), found.clusters());
    assertEquals(scan.members(), found.members());
    assertEquals(scan.row(), found.scan());
  }

  /** Order of arrival decides nothing, whichever way one looks. */
  @Test
  void theOrderOfTheRowsDecidesNothing() {
    List<AssemblyRows> shuffled = new ArrayList<>(TOWN);
    Collections.shuffle(shuffled, new Random(8));
    ExplorationChoice permuted =
        new ExplorationChoice(ZoneShape.SUBSETS, null, 100, false, true, null, null, 1);
    for (ExplorationChoice choice : List.of(by(ZoneShape.PIPES), permuted)) {
      Exploration here = look(TOWN, choice);
      Exploration there = look(shuffled, choice);
      assertEquals(here.clusters(), there.clusters());
      assertEquals(here.members(), there.members());
      assertEquals(here.outlines(), there.outlines());
    }
  }

  /** A closed valve in the middle of the thin cluster: no zone reaches across. */
  @Test
  void nothingReachesAcrossAClosedValve() {
    double[] valve = {
      ThinTown.WEST + 6.5 * ThinTown.EAST_STEP, ThinTown.SOUTH + 3 * ThinTown.NORTH_STEP + 0.0001
    };
    double[] farAway = {ThinTown.WEST, ThinTown.SOUTH - 0.1};
    ExplorationChoice choice =
        new ExplorationChoice(
            ZoneShape.PIPES, pipes(List.of(valve, farAway)), 100, false, false, null, null, 1);
    Exploration found = look(TOWN, choice);
    Set<String> east = new TreeSet<>(members(found));
    east.removeIf(site -> Integer.parseInt(site.substring(4)) < 7);
    assertTrue(east.equals(members(found)) || east.isEmpty(), members(found).toString());
    // The eastern eight sites of the street hang on nothing else.
    assertEquals(List.of(97, 8), found.partSites());
    String notes = notes(found);
    assertTrue(notes.contains("1 closed valve (1 more are too far"), notes);
    assertTrue(notes.contains("on 2 parts that water does not pass between, with 97, 8"), notes);
  }

  /** Valves that cut every site off from every other leave zones of one site, and say so. */
  @Test
  void whereValvesCutEverythingOffZonesAreSingleSites() {
    List<double[]> valves = new ArrayList<>();
    for (int row = 0; row < ThinTown.ROWS; row++) {
      for (int column = 0; column < ThinTown.COLUMNS; column++) {
        valves.add(
            new double[] {
              ThinTown.WEST + (column - 0.5) * ThinTown.EAST_STEP,
              ThinTown.SOUTH + row * ThinTown.NORTH_STEP + 0.0001
            });
      }
    }
    Exploration found =
        look(
            TOWN,
            new ExplorationChoice(ZoneShape.PIPES, pipes(valves), 100, true, false, null, null, 1));
    assertEquals(105, found.partSites().size());
    assertTrue(found.clusters().stream().allMatch(c -> c.sites() == 1));
    assertTrue(notes(found).contains("105 parts"), notes(found));
  }

  /** The northern three streets have no main: their sites are left out, counted and named. */
  @Test
  void sitesFarFromEveryPipeAreLeftOutAndNamed() {
    List<double[][]> mains = ThinTown.mains().subList(0, 4);
    Exploration found =
        look(
            TOWN,
            new ExplorationChoice(
                ZoneShape.PIPES,
                new PipeLines(mains, 2, List.of(), 3),
                50,
                false,
                false,
                null,
                null,
                1));
    assertEquals(60, found.scan().sites());
    String notes = notes(found);
    assertTrue(
        notes.contains("to 45 sites farther than 50 m from every open pipe (S04-00, S04-01"),
        notes);
    assertTrue(notes.contains("4 lines open"), notes);
    assertTrue(notes.contains("2 closed, 0 closed valves, 3 features passed over"), notes);
    Exploration none =
        look(
            TOWN,
            new ExplorationChoice(
                ZoneShape.PIPES, pipes(List.of()), 1, false, false, null, null, 1));
    String words = String.join("\n", ExplorationWords.answer(none));
    assertTrue(
        words.contains(
            "none of the 105 sites lies within 1 m of an open pipe, the nearest is 11 m"),
        words);
    assertEquals(List.of(), none.clusters());
  }

  @Test
  void sitesWithoutCoordinatesAreCountedAndNamed() {
    List<AssemblyRows> rows = new ArrayList<>(TOWN);
    rows.add(
        new MadeRows("AX", "X-lost", null, null, "DC")
            .round("2021-05-01", 300, null)
            .round("2022-05-01", 365, "FOULING")
            .rows());
    for (ZoneShape shape : ZoneShape.values()) {
      String notes = notes(Exploration.of(rows, by(shape), 9, number -> {}));
      assertTrue(
          notes.contains("2 visits (1 with fouling) to 1 site without coordinates (X-lost)"),
          notes);
    }
  }

  /**
   * Dates before installation: no time at risk reaches from a pass before it to a test after it, so
   * that test is no visit, and is counted as one without an earlier pass. What was tested twice
   * before keeps its time between the two: the report is flagged, and the result stays a result.
   */
  @Test
  void noExposureReachesAcrossAnInstallation() {
    Story story =
        new Story()
            .site("2017-01-01", null, "Z1")
            .test("t1", "2019-05-01", 1, Phase.AS_FOUND, dc("1.6", "1.5"))
            .test("t2", "2020-05-01", 1, Phase.AS_FOUND, dc("1.6", "1.5"))
            .installed("2021-06-01", AssemblyType.DC)
            .test("t3", "2022-05-01", 1, Phase.AS_FOUND, dc("1.6", "1.5"))
            .test("t4", "2023-05-01", 1, Phase.AS_FOUND, dc("1.6", "1.5"));
    List<AssemblyRows> rows = BatchTables.assemblies(story.events(), AcceptanceCriteria.shipped());
    List<FoulingVisit> visits = FoulingVisits.of(Members.of(rows)).visits();
    assertEquals(
        List.of(LocalDate.of(2020, 5, 1), LocalDate.of(2023, 5, 1)),
        visits.stream().map(FoulingVisit::day).toList());
    assertEquals(List.of(366L, 365L), visits.stream().map(FoulingVisit::exposureDays).toList());
    assertEquals(
        2,
        rows.get(0).findings().stream()
            .filter(f -> f.toString().contains("test before installation"))
            .count());
    Exploration found = look(rows, by(ZoneShape.CIRCLES));
    assertEquals(2, found.roundsWithoutPass());
    assertEquals(List.of(), found.clusters());
  }

  /** Sites that were not tested in a time are in no cluster of that time. */
  @Test
  void aZoneWithNoTestsIsNoCluster() {
    List<AssemblyRows> rows = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      MadeRows made =
          new MadeRows("A%02d".formatted(i), "S%02d".formatted(i), 37.0, -140 + .01 * i, "DC");
      boolean early = i < 20;
      made.round(early ? "2020-05-01" : "2022-05-01", 365, i % 4 == 0 ? "FOULING" : null);
      rows.add(made.rows());
    }
    for (ZoneShape shape : List.of(ZoneShape.CIRCLES, ZoneShape.ELLIPSES, ZoneShape.SUBSETS)) {
      Exploration found = look(rows, by(shape));
      assertFalse(found.clusters().isEmpty(), shape.toString());
      for (FoulingClusterMemberRow m : found.members()) {
        FoulingClusterRow own = found.clusters().get(m.number() - 1);
        assertTrue(m.visits() > 0, m.toString());
        int year = Integer.parseInt(m.siteId().substring(1)) < 20 ? 2020 : 2022;
        assertTrue(
            own.firstDay().getYear() <= year && own.lastDay().getYear() >= year, m.toString());
      }
    }
  }

  @Test
  void timesDealtOutAnewCarryTheWarningAndAddUp() {
    Exploration found =
        look(
            TOWN,
            new ExplorationChoice(
                ZoneShape.PIPES, pipes(List.of()), 100, false, true, null, null, 1));
    assertTrue(ExplorationWords.answer(found).get(0).startsWith("WARNING: Tests follow a route"));
    assertTrue(notes(found).contains("Caution: Tests follow a route"));
    FoulingClusterRow first = found.clusters().get(0);
    List<FoulingClusterMemberRow> own =
        found.members().stream().filter(m -> m.number() == 1).toList();
    assertEquals(first.cases(), own.stream().mapToInt(m -> m.cases()).sum());
    assertEquals(first.expected(), own.stream().mapToDouble(m -> m.expected()).sum(), 1e-9);
    // The whole time can hold no more than itself.
    assertTrue(found.clusters().stream().noneMatch(c -> c.cases() == 0));
    assertFalse(
        ExplorationWords.answer(look(TOWN, by(ZoneShape.CIRCLES))).get(0).contains("WARNING"));
  }

  @Test
  void looksShareTheFivePercentOut() {
    ExplorationChoice ten =
        new ExplorationChoice(ZoneShape.CIRCLES, null, 100, false, false, null, null, 10);
    Exploration found = look(TOWN, ten);
    assertEquals(.005, ten.level(), 1e-12);
    // With 99 replicates no p-value that they count is at most .005.
    assertFalse(found.isBeyondChance());
    String notes = notes(found);
    assertTrue(notes.contains("shared out among 10 looks: p at most 0.005"), notes);
    // 1 - .95^8 = .3366
    assertTrue(notes.contains("8 separate looks at 5 % find something in about 34 %"), notes);
  }

  @Test
  void daysCanBeChosen() {
    ExplorationChoice early =
        new ExplorationChoice(
            ZoneShape.CIRCLES, null, 100, false, false, null, LocalDate.of(2021, 12, 31), 1);
    Exploration found = look(TOWN, early);
    assertEquals(210, found.scan().visits());
    assertEquals(210, found.visitsOutside());
    assertFalse(found.isBeyondChance());
    assertTrue(notes(found).contains("210 visits on other days"), notes(found));
    assertTrue(ExplorationWords.title(early).endsWith("by circles, until 2021-12-31?"));
  }

  @Test
  void overTheWholeTimeOnlyThePlaceIsLookedAt() {
    Exploration found =
        look(TOWN, new ExplorationChoice(ZoneShape.CIRCLES, null, 100, true, false, null, null, 1));
    assertTrue(notes(found).contains("over the whole time only"), notes(found));
    // From the first to the last quarter in which its sites were visited.
    LocalDate first = found.clusters().get(0).firstDay();
    LocalDate last = found.clusters().get(0).lastDay();
    assertTrue(first.getYear() == 2020 && last.getYear() == 2023, first + " to " + last);
    assertTrue(ExplorationWords.title(found.choice()).startsWith("Exploration: where did"));
  }

  @Test
  void saysWhyThereIsNothing() {
    Exploration empty = look(List.of(), by(ZoneShape.ELLIPSES));
    assertTrue(
        ExplorationWords.answer(empty).get(0).startsWith("Not identified: there is no routine"));
    assertFalse(notes(empty).contains("Looked at"));
    List<AssemblyRows> few =
        List.of(
            new MadeRows("A1", "S1", 37.0, -140.0, "DC").round("2021-05-01", 300, "FOULING").rows(),
            new MadeRows("A2", "S2", 37.1, -140.0, "DC").round("2021-05-01", 300, null).rows());
    for (ZoneShape shape : ZoneShape.values()) {
      ExplorationChoice choice =
          new ExplorationChoice(
              shape,
              shape == ZoneShape.PIPES ? pipes(List.of()) : null,
              10_000,
              false,
              false,
              null,
              null,
              1);
      assertTrue(
          ExplorationWords.answer(look(few, choice)).get(0).contains("a scan needs 5"),
          shape + ": " + ExplorationWords.answer(look(few, choice)));
    }
    Exploration oneDay =
        look(few, new ExplorationChoice(ZoneShape.CIRCLES, null, 100, false, true, null, null, 1));
    assertTrue(ExplorationWords.answer(oneDay).get(1).contains("no times to deal out anew"));
  }

  @Test
  void whatMakesNoSenseIsRefusedInWords() {
    refused("needs the pipes", ZoneShape.PIPES, null, 100, false, false, 1);
    refused("for the shape pipes only", ZoneShape.CIRCLES, pipes(List.of()), 100, false, false, 1);
    refused("metres", ZoneShape.PIPES, pipes(List.of()), 0, false, false, 1);
    refused("metres", ZoneShape.PIPES, pipes(List.of()), Double.NaN, false, false, 1);
    refused("only the place is looked at", ZoneShape.CIRCLES, null, 100, true, true, 1);
    refused("from 1 to 50", ZoneShape.CIRCLES, null, 100, false, false, 0);
    LocalDate day = LocalDate.of(2020, 1, 2);
    IllegalArgumentException e =
        assertThrows(
            IllegalArgumentException.class,
            () ->
                new ExplorationChoice(
                    ZoneShape.CIRCLES, null, 100, false, false, day, day.minusDays(1), 1));
    assertTrue(e.getMessage().contains("the last day is before the first"));
  }

  private static void refused(
      String words,
      ZoneShape shape,
      PipeLines pipes,
      double within,
      boolean whole,
      boolean permuted,
      int looks) {
    IllegalArgumentException e =
        assertThrows(
            IllegalArgumentException.class,
            () -> new ExplorationChoice(shape, pipes, within, whole, permuted, null, null, looks));
    assertTrue(e.getMessage().contains(words), e.getMessage());
  }
}
