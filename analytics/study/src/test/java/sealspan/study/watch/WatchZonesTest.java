package sealspan.study.watch;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class WatchZonesTest {
  private static WatchZones zones(WatchSite... sites) {
    return new WatchZones(WatchModelTest.model("c", List.of(sites), 100, -3));
  }

  private static List<String> names(WatchZones zones, String place, String zone) {
    WatchedOutcome test =
        new WatchedOutcome(LocalDate.of(2026, 1, 1), place, zone, "DC", 365, false);
    return Arrays.stream(zones.holding(test)).mapToObj(z -> zones.zone(z).name()).toList();
  }

  /** Ten sites nearly a km apart on a meridian (a degree is 111.19 km), by hand. */
  @Test
  void circlesOfTheNearestAndWaterZones() {
    List<WatchSite> sites = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      sites.add(new WatchSite("S" + i, i < 3 ? "Z1" : "Z2", 50 + i / 111.3, 1.0));
    }
    WatchZones zones = zones(sites.toArray(WatchSite[]::new));
    // The five nearest of S2 are those of S1 too, and are watched once.
    // From S0 the nearest five would be S0 to S4, but S4 is 4 km away.
    assertTrue(names(zones, "S3", "Z2").contains("circle 4 S0"));
    assertTrue(names(zones, "S4", "Z2").containsAll(List.of("circle 5 S4", "circle 5 S1")));
    assertEquals(List.of("circle 1 S0", "circle 4 S0"), names(zones, "S0", null).subList(0, 2));
    assertTrue(names(zones, "S0", null).contains("zone Z1"));
    assertEquals(List.of("zone Z2"), names(zones, "new", "Z2"));
    assertEquals(List.of(), names(zones, "new", "Z9"));
    assertEquals(1, Arrays.stream(zones.weights()).sum(), 1e-12);
    WatchZone circle = zones.zone(1);
    assertEquals("4 sites within 3 km of site S0", circle.words());
    assertEquals(3 * 111.195 / 111.3, circle.radiusKm(), 1e-4);
  }

  @Test
  void hardPlaces() {
    WatchZones none = zones();
    assertEquals(0, none.size());
    WatchZones one = zones(new WatchSite("S", null, 50.0, 1.0));
    assertEquals(1, one.size());
    assertArrayEquals(new double[] {1}, one.weights());
    WatchZones atOnePoint =
        zones(
            new WatchSite("A", null, 50.0, 1.0),
            new WatchSite("B", null, 50.0, 1.0),
            new WatchSite("C", null, 50.0, 1.0));
    assertEquals(List.of("circle 3 A"), names(atOnePoint, "B", null));
    WatchZones unplaced =
        zones(new WatchSite("A", "Z", null, null), new WatchSite(" asm", null, null, null));
    assertEquals(List.of("circle 1 A", "zone Z"), names(unplaced, "A", null));
    assertEquals(List.of("A", "asm"), unplaced.withoutPlace());
    assertEquals("site asm", unplaced.zone(0).words());
  }
}
