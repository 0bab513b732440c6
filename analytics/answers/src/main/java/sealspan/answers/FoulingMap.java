package sealspan.answers;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import sealspan.study.fouling.ClusterOutline;

/**
 * What a map and a time line of clusters of fouling show.
 *
 * @param answer the answer that it goes with: title, as-of, words, notes
 * @param clusters the clusters, by number
 * @param members the sites of clusters, by number, then site
 * @param sites all sites with coordinates, those with most fouling failures first, {@value
 *     #MOST_SITES} at most
 * @param findings days on which sites of a cluster were found fouled in its time
 * @param water disturbances of the water of the clusters' zones
 * @param pipes pipes along which they were looked for, each a line of points {longitude, latitude};
 *     empty where they were not
 */
public record FoulingMap(
    Answer answer,
    List<Cluster> clusters,
    List<Member> members,
    List<Site> sites,
    List<Finding> findings,
    List<Water> water,
    List<double[][]> pipes) {
  /** More sites than this are not drawn. */
  public static final int MOST_SITES = 5_000;

  /** A cluster: a form about its centre and a time. Coordinates are WGS84, degrees. */
  public record Cluster(
      int number,
      double latitude,
      double longitude,
      ClusterOutline outline,
      LocalDate firstDay,
      LocalDate lastDay,
      int sites,
      int visits,
      int cases,
      double expected,
      Double relativeRisk,
      double p,
      String pMadeBy,
      boolean significant) {}

  /** A site of a cluster. */
  public record Member(
      int number,
      String siteId,
      String zoneId,
      double latitude,
      double longitude,
      int visits,
      int cases,
      double expected,
      double shareOfNearBest) {}

  /** A site with its visits and those that found fouling, in all of the record. */
  public record Site(String siteId, double latitude, double longitude, int visits, int fouled) {}

  /** A day on which so many sites of a cluster were found fouled. */
  public record Finding(int number, LocalDate day, int sites) {}

  /** A disturbance of the water; coordinates where they are known. */
  public record Water(
      String zoneId, String kind, LocalDate day, Double latitude, Double longitude) {}

  private static final String CIRCLES =
      """
      select number, latitude, longitude, radius_km, first_day, last_day, sites, visits, cases,
        expected, relative_risk, p, p_made_by, significant
      from fouling_cluster where $number is null or number = $number order by number""";
  private static final String MEMBERS =
      """
      select number, site_id, zone_id, latitude, longitude, visits, cases, expected,
        share_of_near_best
      from fouling_cluster_member where $number is null or number = $number
      order by number, site_id""";
  private static final String SITES =
      """
      select t.site_id, a.latitude, a.longitude, count(distinct t.day),
        count(distinct t.day) filter (t.failure_class = 'FOULING') as fouled
      from test t join (
        select site_id, arg_min(latitude, assembly_id) as latitude,
          arg_min(longitude, assembly_id) as longitude
        from assembly where latitude is not null and longitude is not null and site_id is not null
        group by site_id) a using (site_id)
      where t.counted and t.phase = 'AS_FOUND' and t.exposure_days > 0
      group by all order by fouled desc, t.site_id limit\s"""
          + MOST_SITES;
  private static final String FINDINGS =
      """
      select m.number, t.day, count(distinct t.site_id)
      from test t join fouling_cluster_member m using (site_id)
      join fouling_cluster c on c.number = m.number
      where t.counted and t.phase = 'AS_FOUND' and t.exposure_days > 0
        and t.failure_class = 'FOULING' and t.day between c.first_day and c.last_day
        and ($number is null or c.number = $number)
      group by all order by m.number, t.day""";
  private static final String WATER =
      """
      select zone_id, kind, from_day, latitude, longitude
      from water_disturbance
      where from_day is not null and zone_id in (
        select zone_id from fouling_cluster_member m join fouling_cluster c using (number)
        where case when $number is null then c.significant else c.number = $number end)
      order by from_day, zone_id, kind, event_id""";

  /** Reads it; a number of null means all clusters. */
  static FoulingMap read(Connection connection, Answer answer, Long number) throws SQLException {
    Map<Filter, Object> only = new EnumMap<>(Filter.class);
    if (number != null) {
      only.put(Filter.NUMBER, number);
    }
    List<Cluster> clusters = new ArrayList<>();
    for (List<Object> r : rows(connection, CIRCLES, only)) {
      clusters.add(
          new Cluster(
              whole(r.get(0)),
              (Double) r.get(1),
              (Double) r.get(2),
              new ClusterOutline.Circle((Double) r.get(3)),
              (LocalDate) r.get(4),
              (LocalDate) r.get(5),
              whole(r.get(6)),
              whole(r.get(7)),
              whole(r.get(8)),
              (Double) r.get(9),
              (Double) r.get(10),
              (Double) r.get(11),
              (String) r.get(12),
              (Boolean) r.get(13)));
    }
    List<Member> members = new ArrayList<>();
    for (List<Object> r : rows(connection, MEMBERS, only)) {
      members.add(
          new Member(
              whole(r.get(0)),
              (String) r.get(1),
              (String) r.get(2),
              (Double) r.get(3),
              (Double) r.get(4),
              whole(r.get(5)),
              whole(r.get(6)),
              (Double) r.get(7),
              (Double) r.get(8)));
    }
    List<Site> sites = new ArrayList<>();
    for (List<Object> r : rows(connection, SITES, Map.of())) {
      sites.add(
          new Site(
              (String) r.get(0),
              (Double) r.get(1),
              (Double) r.get(2),
              whole(r.get(3)),
              whole(r.get(4))));
    }
    List<Finding> findings = new ArrayList<>();
    for (List<Object> r : rows(connection, FINDINGS, only)) {
      findings.add(new Finding(whole(r.get(0)), (LocalDate) r.get(1), whole(r.get(2))));
    }
    List<Water> water = new ArrayList<>();
    for (List<Object> r : rows(connection, WATER, only)) {
      water.add(
          new Water(
              (String) r.get(0),
              (String) r.get(1),
              (LocalDate) r.get(2),
              (Double) r.get(3),
              (Double) r.get(4)));
    }
    return new FoulingMap(answer, clusters, members, sites, findings, water, List.of());
  }

  private static List<List<Object>> rows(
      Connection connection, String sql, Map<Filter, Object> values) throws SQLException {
    return BoundSql.of(sql).run(connection, values).rows();
  }

  private static int whole(Object value) {
    return ((Number) value).intValue();
  }
}
