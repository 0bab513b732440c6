package sealspan.stats.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sealspan.stats.Reference;

/**
 * Upstate New York leukaemia and North Carolina sudden infant deaths, both CC0; expected values by
 * a plain scan in R 4.2.2 (reference/11_scan_spatial/SOURCE.txt). Further clusters there are the
 * best of their centres, do not overlap earlier ones, and are scored in the whole data.
 */
class ScanReferenceTest {
  private static final Reference EXPECTED = Reference.read("11_scan_spatial/expected.csv");

  @Test
  void findsTheClustersOfNewYork() {
    for (String bound : List.of("0.1", "0.5")) {
      List<Zone> found =
          clusters("input_nydata_cc0.csv", "population", "cases", Double.parseDouble(bound), 4);
      for (int i = 0; i < 4; i++) {
        String name = "CC0 nydata XY ub " + bound;
        assertEquals(
            EXPECTED.value(name + " LLR " + (i + 1)), found.get(i).score(), 1e-6, name + i);
        assertEquals(EXPECTED.value(name + " n " + (i + 1)), found.get(i).places().length);
      }
    }
  }

  @Test
  void findsTheClustersOfNorthCarolinaWithTheirMembers() {
    List<Map<String, String>> rows = Reference.read("11_scan_spatial/input_sids.csv").rows();
    for (String year : List.of("74", "79")) {
      List<Zone> found = clusters("input_sids.csv", "BIR" + year, "SID" + year, 0.5, 4);
      for (int i = 0; i < 4; i++) {
        String name = "SIDS " + year + " cluster " + (i + 1);
        Zone zone = found.get(i);
        assertEquals(EXPECTED.value(name + " LLR"), zone.score(), 1e-6, name);
        assertEquals(EXPECTED.value(name + " obs/exp"), zone.observedOverExpected(), 1e-6, name);
        List<String> counties =
            Arrays.stream(zone.places()).mapToObj(p -> rows.get(p).get("county")).sorted().toList();
        assertEquals(
            EXPECTED.where("quantity", name + " counties").rows().get(0).get("value"),
            String.join(" ", counties));
      }
    }
  }

  private static List<Zone> clusters(
      String file, String population, String cases, double bound, int number) {
    List<Map<String, String>> rows = Reference.read("11_scan_spatial/" + file).rows();
    double[] x = column(rows, "x");
    double[] y = column(rows, "y");
    int[] counts = Arrays.stream(column(rows, cases)).mapToInt(c -> (int) c).toArray();
    double[] people = column(rows, population);
    CaseGrid grid = CaseGrid.ofPopulation(counts, people);
    List<ZoneOrder> orders =
        PlanarZones.circles(x, y, grid.expected(), new ZoneLimits(bound, x.length));
    List<Zone> bestOfCentres = new ArrayList<>();
    for (ZoneOrder order : orders) {
      Zone zone = new ZoneSearch(grid, Window.whole(1), List.of(order), 0).best();
      if (zone != null) {
        bestOfCentres.add(zone);
      }
    }
    bestOfCentres.sort(Comparator.comparingDouble(Zone::score).reversed());
    Zone best = new ZoneSearch(grid, Window.whole(1), orders, 0).best();
    assertEquals(best.score(), bestOfCentres.get(0).score());
    boolean[] taken = new boolean[x.length];
    List<Zone> found = new ArrayList<>();
    for (Zone zone : bestOfCentres) {
      if (found.size() < number && Arrays.stream(zone.places()).noneMatch(p -> taken[p])) {
        found.add(zone);
        Arrays.stream(zone.places()).forEach(p -> taken[p] = true);
      }
    }
    return found;
  }

  private static double[] column(List<Map<String, String>> rows, String name) {
    return rows.stream().mapToDouble(r -> Double.parseDouble(r.get(name))).toArray();
  }

  @Test
  void givesNoZoneWhereThereIsNoCaseOrOneArea() {
    assertEquals(0, EXPECTED.value("all zero cases LLR"));
    assertEquals(0, EXPECTED.value("single area LLR"));
    assertNull(best(new int[3], new double[] {5, 5, 5}, new double[] {0, 1, 2}, 1));
    assertNull(best(new int[] {4}, new double[] {5}, new double[] {0}, 1));
  }

  /** By hand: c log(c/m) + (C-c) log((C-c)/(C-m)); the first value from methods, checked in R. */
  @Test
  void scoresAsByHand() {
    assertEquals(4.415688716, new PoissonRatio(200).at(12, 4.5), 1e-9);
    assertEquals(5 * Math.log(2.5), new PoissonRatio(5).at(5, 2), 1e-12);
    assertEquals(4.581454, new PoissonRatio(5).at(5, 2), 1e-6);
    assertEquals(0, new PoissonRatio(200).at(4, 4.5));
    assertEquals(0, new PoissonRatio(0).at(0, 1));
  }

  private static Zone best(int[] cases, double[] people, double[] x, double bound) {
    CaseGrid grid = CaseGrid.ofPopulation(cases, people);
    List<ZoneOrder> orders =
        PlanarZones.circles(x, new double[x.length], people, new ZoneLimits(bound, cases.length));
    return new ZoneSearch(grid, Window.whole(1), orders, 0).best();
  }
}
