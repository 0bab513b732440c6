package sealspan.ingest.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sealspan.event.WaterSampled;
import sealspan.event.WaterSampled.Detection;
import sealspan.ingest.validate.Problem.Fault;

/**
 * Water results in the columns of the Water Quality Portal. The names of the columns are those of
 * its physical/chemical result profile; every value is invented.
 */
class PortalSourceTest {
  private static final Path FILE = Path.of("src/test/resources/water/results-invented.csv");
  private static final StationZones ZONES =
      new StationZones(Map.of("INVENTED-1", "Z-EAST", "INVENTED-2", "Z-WEST"));

  @TempDir Path folder;

  private static WaterSampled result(Intaken in, String id) {
    return in.all(WaterSampled.class).stream()
        .filter(sample -> id.equals(sample.resultId()))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void resultsBecomeSamplesOfTheZoneOfTheirStation() throws Exception {
    Intaken in = Intaken.of(FILE, Mapping.NONE, ZONES);
    WaterSampled iron = result(in, "R-1");
    assertEquals("Z-EAST", iron.zoneId());
    assertEquals("Iron", iron.characteristic());
    assertEquals("Total", iron.fraction());
    assertEquals("0.120", iron.value());
    assertEquals("mg/l", iron.unit());
    assertEquals(Detection.MEASURED, iron.detection());
    assertEquals(615, iron.when().minuteOfDay());
    assertEquals("Etc/GMT+7", iron.when().timeZone());
    assertEquals("STORET", iron.providerId());
  }

  @Test
  void whatWasNotDetectedIsCensoredAndNotZero() throws Exception {
    Intaken in = Intaken.of(FILE, Mapping.NONE, ZONES);
    for (String id : List.of("R-2", "R-3", "R-4", "R-5", "R-6")) {
      assertNull(result(in, id).value(), id);
    }
    assertEquals(Detection.NOT_DETECTED, result(in, "R-2").detection());
    assertEquals("0.01", result(in, "R-2").detectionLimit());
    assertEquals("mg/l", result(in, "R-2").detectionLimitUnit());
    // A zero beside "Not Detected" is what a provider writes for nothing found.
    assertEquals(Detection.NOT_DETECTED, result(in, "R-3").detection());
    assertEquals(Detection.BELOW_QUANTIFICATION, result(in, "R-4").detection());
    // A limit written into the column of values.
    assertEquals(Detection.NOT_DETECTED, result(in, "R-5").detection());
    assertEquals("0.05", result(in, "R-5").detectionLimit());
    assertEquals("ug/l", result(in, "R-5").detectionLimitUnit());
    assertEquals(Detection.ABOVE_QUANTIFICATION, result(in, "R-6").detection());
  }

  @Test
  void unitsAndFractionsStayInTheWordsOfTheSource() throws Exception {
    Intaken in = Intaken.of(FILE, Mapping.NONE, ZONES);
    assertEquals("mg/l", result(in, "R-7").unit());
    assertEquals("mg/l CaCO3", result(in, "R-8").unit());
    assertEquals("Dissolved", result(in, "R-9").fraction());
    assertEquals("0.0012", result(in, "R-9").value());
  }

  @Test
  void whatIsNoResultOfOursIsLeftOutAndCounted() throws Exception {
    Intaken in = Intaken.of(FILE, Mapping.NONE, ZONES);
    assertEquals(
        Map.of(
            "quality-control sample",
            2L,
            "rejected by its provider",
            1L,
            "medium is not water",
            1L,
            "station in no water zone",
            1L,
            "neither a value nor a detection condition",
            1L),
        in.summary.leftOut());
  }

  @Test
  void aTextThatIsNoNumberIsSetAside() throws Exception {
    Intaken in = Intaken.of(FILE, Mapping.NONE, ZONES);
    assertEquals(Map.of(Fault.NOT_A_NUMBER, 1L), in.summary.rejectedByFault());
    assertEquals("ResultMeasureValue", in.rows.get(0).field());
    assertTrue(in.rows.get(0).reason().contains("trace amounts"));
  }

  @Test
  void columnsAreFoundByNameInAnyOrderAndNumber() throws Exception {
    String text =
        "ProviderName,Extra,ResultMeasureValue,CharacteristicName,ActivityStartDate,zone_id\n"
            + "NWIS,x,0.3,Iron,2025-01-05,Z-1\n";
    WaterSampled sample = Intaken.ofText(folder, "few.csv", text).only(WaterSampled.class);
    assertEquals("Z-1", sample.zoneId());
    assertEquals("0.3", sample.value());
    assertNull(sample.stationId());
    assertNull(sample.when().minuteOfDay());
  }

  @Test
  void withoutAZoneTheRowSaysWhatToDo() throws Exception {
    Intaken in = Intaken.of(FILE);
    assertEquals(0, in.events.size());
    assertTrue(in.rows.get(0).reason().contains("table of stations and zones"));
    Mapping constant = MappingFile.parse("{\"constants\": {\"zone_id\": \"Z-9\"}}", "test");
    assertEquals(
        "Z-9",
        Intaken.of(FILE, constant, StationZones.NONE).all(WaterSampled.class).get(0).zoneId());
  }

  @Test
  void aTableOfStationsIsRead() throws Exception {
    Path table =
        Intaken.write(folder, "stations.csv", "zone_id;station_id\nZ-EAST;INVENTED-1\n".getBytes());
    assertEquals(Map.of("INVENTED-1", "Z-EAST"), StationZones.read(table).zoneOfStation());
  }
}
