package sealspan.study.fouling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import sealspan.study.Members;
import sealspan.table.AssemblyRows;

class FoulingVisitsTest {
  private static MadeRows dc(String id, String site) {
    return new MadeRows(id, site, 37.0, -140.0, "DC");
  }

  private static FoulingFailure only(MadeRows made) {
    return FoulingVisits.of(Members.of(List.of(made.rows()))).visits().get(0).outcome();
  }

  @Test
  void theClassOfTheFailureDecides() {
    assertEquals(FoulingFailure.FOULED, only(dc("A", "S").round("2020-05-01", 300, "FOULING")));
    assertEquals(FoulingFailure.NOT_FOULED, only(dc("A", "S").round("2020-05-01", 300, "DAMAGE")));
    assertEquals(
        FoulingFailure.UNCLASSIFIED, only(dc("A", "S").round("2020-05-01", 300, "UNCLASSIFIED")));
    assertEquals(
        FoulingFailure.UNCLASSIFIED, only(dc("A", "S").round("2020-05-01", 300, true, null, true)));
    assertEquals(FoulingFailure.NOT_FOULED, only(dc("A", "S").round("2020-05-01", 300, null)));
  }

  /** By hand: two assemblies of a site on one day are one visit, whichever day the other has. */
  @Test
  void roundsOfASiteOnOneDayAreOneVisit() {
    AssemblyRows a =
        dc("A", "S").round("2020-05-01", 300, null).round("2021-05-02", 366, null).rows();
    AssemblyRows b =
        new MadeRows("B", "S", null, null, "RP").round("2020-05-01", 200, "FOULING").rows();
    FoulingVisits all = FoulingVisits.of(Members.of(List.of(b, a)));
    assertEquals(2, all.visits().size());
    assertEquals(3, all.rounds());
    assertEquals(1, all.foulingRounds());
    assertEquals(
        new FoulingVisit(
            LocalDate.parse("2020-05-01"),
            "S",
            "A",
            "Z1",
            37.0,
            -140.0,
            FoulingVisit.SEVERAL_TYPES,
            2,
            500,
            FoulingFailure.FOULED),
        all.visits().get(0));
    assertEquals("DC", all.visits().get(1).type());
  }

  @Test
  void whatHasNoExposureOrDoesNotCountIsNoVisit() {
    MadeRows made =
        dc("A", "S")
            .round("2019-05-01", null, "FOULING")
            .round("2019-06-01", 0, "FOULING")
            .round("2020-05-01", 300, true, "FOULING", false);
    assertEquals(
        new FoulingVisits(List.of(), 0, 0, 0, 0),
        FoulingVisits.of(Members.of(List.of(made.rows()))));
  }

  @Test
  void anUnclassifiedFailureLeavesTheVisitOutUnlessAnotherIsFouling() {
    AssemblyRows a = dc("A", "S").round("2020-05-01", 300, "UNCLASSIFIED").rows();
    AssemblyRows b = dc("B", "S").round("2020-05-01", 300, "FOULING").rows();
    assertEquals(List.of(), FoulingVisits.of(Members.of(List.of(a))).classified());
    FoulingVisits both = FoulingVisits.of(Members.of(List.of(a, b)));
    assertEquals(1, both.classified().size());
    assertTrue(both.classified().get(0).fouled());
    assertEquals(1, both.unclassifiedRounds());
    assertEquals(2, both.failedRounds());
  }

  @Test
  void withoutASiteTheAssemblyStandsForIt() {
    AssemblyRows a = dc("A", null).round("2020-05-01", 300, null).rows();
    AssemblyRows b = dc("B", null).round("2020-05-01", 300, null).rows();
    List<FoulingVisit> visits = FoulingVisits.of(Members.of(List.of(a, b))).visits();
    assertEquals(List.of("assembly A", "assembly B"), visits.stream().map(v -> v.place()).toList());
    assertNull(visits.get(0).siteId());
    assertFalse(visits.get(0).hasPlace());
  }

  @Test
  void theOrderOfAssembliesDecidesNothing() {
    List<AssemblyRows> rows =
        new java.util.ArrayList<>(
            List.of(
                dc("A", "S").round("2020-05-01", 300, null).rows(),
                dc("B", "S").round("2020-05-01", 200, "FOULING").rows(),
                dc("C", "T").round("2020-05-01", 200, "DAMAGE").rows()));
    FoulingVisits once = FoulingVisits.of(Members.of(rows));
    Collections.reverse(rows);
    assertEquals(once, FoulingVisits.of(Members.of(rows)));
  }
}
