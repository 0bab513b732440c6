package sealspan.app.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.xml.sax.InputSource;

/**
 * Looking for clusters, as people type it, in an invented record of seven streets of fifteen sites
 * each, 300 m apart, tested yearly from 2019 to 2023. In 2022 grit is found at eleven sites in a
 * row of the fourth street; one visit in eleven finds some anywhere. Two more sites have no
 * coordinates.
 */
@Timeout(value = 6, unit = TimeUnit.MINUTES)
class LookForClustersTest {
  private static final int ROWS = 7;
  private static final int COLUMNS = 15;
  private static final double NORTH_STEP = 0.3 / 111.195;
  private static final double EAST_STEP = NORTH_STEP / Math.cos(Math.toRadians(37));
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir static Path data;
  @TempDir static Path files;

  @BeforeAll
  static void importTheRecord() throws IOException {
    List<String> lines = new ArrayList<>();
    lines.add(
        "assembly_id,type,size,known_since,site_id,latitude,longitude,date,report_number,"
            + "found_check1_psid,found_check2_psid,repair_check1_action,repair_check1_mechanism,"
            + "left_check1_psid,left_check2_psid");
    for (int row = 0; row < ROWS; row++) {
      for (int column = 0; column < COLUMNS; column++) {
        String at = (37 + row * NORTH_STEP) + "," + (-140 + column * EAST_STEP);
        for (int year = -1; year < 4; year++) {
          boolean together = year == 2 && row == 3 && column >= 2 && column < 13;
          boolean alone = year >= 0 && (row * COLUMNS + column + 11 * year) % 11 == 0;
          LocalDate day = LocalDate.of(2020 + year, 1 + (row * 5 + column * 7) % 12, 10);
          lines.add(visit(site(row, column), at, day, together || alone));
        }
      }
    }
    for (String lost : List.of("LOST-1", "LOST-2")) {
      lines.add(visit(lost, ",", LocalDate.of(2020, 5, 1), false));
      lines.add(visit(lost, ",", LocalDate.of(2021, 5, 1), true));
    }
    Path visits = Files.write(files.resolve("visits.csv"), lines);
    Typed typed = Typed.at(data, "import", visits.toString());
    assertEquals(ExitCode.DONE, typed.code(), typed.toString());
    assertEquals(ExitCode.DONE, Typed.at(data, "stop").code());
    Files.writeString(files.resolve("pipes.geojson"), pipes());
  }

  @AfterAll
  static void stop() {
    Typed.at(data, "stop");
  }

  private static String site(int row, int column) {
    return "S%02d-%02d".formatted(row, column);
  }

  private static String visit(String site, String at, LocalDate day, boolean fouled) {
    return "A-%1$s,DC,3/4,2018-01-01,%1$s,%2$s,%3$s,R-%1$s-%3$s,%4$s"
        .formatted(site, at, day, fouled ? "0.6,1.5,cleaned,debris,1.9,1.5" : "1.9,1.5,,,,");
  }

  /** A main along the west, and from it one along each street, 11 m north of its sites. */
  private static String pipes() {
    List<String> lines = new ArrayList<>();
    List<String> corners = new ArrayList<>();
    double west = -140 - EAST_STEP;
    for (int row = 0; row < ROWS; row++) {
      double latitude = 37 + row * NORTH_STEP + 0.0001;
      corners.add("[" + west + "," + latitude + "]");
      lines.add(
          line(
              "["
                  + west
                  + ","
                  + latitude
                  + "],["
                  + (-140 + 15 * EAST_STEP)
                  + ","
                  + latitude
                  + "]"));
    }
    lines.add(line(String.join(",", corners)));
    return "{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", lines) + "]}";
  }

  private static String line(String corners) {
    return "{\"type\":\"Feature\",\"properties\":{},\"geometry\":{\"type\":\"LineString\","
        + "\"coordinates\":["
        + corners
        + "]}}";
  }

  private static Typed look(String... words) {
    List<String> all = new ArrayList<>(List.of("look-for-clusters"));
    all.addAll(List.of(words));
    return Typed.at(data, all.toArray(String[]::new));
  }

  private static JsonNode json(String... words) throws IOException {
    List<String> all = new ArrayList<>(List.of(words));
    all.addAll(List.of("--format", "json"));
    Typed typed = look(all.toArray(String[]::new));
    assertEquals(ExitCode.DONE, typed.code(), typed.toString());
    return JSON.readTree(typed.out());
  }

  private static String pipeFile() {
    return files.resolve("pipes.geojson").toString();
  }

  private static Set<String> thin() {
    Set<String> sites = new TreeSet<>();
    for (int column = 2; column < 13; column++) {
      sites.add(site(3, column));
    }
    return sites;
  }

  @Test
  void alongThePipesTheThinClusterIsFoundWholeAndByCirclesInPart() throws IOException {
    JsonNode reach = json("--shape", "pipes", "--pipes", pipeFile()).get("rows").get(0);
    assertEquals(thin(), new TreeSet<>(List.of(reach.get("site_ids").asText().split("; "))));
    assertEquals(11, reach.get("cases").asInt());
    assertTrue(reach.get("significant").asBoolean());
    assertTrue(reach.get("radius_km").isNull(), "a radius means nothing along pipes");
    assertEquals(
        "in 1.52 km along the pipes", reach.get("extent").asText().replace("within", "in"));
    JsonNode ellipse = json("--shape", "ellipses").get("rows").get(0);
    JsonNode circle = json().get("rows").get(0);
    assertTrue(ellipse.get("significant").asBoolean());
    assertTrue(circle.get("cases").asInt() < ellipse.get("cases").asInt(), circle.toString());
    assertTrue(circle.get("p").asDouble() > reach.get("p").asDouble(), circle.toString());
    assertTrue(circle.get("extent").isNull() && circle.get("radius_km").isNumber());
  }

  @Test
  void theAnswerForPeopleSaysWhatItRestsOn() {
    Typed typed = look("--shape", "pipes", "--pipes", pipeFile());
    String text = typed.out().replaceAll("\\s+", " ");
    assertEquals(ExitCode.DONE, typed.code(), typed.toString());
    for (String words :
        List.of(
            "Exploration: where and when did fouling cluster, by distance along the pipes?",
            "As of: ",
            "is beyond chance (p at most 0.05)",
            "S03-02 (1 of 1, ",
            "n = 420 visits to sites near a pipe, ",
            "2 visits (2 with fouling) to 2 sites without coordinates (LOST-1, LOST-2)",
            "0 visits (0 with fouling) to 0 sites farther than 100 m from every open pipe",
            "107 routine as-found rounds of all days that no earlier pass is known for",
            "Pipes: 8 lines open",
            "All sites hang together.",
            "Caution: This is an exploration.",
            "999 replicates (seed 20260101)")) {
      assertTrue(text.contains(words), words + "\n" + typed.out());
    }
    assertFalse(typed.out().contains("NaN") || typed.out().contains("null"), typed.out());
  }

  @Test
  void timesDealtOutAnewWarnInEveryForm() throws IOException {
    String warning = "Tests follow a route";
    JsonNode json = json("--against", "permuted-times", "--shape", "subsets");
    assertTrue(json.get("in_words").get(0).asText().startsWith("WARNING: " + warning));
    assertTrue(json.get("rows").get(0).get("warning").asText().startsWith(warning));
    assertEquals("times dealt out anew", json.get("rows").get(0).get("held_against").asText());
    Typed csv = look("--against", "permuted-times", "--shape", "subsets", "--format", "csv");
    assertTrue(csv.out().contains(warning), csv.toString());
    assertTrue(csv.err().startsWith("WARNING: " + warning), csv.toString());
    Typed people = look("--against", "permuted-times");
    assertTrue(people.out().contains("WARNING: " + warning), people.out());
    Typed refused = look("--against", "permuted-times", "--whole-time");
    assertEquals(ExitCode.FAILED, refused.code());
    assertTrue(refused.err().contains("only the place is looked at"), refused.toString());
  }

  @Test
  void mapsAreWrittenInBothForms() throws Exception {
    for (String shape : List.of("circles", "ellipses", "subsets", "pipes")) {
      Path svg = files.resolve(shape + ".svg");
      Path geoJson = files.resolve(shape + ".geojson");
      List<String> words =
          new ArrayList<>(
              List.of("--shape", shape, "--svg", svg.toString(), "--geojson", geoJson.toString()));
      if (shape.equals("pipes")) {
        words.addAll(List.of("--pipes", pipeFile()));
      }
      Typed typed = look(words.toArray(String[]::new));
      assertEquals(ExitCode.DONE, typed.code(), typed.toString());
      DocumentBuilderFactory.newInstance()
          .newDocumentBuilder()
          .parse(new InputSource(new StringReader(Files.readString(svg))));
      JsonNode features = JSON.readTree(geoJson.toFile()).get("features");
      JsonNode first = features.get(0);
      boolean regular = shape.equals("circles") || shape.equals("ellipses");
      assertEquals(
          regular ? "Polygon" : "MultiPoint", first.get("geometry").get("type").asText(), shape);
      List<JsonNode> own = new ArrayList<>();
      features.forEach(
          f -> {
            if (f.get("properties").get("kind").asText().equals("site")
                && f.get("properties").get("number").asInt() == 1) {
              own.add(f);
            }
          });
      assertEquals(first.get("properties").get("sites").asInt(), own.size(), shape);
      if (!regular) {
        assertEquals(
            own.stream()
                .map(f -> f.get("geometry").get("coordinates").toString())
                .collect(Collectors.toSet()),
            points(first.get("geometry").get("coordinates")));
      }
    }
  }

  private static Set<String> points(JsonNode coordinates) {
    Set<String> points = new TreeSet<>();
    coordinates.forEach(p -> points.add(p.toString()));
    return points;
  }

  @Test
  void asOfADayBeforeTheImportNothingIsKnown() throws IOException {
    Typed then = look("--as-of", LocalDate.now().minusDays(2).toString());
    assertEquals(ExitCode.DONE, then.code(), then.toString());
    assertTrue(then.out().contains("no events yet"), then.out());
    assertTrue(then.out().contains("Not identified: there is no routine as-found round"));
    String tomorrow = LocalDate.now().plusDays(1).toString();
    assertEquals(json().get("rows"), json("--as-of", tomorrow).get("rows"));
    JsonNode early = json("--until", "2021-12-31");
    assertTrue(early.get("notes").toString().contains("visits on other days"));
  }

  @Test
  void wrongTypingIsAnsweredInWords() throws IOException {
    Typed noPipes = look("--shape", "pipes");
    assertTrue(noPipes.err().startsWith("--shape pipes needs the pipes"), noPipes.toString());
    Typed notFor = look("--pipes", pipeFile());
    assertTrue(notFor.err().startsWith("--pipes FILE goes with --shape pipes only"));
    Path wrong = Files.writeString(files.resolve("wrong.geojson"), "{\"type\":\"Topology\"}");
    Typed refused = look("--shape", "pipes", "--pipes", wrong.toString());
    assertEquals(ExitCode.FAILED, refused.code());
    assertTrue(refused.err().contains("wrong.geojson cannot be taken as pipes: it is a Topology"));
    Typed looks = look("--looks", "99");
    assertTrue(looks.err().contains("from 1 to 50"), looks.toString());
    assertEquals(ExitCode.USAGE, look("--shape", "squares").code());
  }
}
