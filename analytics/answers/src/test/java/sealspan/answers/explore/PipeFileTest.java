package sealspan.answers.explore;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sealspan.answers.AnswersException;
import sealspan.study.fouling.PipeLines;

/** Pipes by RFC 7946, and what a person is told of files that are none. */
class PipeFileTest {
  private static final String LINE =
      "{\"type\":\"LineString\",\"coordinates\":[[-140,37],[-139.99,37.01]]}";

  @TempDir Path folder;

  private PipeLines read(String text) {
    return read(text, "closed");
  }

  private PipeLines read(String text, String property) {
    try {
      return PipeFile.read(Files.writeString(folder.resolve("pipes.geojson"), text), property);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static String feature(String geometry, String properties) {
    return "{\"type\":\"Feature\",\"geometry\":" + geometry + ",\"properties\":" + properties + "}";
  }

  private static String collection(String... features) {
    return "{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", features) + "]}";
  }

  private void refused(String text, String... words) {
    AnswersException e = assertThrows(AnswersException.class, () -> read(text));
    assertTrue(e.getMessage().contains("pipes.geojson"), e.getMessage());
    for (String word : words) {
      assertTrue(e.getMessage().contains(word), e.getMessage());
    }
  }

  @Test
  void readsLinesAndValves() {
    PipeLines pipes =
        read(
            collection(
                feature(LINE, "{\"closed\":false,\"main\":\"M1\"}"),
                feature(LINE, "null"),
                feature(LINE, "{\"closed\":\"Yes\"}"),
                feature(
                    "{\"type\":\"MultiLineString\",\"coordinates\":"
                        + "[[[1,2],[3,4],[5,6]],[[7,8,100],[9,10,101]]]}",
                    "{\"closed\":0}"),
                feature("{\"type\":\"Point\",\"coordinates\":[-140,37]}", "{\"closed\":1}"),
                feature("{\"type\":\"Point\",\"coordinates\":[-140,37]}", "{}"),
                feature("null", "{\"closed\":\"who knows\"}")));
    assertEquals(4, pipes.open().size());
    assertEquals(1, pipes.closedLines());
    assertEquals(1, pipes.closedValves().size());
    assertEquals(2, pipes.passedOver());
    // Longitude comes first (section 3.1.1); a third number is a height and is not read.
    assertArrayEquals(new double[] {-140, 37}, pipes.open().get(0)[0]);
    assertArrayEquals(new double[] {9, 10}, pipes.open().get(3)[1]);
  }

  /** Corners that differ by less than the rounding are one. */
  @Test
  void linesJoinThatWereDrawnToTheSameCorner() {
    PipeLines pipes =
        read(
            collection(
                feature("{\"type\":\"LineString\",\"coordinates\":[[0,0],[1.00000004,2]]}", "{}"),
                feature("{\"type\":\"LineString\",\"coordinates\":[[1,1.99999998],[3,3]]}", "{}")));
    assertArrayEquals(pipes.open().get(0)[1], pipes.open().get(1)[0]);
  }

  @Test
  void anotherPropertyCanTellWhatIsClosed() {
    String text =
        collection(
            feature(LINE, "{\"status\":\"OPEN\",\"closed\":\"sometimes\"}"),
            feature(LINE, "{\"status\":\"CLOSED\"}"));
    assertEquals(1, read(text, "status").closedLines());
    refused(text, "feature 1", "its property closed is \"sometimes\"", "yes or no");
    refused(
        collection(feature(LINE, "{}"), feature(LINE, "{\"closed\":[true]}")),
        "feature 2",
        "[true]");
  }

  @Test
  void oneFeatureIsAFileToo() {
    assertEquals(1, read(feature(LINE, "{}")).open().size());
  }

  @Test
  void whatIsNoGeoJsonIsRefused() throws IOException {
    refused("", "it is not GeoJSON");
    refused("[]", "it is not GeoJSON");
    refused("{\"a\":1}", "it is not GeoJSON");
    refused("{\"type\":\"FeatureCollection\",", "is not JSON (line 1");
    refused("lon,lat\n1,2\n", "is not JSON (line 1");
    refused(collection(feature(LINE, "{}")) + "{}", "is not JSON");
    refused(LINE, "it is a LineString; a FeatureCollection of lines is expected");
    refused("{\"type\":\"FeatureCollection\"}", "\"features\" is not an array");
    refused(collection("{\"type\":\"Pipe\"}"), "feature 1", "it is not a Feature");
    refused(collection("7"), "feature 1", "it is not a Feature");
    AnswersException e =
        assertThrows(
            AnswersException.class, () -> PipeFile.read(folder.resolve("none.json"), "closed"));
    assertTrue(e.getMessage().startsWith("There is no file "), e.getMessage());
    Files.createDirectory(folder.resolve("dir"));
    AnswersException dir =
        assertThrows(AnswersException.class, () -> PipeFile.read(folder.resolve("dir"), "closed"));
    assertTrue(dir.getMessage().contains("cannot be read"), dir.getMessage());
  }

  @Test
  void aFileWithoutOpenPipesIsRefused() {
    refused(collection(), "it has no LineString or MultiLineString feature");
    refused(
        collection(feature("{\"type\":\"Point\",\"coordinates\":[1,2]}", "{}")),
        "it has no LineString");
    refused(collection(feature("null", "{}")), "it has no LineString");
    refused(
        collection(feature(LINE, "{\"closed\":true}"), feature(LINE, "{\"closed\":true}")),
        "every one of its 2 pipes is closed");
  }

  @Test
  void wrongGeometriesAreNamedByTheirFeature() {
    refused(
        collection(feature(LINE, "{}"), feature("{\"type\":\"Polygon\",\"coordinates\":[]}", "{}")),
        "feature 2",
        "a Polygon",
        "Take it out");
    refused(collection(feature("{\"coordinates\":[]}", "{}")), "feature 1", "of no type");
    refused(
        collection(feature("{\"type\":\"LineString\",\"coordinates\":[[1,2]]}", "{}")),
        "feature 1",
        "needs at least two points and has 1");
    refused(
        collection(feature("{\"type\":\"LineString\",\"coordinates\":7}", "{}")),
        "coordinates are not an array");
    refused(
        collection(feature("{\"type\":\"LineString\",\"coordinates\":[[1,2],[\"3\",4]]}", "{}")),
        "[\"3\",4] is not two numbers");
    refused(
        collection(feature("{\"type\":\"MultiLineString\",\"coordinates\":[[1,2],[3,4]]}", "{}")),
        "feature 1",
        "the position 1 is not two numbers");
  }

  @Test
  void coordinatesOutOfRangeAreRefused() {
    for (String position :
        new String[] {"[181,0]", "[0,91]", "[3141592.6,1653589.7]", "[1e999,0]"}) {
      refused(
          collection(
              feature("{\"type\":\"LineString\",\"coordinates\":[[1,2]," + position + "]}", "{}")),
          "feature 1",
          "is no longitude from -180 to 180",
          "WGS84");
    }
  }

  @Test
  void anotherCoordinateSystemIsRefusedByItsName() {
    String features = ",\"features\":[" + feature(LINE, "{}") + "]}";
    for (String known :
        new String[] {"urn:ogc:def:crs:OGC:1.3:CRS84", "EPSG:4326", "urn:ogc:def:crs:EPSG::4326"}) {
      assertEquals(
          1,
          read("{\"type\":\"FeatureCollection\",\"crs\":{\"type\":\"name\",\"properties\":{"
                  + "\"name\":\""
                  + known
                  + "\"}}"
                  + features)
              .open()
              .size());
    }
    assertEquals(1, read("{\"type\":\"FeatureCollection\",\"crs\":null" + features).open().size());
    refused(
        "{\"type\":\"FeatureCollection\",\"crs\":{\"type\":\"name\",\"properties\":{"
            + "\"name\":\"urn:ogc:def:crs:EPSG::26913\"}}"
            + features,
        "its coordinates are in urn:ogc:def:crs:EPSG::26913",
        "Export it in WGS84");
    refused(
        "{\"type\":\"FeatureCollection\",\"crs\":{\"type\":\"link\"}" + features,
        "its coordinates are in {\"type\":\"link\"}");
  }
}
