package sealspan.answers;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Clusters of fouling as GeoJSON (RFC 7946: WGS84, longitude before latitude): each cluster a
 * polygon about its circle, each of its sites a point. What belongs to the whole answer stands in
 * members of its own beside the features. A circle across the line where 180 degrees east are 180
 * west is cut there (section 3.1.9).
 */
public final class FoulingGeoJson {
  private static final int CORNERS = 64;
  private static final double KM_A_DEGREE = 6371.0088 * Math.PI / 180;

  /** A cluster of one site is drawn as a circle of 50 m. */
  private static final double LEAST_RADIUS_KM = 0.05;

  private FoulingGeoJson() {}

  /** The text of the file. */
  public static String of(FoulingMap map) {
    StringWriter out = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(out)) {
      json.useDefaultPrettyPrinter();
      json.writeStartObject();
      json.writeStringField("type", "FeatureCollection");
      json.writeStringField("title", map.answer().title());
      json.writeStringField("as_of", map.answer().asOf());
      json.writeArrayFieldStart("notes");
      for (String note : map.answer().notes()) {
        json.writeString(note);
      }
      json.writeEndArray();
      json.writeArrayFieldStart("features");
      for (FoulingMap.Circle circle : map.circles()) {
        write(circle, json);
      }
      for (FoulingMap.Member member : map.members()) {
        write(member, json);
      }
      json.writeEndArray();
      json.writeEndObject();
    } catch (IOException e) {
      throw new UncheckedIOException("Text in memory can be written.", e);
    }
    return out.append('\n').toString();
  }

  private static void write(FoulingMap.Circle circle, JsonGenerator json) throws IOException {
    json.writeStartObject();
    json.writeStringField("type", "Feature");
    json.writeStringField("id", "cluster " + circle.number());
    writeShape(parts(circle), json);
    json.writeObjectFieldStart("properties");
    json.writeStringField("kind", "cluster");
    json.writeNumberField("number", circle.number());
    json.writeStringField("first_day", circle.firstDay().toString());
    json.writeStringField("last_day", circle.lastDay().toString());
    json.writeNumberField("radius_km", circle.radiusKm());
    json.writeNumberField("sites", circle.sites());
    json.writeNumberField("visits", circle.visits());
    json.writeNumberField("cases", circle.cases());
    json.writeNumberField("expected", circle.expected());
    if (circle.relativeRisk() == null) {
      json.writeNullField("relative_risk");
    } else {
      json.writeNumberField("relative_risk", circle.relativeRisk());
    }
    json.writeNumberField("p", circle.p());
    json.writeStringField("p_made_by", circle.pMadeBy());
    json.writeBooleanField("significant", circle.significant());
    json.writeEndObject();
    json.writeEndObject();
  }

  private static void write(FoulingMap.Member member, JsonGenerator json) throws IOException {
    json.writeStartObject();
    json.writeStringField("type", "Feature");
    json.writeStringField("id", "cluster " + member.number() + ", site " + member.siteId());
    json.writeObjectFieldStart("geometry");
    json.writeStringField("type", "Point");
    json.writeFieldName("coordinates");
    writePoint(new double[] {member.longitude(), member.latitude()}, json);
    json.writeEndObject();
    json.writeObjectFieldStart("properties");
    json.writeStringField("kind", "site");
    json.writeNumberField("number", member.number());
    json.writeStringField("site_id", member.siteId());
    json.writeStringField("zone_id", member.zoneId());
    json.writeNumberField("visits", member.visits());
    json.writeNumberField("cases", member.cases());
    json.writeNumberField("expected", member.expected());
    json.writeNumberField("share_of_near_best", member.shareOfNearBest());
    json.writeEndObject();
    json.writeEndObject();
  }

  private static void writeShape(List<List<double[]>> parts, JsonGenerator json)
      throws IOException {
    json.writeObjectFieldStart("geometry");
    json.writeStringField("type", parts.size() == 1 ? "Polygon" : "MultiPolygon");
    json.writeArrayFieldStart("coordinates");
    for (List<double[]> ring : parts) {
      if (parts.size() > 1) {
        json.writeStartArray();
      }
      json.writeStartArray();
      for (double[] point : ring) {
        writePoint(point, json);
      }
      writePoint(ring.get(0), json);
      json.writeEndArray();
      if (parts.size() > 1) {
        json.writeEndArray();
      }
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  /** Seven decimals are a centimetre. */
  private static void writePoint(double[] point, JsonGenerator json) throws IOException {
    json.writeStartArray();
    json.writeNumber(Math.round(point[0] * 1e7) / 1e7);
    json.writeNumber(Math.round(point[1] * 1e7) / 1e7);
    json.writeEndArray();
  }

  /** One ring, or two where the circle reaches across 180 degrees; anticlockwise, not closed. */
  static List<List<double[]>> parts(FoulingMap.Circle circle) {
    double radius = Math.max(LEAST_RADIUS_KM, circle.radiusKm());
    double cos = Math.max(1e-6, Math.cos(Math.toRadians(circle.latitude())));
    List<double[]> ring = new ArrayList<>();
    boolean east = false;
    boolean west = false;
    for (int i = 0; i < CORNERS; i++) {
      double turn = 2 * Math.PI * i / CORNERS;
      double longitude = circle.longitude() + radius * Math.cos(turn) / (KM_A_DEGREE * cos);
      double latitude = circle.latitude() + radius * Math.sin(turn) / KM_A_DEGREE;
      east |= longitude > 180;
      west |= longitude < -180;
      ring.add(new double[] {longitude, Math.max(-90, Math.min(90, latitude))});
    }
    if (!east && !west) {
      return List.of(ring);
    }
    double border = east ? 180 : -180;
    return List.of(
            moved(cut(ring, border, 1), west ? 360 : 0),
            moved(cut(ring, border, -1), east ? -360 : 0))
        .stream()
        .filter(part -> part.size() > 2)
        .toList();
  }

  /** The part of a convex ring that lies below a longitude (side 1) or above it (side -1). */
  private static List<double[]> cut(List<double[]> ring, double border, int side) {
    List<double[]> kept = new ArrayList<>();
    for (int i = 0; i < ring.size(); i++) {
      double[] a = ring.get(i);
      double[] b = ring.get((i + 1) % ring.size());
      boolean aIn = side * (border - a[0]) >= 0;
      boolean bIn = side * (border - b[0]) >= 0;
      if (aIn) {
        kept.add(a);
      }
      if (aIn != bIn) {
        double share = (border - a[0]) / (b[0] - a[0]);
        kept.add(new double[] {border, a[1] + share * (b[1] - a[1])});
      }
    }
    return kept;
  }

  private static List<double[]> moved(List<double[]> ring, double byLongitude) {
    return ring.stream().map(p -> new double[] {p[0] + byLongitude, p[1]}).toList();
  }
}
