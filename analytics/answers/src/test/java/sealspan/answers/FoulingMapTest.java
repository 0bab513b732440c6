package sealspan.answers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.StringReader;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;
import sealspan.answers.chart.FoulingMapSvg;
import sealspan.study.fouling.ClusterOutline;

/** Maps of clusters: RFC 7946 holds, and the picture can be read. */
class FoulingMapTest {
  @TempDir static Path folder;
  private static Answers answers;

  @BeforeAll
  static void publish() throws Exception {
    HandMade.publishedIn(folder);
    answers = Answers.open(folder);
  }

  @AfterAll
  static void close() {
    answers.close();
  }

  private static FoulingMap all() {
    return answers.foulingMap(answers.ask(Questions.named("clusters"), Map.of()), null);
  }

  private static FoulingMap first() {
    return answers.foulingMap(answers.ask(Questions.named("cluster"), Map.of("number", "1")), 1L);
  }

  @Test
  void holdsTheClustersTheirSitesFindingsAndWater() {
    assertEquals(2, all().clusters().size());
    assertEquals(1, first().clusters().size());
    assertEquals(List.of("S1", "S2"), first().members().stream().map(m -> m.siteId()).toList());
    assertEquals(
        List.of(new FoulingMap.Finding(1, LocalDate.parse("2023-04-05"), 1)), first().findings());
    assertEquals(List.of("MAIN_BREAK"), first().water().stream().map(w -> w.kind()).toList());
  }

  @Test
  void theGeoJsonIsOneCollectionOfAllFeatures() throws Exception {
    String text = FoulingGeoJson.of(all());
    assertTrue(text.contains("\"type\" : \"FeatureCollection\""), text);
    assertTrue(text.contains("\"relative_risk\" : 7.4"), text);
    assertTrue(text.contains("[ -139.99, 37.01 ]"), "longitude comes first");
    int features = 0;
    try (JsonParser json = new JsonFactory().createParser(text)) {
      for (JsonToken token = json.nextToken(); token != null; token = json.nextToken()) {
        features += token == JsonToken.VALUE_STRING && "Feature".equals(json.getText()) ? 1 : 0;
      }
    }
    assertEquals(5, features);
  }

  private static FoulingMap.Cluster circle(double latitude, double longitude, double radiusKm) {
    return new FoulingMap.Cluster(
        1,
        latitude,
        longitude,
        new ClusterOutline.Circle(radiusKm),
        LocalDate.EPOCH,
        LocalDate.EPOCH,
        1,
        1,
        1,
        1,
        null,
        1,
        "MONTE_CARLO",
        true);
  }

  /** RFC 7946, 3.1.6: exterior rings run anticlockwise, so their signed area is positive. */
  @Test
  void ringsRunAnticlockwiseAndAreRound() {
    List<double[]> ring = FoulingGeoJson.parts(circle(60, 10, 5)).get(0);
    assertTrue(area(ring) > 0);
    for (double[] point : ring) {
      // A kilometre is 0.0089932 degrees of latitude, and twice that of longitude at 60 degrees.
      double km = Math.hypot((point[0] - 10) * 0.5 / 0.0089932, (point[1] - 60) / 0.0089932);
      assertEquals(5, km, 1e-3);
    }
    assertTrue(area(FoulingGeoJson.parts(circle(60, 10, 0)).get(0)) > 0, "one site has a circle");
  }

  /**
   * Section 3.1.9: what crosses 180 degrees is cut there; the halves have the area of the whole.
   */
  @Test
  void whatCrossesTheDateLineIsCut() {
    double whole = area(FoulingGeoJson.parts(circle(0, 10, 20)).get(0));
    for (double at : new double[] {179.95, -179.95, 180, -180}) {
      List<List<double[]>> parts = FoulingGeoJson.parts(circle(0, at, 20));
      assertEquals(2, parts.size(), "at " + at);
      double sum = 0;
      for (List<double[]> part : parts) {
        assertTrue(area(part) > 0);
        sum += area(part);
        assertTrue(part.stream().allMatch(p -> p[0] >= -180 && p[0] <= 180), "at " + at);
      }
      assertEquals(whole, sum, 1e-9);
    }
  }

  /** Shoelace formula, square degrees. */
  private static double area(List<double[]> ring) {
    double sum = 0;
    for (int i = 0; i < ring.size(); i++) {
      double[] a = ring.get(i);
      double[] b = ring.get((i + 1) % ring.size());
      sum += a[0] * b[1] - b[0] * a[1];
    }
    return sum / 2;
  }

  @Test
  void thePictureIsXmlWithEveryClusterInIt() throws Exception {
    String svg = FoulingMapSvg.of(all());
    Document document =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new InputSource(new StringReader(svg)));
    List<String> texts = new ArrayList<>();
    for (int i = 0; i < document.getElementsByTagName("text").getLength(); i++) {
      texts.add(document.getElementsByTagName("text").item(i).getTextContent());
    }
    assertTrue(texts.contains("cluster 1") && texts.contains("cluster 2"), texts.toString());
    assertTrue(texts.contains("water of its zones"), texts.toString());
    assertTrue(texts.stream().anyMatch(t -> t.endsWith(" km")), texts.toString());
    assertTrue(texts.stream().anyMatch(t -> t.startsWith("n = 230 site visits")));
    assertFalse(svg.contains("NaN"));
  }

  @Test
  void withoutAnythingThereIsAPictureThatSaysSo() {
    Answer answer = answers.ask(Questions.named("clusters"), Map.of());
    FoulingMap none =
        new FoulingMap(answer, List.of(), List.of(), List.of(), List.of(), List.of(), List.of());
    assertTrue(FoulingMapSvg.of(none).contains("so there is no map"));
    assertTrue(FoulingGeoJson.of(none).contains("\"features\" : [ ]"));
  }
}
