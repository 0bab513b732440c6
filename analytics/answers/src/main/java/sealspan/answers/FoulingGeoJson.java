package sealspan.answers;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import sealspan.study.fouling.ClusterOutline;

/**
 * Clusters of fouling as GeoJSON (RFC 7946: WGS84, longitude before latitude): each cluster a
 * polygon about its circle or ellipse, or the points of its sites where it has no such form; each
 * of its sites a point. What belongs to the whole answer stands in members of its own beside the
 * features. A circle across the line where 180 degrees east are 180 west is cut there (section
 * 3.1.9).
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
      json.writeArrayFieldStart("in_words");
      for (String line : map.answer().words()) {
        json.writeString(line);
      }
      json.writeEndArray();
      json.writeArrayFieldStart("notes");
      for (String note : map.answer().notes()) {
        json.writeString(note);
      }
      json.writeEndArray();
      json.writeArrayFieldStart("features");
      for (FoulingMap.Cluster cluster : map.clusters()) {
        write(cluster, map, json);
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

  private static void write(FoulingMap.Cluster cluster, FoulingMap map, JsonGenerator json)
      throws IOException {
    json.writeStartObject();
    json.writeStringField("type", "Feature");
    json.writeStringField("id", "cluster " + cluster.number());
    List<List<double[]>> parts = parts(cluster);
    if (parts.isEmpty()) {
      writeSites(cluster, map, json);
    } else {
      writeShape(parts, json);
    }
    json.writeObjectFieldStart("properties");
    json.writeStringField("kind", "cluster");
    json.writeNumberField("number", cluster.number());
    json.writeStringField("first_day", cluster.firstDay().toString());
    json.writeStringField("last_day", cluster.lastDay().toString());
    if (cluster.outline() instanceof ClusterOutline.Circle circle) {
      json.writeNumberField("radius_km", circle.radiusKm());
    } else {
      json.writeStringField("extent", cluster.outline().words());
    }
    json.writeNumberField("sites", cluster.sites());
    json.writeNumberField("visits", cluster.visits());
    json.writeNumberField("cases", cluster.cases());
    json.writeNumberField("expected", cluster.expected());
    if (cluster.relativeRisk() == null) {
      json.writeNullField("relative_risk");
    } else {
      json.writeNumberField("relative_risk", cluster.relativeRisk());
    }
    json.writeNumberField("p", cluster.p());
    json.writeStringField("p_made_by", cluster.pMadeBy());
    json.writeBooleanField("significant", cluster.significant());
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

  /** The sites of a cluster, which no line goes about. */
  private static void writeSites(FoulingMap.Cluster cluster, FoulingMap map, JsonGenerator json)
      throws IOException {
    json.writeObjectFieldStart("geometry");
    json.writeStringField("type", "MultiPoint");
    json.writeArrayFieldStart("coordinates");
    for (FoulingMap.Member member : map.members()) {
      if (member.number() == cluster.number()) {
        writePoint(new double[] {member.longitude(), member.latitude()}, json);
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

  /**
   * One ring, or two where the form reaches across 180 degrees; anticlockwise, not closed. Empty
   * where no line goes about it.
   */
  static List<List<double[]>> parts(FoulingMap.Cluster cluster) {
    double cos = Math.max(1e-6, Math.cos(Math.toRadians(cluster.latitude())));
    List<double[]> ring = new ArrayList<>();
    boolean east = false;
    boolean west = false;
    for (double[] corner : FoulingOutline.cornersKm(cluster.outline(), CORNERS, LEAST_RADIUS_KM)) {
      double longitude = cluster.longitude() + corner[0] / (KM_A_DEGREE * cos);
      double latitude = cluster.latitude() + corner[1] / KM_A_DEGREE;
      east |= longitude > 180;
      west |= longitude < -180;
      ring.add(new double[] {longitude, Math.max(-90, Math.min(90, latitude))});
    }
    if (!east && !west) {
      return ring.isEmpty() ? List.of() : List.of(ring);
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
