package sealspan.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.event.LoggedEvent;
import sealspan.event.WaterDisturbed;
import sealspan.study.fouling.FoulingTables;
import sealspan.study.fouling.FoulingVisits;
import sealspan.study.fouling.WaterEffects;
import sealspan.study.practice.PracticeFleet;
import sealspan.study.practice.PracticeParameters;
import sealspan.study.practice.PracticeTown;
import sealspan.study.practice.TrueFouling;
import sealspan.table.AssemblyRows;
import sealspan.table.Bundle;
import sealspan.table.FoulingClusterMemberRow;
import sealspan.table.FoulingClusterRow;
import sealspan.table.FoulingRows;
import sealspan.table.ZoneRows;

/** A main break put into a practice fleet is found again, where and when it was. */
class FoulingPracticeTest {
  private static final LocalDate BREAK = LocalDate.of(2019, 3, 1);
  private static final double EAST_M = 1500;
  private static final double NORTH_M = 1500;
  private static final List<AssemblyRows> ASSEMBLIES = new ArrayList<>();
  private static final List<ZoneRows> ZONES = new ArrayList<>();
  private static FoulingRows rows;

  @BeforeAll
  static void fit() {
    TrueFouling fouling = new TrueFouling(0.01, 0, 0, 0, 12, 330, 2200, 0, 1, 0);
    PracticeTown town =
        PracticeTown.usual()
            .withInjected(
                List.of(
                    new PracticeTown.Injected(
                        0, BREAK, WaterDisturbed.Kind.MAIN_BREAK, EAST_M, NORTH_M)));
    PracticeParameters parameters = PracticeParameters.usual(77, 700).with(town).with(fouling);
    List<LoggedEvent> events = new PracticeFleet(parameters).events().toList();
    for (Bundle bundle : BatchTables.of(events, List.of(), AcceptanceCriteria.shipped(), null)) {
      if (bundle instanceof AssemblyRows assembly) {
        ASSEMBLIES.add(assembly);
      } else if (bundle instanceof ZoneRows zone) {
        ZONES.add(zone);
      }
    }
    rows =
        FoulingTables.of(Members.of(ASSEMBLIES), ZONES, new FitCut("cut", "0:1", Instant.EPOCH, 1));
  }

  @Test
  void theBreakIsFoundWhereAndWhenItWas() {
    FoulingClusterRow first = rows.clusters().get(0);
    assertTrue(first.significant(), first.toString());
    // 1.5 km is 0.0135 degrees of latitude, and 0.0169 of longitude at 37 degrees north.
    assertEquals(37.0 + 0.0135, first.latitude(), 0.02, first.toString());
    assertEquals(-140.0 + 0.0169, first.longitude(), 0.025, first.toString());
    assertTrue(first.lastDay().isAfter(BREAK), first.toString());
    assertTrue(first.firstDay().isBefore(BREAK.plusDays(330 + 400)), first.toString());
    List<FoulingClusterMemberRow> own =
        rows.members().stream().filter(m -> m.number() == 1).toList();
    long inZone = own.stream().filter(m -> "Z01".equals(m.zoneId())).count();
    assertTrue(inZone > 0.8 * own.size(), inZone + " of " + own.size());
  }

  @Test
  void whatIsNotNeededIsNotMissed() {
    Members all = Members.of(ASSEMBLIES);
    Members needed = Members.of(ASSEMBLIES.stream().map(FoulingTables::needed).toList());
    assertEquals(FoulingVisits.of(all), FoulingVisits.of(needed));
    assertEquals(WaterEffects.of(all, ZONES), WaterEffects.of(needed, ZONES));
  }

  @Test
  void countsAddUp() {
    assertEquals(
        rows.fit().visits() - rows.fit().unclassifiedVisits(),
        rows.scan().visits() + rows.scan().visitsWithoutPlace());
    assertTrue(rows.fit().foulingVisits() > 50, rows.fit().toString());
    assertTrue(
        rows.fit().foulingRounds() + rows.fit().unclassifiedRounds() <= rows.fit().failedRounds());
    assertEquals("REGRESSION", rows.fit().method());
  }
}
