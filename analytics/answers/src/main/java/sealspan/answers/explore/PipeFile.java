package sealspan.answers.explore;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import sealspan.answers.AnswersException;
import sealspan.study.fouling.PipeLines;

/**
 * Pipes from a GeoJSON file (RFC 7946: WGS84, longitude before latitude): LineString and
 * MultiLineString features are pipes, Point and MultiPoint features are valves. A property tells
 * whether one is closed; without it, it is open. Coordinates are rounded to a millionth of a
 * degree, so that lines join that were drawn to the same corner.
 */
public final class PipeFile {
  private static final ObjectMapper JSON =
      new ObjectMapper().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);
  private static final double ROUNDING = 1e6;
  private static final Set<String> CLOSED = Set.of("true", "yes", "1", "closed");
  private static final Set<String> OPEN = Set.of("false", "no", "0", "open");

  private final Path file;
  private final String closedProperty;
  private final List<double[][]> open = new ArrayList<>();
  private final List<double[]> closedValves = new ArrayList<>();
  private int closedLines;
  private int passedOver;

  private PipeFile(Path file, String closedProperty) {
    this.file = file;
    this.closedProperty = closedProperty;
  }

  /**
   * Reads a file.
   *
   * @param file the file
   * @param closedProperty name of the property that tells whether a pipe or valve is closed
   * @throws AnswersException where it cannot be read or holds no open pipe, with what to do
   */
  public static PipeLines read(Path file, String closedProperty) {
    PipeFile pipes = new PipeFile(file, closedProperty);
    pipes.add(pipes.tree());
    if (pipes.open.isEmpty()) {
      throw pipes.wrong(
          pipes.closedLines == 0
              ? "it has no LineString or MultiLineString feature. Export the pipes as lines."
              : "every one of its "
                  + pipes.closedLines
                  + " pipes is closed, so nothing can be reached. Check the property "
                  + closedProperty
                  + ".");
    }
    return new PipeLines(
        List.copyOf(pipes.open),
        pipes.closedLines,
        List.copyOf(pipes.closedValves),
        pipes.passedOver);
  }

  private JsonNode tree() {
    try {
      return JSON.readTree(Files.readAllBytes(file));
    } catch (NoSuchFileException e) {
      throw new AnswersException("There is no file " + file + ". Check the path.", e);
    } catch (JsonProcessingException e) {
      String where =
          e.getLocation() == null
              ? ""
              : " (line "
                  + e.getLocation().getLineNr()
                  + ", column "
                  + e.getLocation().getColumnNr()
                  + ")";
      throw new AnswersException(
          file
              + " is not JSON"
              + where
              + ": "
              + e.getOriginalMessage()
              + ". Export the pipes again as GeoJSON.",
          e);
    } catch (IOException e) {
      throw new AnswersException(
          file + " cannot be read (" + e.getMessage() + "). Check the path and its permissions.",
          e);
    }
  }

  private void add(JsonNode top) {
    if (top == null || !top.isObject() || !top.path("type").isTextual()) {
      throw wrong(
          "it is not GeoJSON: an object with \"type\" : \"FeatureCollection\" is expected. Export the"
              + " pipes as GeoJSON.");
    }
    requireWgs84(top.get("crs"));
    String type = top.get("type").asText();
    if (type.equals("Feature")) {
      addFeature(top, 1);
    } else if (!type.equals("FeatureCollection")) {
      throw wrong(
          "it is a " + type + "; a FeatureCollection of lines is expected. Export the pipes so.");
    } else {
      JsonNode features = top.get("features");
      if (features == null || !features.isArray()) {
        throw wrong("its member \"features\" is not an array. Export the pipes again.");
      }
      for (int i = 0; i < features.size(); i++) {
        addFeature(features.get(i), i + 1);
      }
    }
  }

  /** RFC 7946, section 4: all coordinates are WGS84; older files may name another system. */
  private void requireWgs84(JsonNode crs) {
    if (crs == null || crs.isNull()) {
      return;
    }
    String name = crs.path("properties").path("name").asText("");
    String known = name.toUpperCase(Locale.ROOT);
    if (!(known.endsWith("CRS84") || known.matches("(.*[:/])?EPSG.*[:/]4326"))) {
      throw wrong(
          "it says that its coordinates are in "
              + (name.isEmpty() ? crs.toString() : name)
              + ", and GeoJSON is read as WGS84, longitude before latitude. Export it in WGS84"
              + " (EPSG:4326), and leave the member \"crs\" out.");
    }
  }

  private void addFeature(JsonNode feature, int number) {
    if (!feature.path("type").asText("").equals("Feature")) {
      throw wrong(number, "it is not a Feature. Export the pipes again.");
    }
    JsonNode geometry = feature.get("geometry");
    if (geometry == null || geometry.isNull()) {
      passedOver++;
      return;
    }
    boolean closed = closed(feature.path("properties").get(closedProperty), number);
    JsonNode coordinates = geometry.path("coordinates");
    switch (geometry.path("type").asText("")) {
      case "LineString" -> addLine(coordinates, closed, number);
      case "MultiLineString" -> {
        for (JsonNode line : array(coordinates, number)) {
          addLine(line, closed, number);
        }
      }
      case "Point" -> addValve(coordinates, closed, number);
      case "MultiPoint" -> {
        for (JsonNode point : array(coordinates, number)) {
          addValve(point, closed, number);
        }
      }
      default ->
          throw wrong(
              number,
              "its geometry is "
                  + (geometry.path("type").isTextual()
                      ? "a " + geometry.get("type").asText()
                      : "of no type")
                  + "; pipes are LineString or MultiLineString, valves Point. Take it out of the"
                  + " file.");
    }
  }

  private boolean closed(JsonNode value, int number) {
    if (value == null || value.isNull()) {
      return false;
    }
    String text = value.asText("").strip().toLowerCase(Locale.ROOT);
    if (value.isContainerNode() || !CLOSED.contains(text) && !OPEN.contains(text)) {
      throw wrong(
          number,
          "its property "
              + closedProperty
              + " is "
              + value
              + "; it has to be true or false, yes or no, 1 or 0, closed or open. Mend it, or name"
              + " another property.");
    }
    return CLOSED.contains(text);
  }

  private void addLine(JsonNode coordinates, boolean closed, int number) {
    JsonNode corners = array(coordinates, number);
    if (corners.size() < 2) {
      throw wrong(
          number, "a line needs at least two points and has " + corners.size() + ". Mend it.");
    }
    double[][] line = new double[corners.size()][];
    for (int i = 0; i < line.length; i++) {
      line[i] = point(corners.get(i), number);
    }
    if (closed) {
      closedLines++;
    } else {
      open.add(line);
    }
  }

  private void addValve(JsonNode coordinates, boolean closed, int number) {
    double[] at = point(coordinates, number);
    if (closed) {
      closedValves.add(at);
    } else {
      passedOver++;
    }
  }

  private JsonNode array(JsonNode coordinates, int number) {
    if (!coordinates.isArray()) {
      throw wrong(number, "its coordinates are not an array. Export the pipes again.");
    }
    return coordinates;
  }

  private double[] point(JsonNode position, int number) {
    if (!position.isArray()
        || position.size() < 2
        || !position.get(0).isNumber()
        || !position.get(1).isNumber()) {
      throw wrong(
          number,
          "the position " + position + " is not two numbers, longitude and latitude. Mend it.");
    }
    double longitude = position.get(0).asDouble();
    double latitude = position.get(1).asDouble();
    if (!(Math.abs(longitude) <= 180 && Math.abs(latitude) <= 90)) {
      throw wrong(
          number,
          "the position "
              + position
              + " is no longitude from -180 to 180 and latitude from -90 to 90. Metres or feet, or"
              + " latitude before longitude? Export the pipes in WGS84 (EPSG:4326).");
    }
    return new double[] {rounded(longitude), rounded(latitude)};
  }

  private static double rounded(double degrees) {
    return Math.rint(degrees * ROUNDING) / ROUNDING;
  }

  private AnswersException wrong(int feature, String what) {
    return new AnswersException(file + ", feature " + feature + ": " + what);
  }

  private AnswersException wrong(String what) {
    return new AnswersException(file + " cannot be taken as pipes: " + what);
  }
}
