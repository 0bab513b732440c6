package sealspan.answers.chart;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import sealspan.answers.FoulingMap;
import sealspan.answers.FoulingOutline;
import sealspan.answers.Wrapped;
import sealspan.study.fouling.ClusterOutline;

/**
 * A map of clusters of fouling with their time line beneath, as one self-contained SVG 1.1 picture.
 * Grey dots are sites, filled ones were found fouled at least once; a circle or an ellipse is a
 * cluster, as are rings about the sites of one without such a form; dashed where it is not beyond
 * chance. North is up.
 */
public final class FoulingMapSvg {
  private static final int WIDTH = 820;
  private static final int EDGE = 20;
  private static final int MAP_TOP = 60;
  private static final int MAP_HEIGHT = 460;
  private static final int LANE = 26;
  private static final int LABEL = 150;
  private static final int LINE_HEIGHT = 16;
  private static final double KM_A_DEGREE = 6371.0088 * Math.PI / 180;
  private static final int CORNERS = 64;
  private static final double LEAST_PIXELS = 6;
  private static final String GREY = "#999999";

  private final FoulingMap map;
  private final SvgPage page = new SvgPage(WIDTH);
  private double middleLatitude;
  private double middleLongitude;
  private double pixelsAKm = 1;

  /** Kilometres from the latitude of the scale to the middle of the map. */
  private double northShift;

  private LocalDate from;
  private LocalDate until;

  private FoulingMapSvg(FoulingMap map) {
    this.map = map;
  }

  /** The text of the picture, ending in a line break. */
  public static String of(FoulingMap map) {
    return new FoulingMapSvg(map).draw();
  }

  private String draw() {
    StringBuilder notes = new StringBuilder();
    map.answer().words().forEach(line -> Wrapped.append(line, notes));
    map.answer().notes().forEach(line -> Wrapped.append(line, notes));
    List<String> caption = notes.toString().lines().toList();
    int lanes = map.clusters().size() + (map.water().isEmpty() ? 0 : 1);
    int timeTop = MAP_TOP + MAP_HEIGHT + 30;
    int captionTop = timeTop + LANE * lanes + 50;
    page.begin(captionTop + LINE_HEIGHT * caption.size() + 10, map.answer().title());
    page.text(EDGE, 26, "start", 16, map.answer().title());
    page.text(EDGE, 44, "start", 11, "As of " + map.answer().asOf());
    if (map.clusters().isEmpty() && map.sites().isEmpty()) {
      page.text(EDGE, MAP_TOP + 20, "start", 12, "No site with coordinates, so there is no map.");
    } else {
      fitMap();
      drawMap();
    }
    if (!map.clusters().isEmpty()) {
      fitTime();
      drawTime(timeTop, lanes);
    }
    for (int i = 0; i < caption.size(); i++) {
      page.text(EDGE, captionTop + LINE_HEIGHT * i, "start", 11, caption.get(i));
    }
    return page.end();
  }

  /** Chooses middle and scale so that all that is drawn fits. */
  private void fitMap() {
    List<double[]> points = new ArrayList<>();
    map.clusters()
        .forEach(
            c ->
                points.add(
                    new double[] {
                      c.latitude(), c.longitude(), FoulingOutline.reachKm(c.outline())
                    }));
    map.sites().forEach(s -> points.add(new double[] {s.latitude(), s.longitude(), 0}));
    middleLatitude = points.get(0)[0];
    middleLongitude = points.get(0)[1];
    double[] least = {Double.MAX_VALUE, Double.MAX_VALUE};
    double[] most = {-Double.MAX_VALUE, -Double.MAX_VALUE};
    for (double[] p : points) {
      double[] km = {eastKm(p[1]), northKm(p[0])};
      for (int axis = 0; axis < 2; axis++) {
        least[axis] = Math.min(least[axis], km[axis] - p[2]);
        most[axis] = Math.max(most[axis], km[axis] + p[2]);
      }
    }
    double wide = Math.max(0.2, most[0] - least[0]) * 1.06;
    double high = Math.max(0.2, most[1] - least[1]) * 1.06;
    pixelsAKm = Math.min((WIDTH - 2.0 * EDGE) / wide, MAP_HEIGHT / high);
    double cos = Math.max(1e-6, Math.cos(Math.toRadians(middleLatitude)));
    middleLongitude += (least[0] + most[0]) / 2 / (KM_A_DEGREE * cos);
    // The scale of longitudes stays that of the first latitude: only the middle moves.
    northShift = (least[1] + most[1]) / 2;
  }

  private double eastKm(double longitude) {
    double east = longitude - middleLongitude;
    double shortWay = east > 180 ? east - 360 : east < -180 ? east + 360 : east;
    return shortWay * KM_A_DEGREE * Math.max(1e-6, Math.cos(Math.toRadians(middleLatitude)));
  }

  private double northKm(double latitude) {
    return (latitude - middleLatitude) * KM_A_DEGREE;
  }

  private double x(double longitude) {
    return WIDTH / 2.0 + eastKm(longitude) * pixelsAKm;
  }

  private double y(double latitude) {
    return MAP_TOP + MAP_HEIGHT / 2.0 - (northKm(latitude) - northShift) * pixelsAKm;
  }

  private void drawMap() {
    page.rect(EDGE, MAP_TOP, WIDTH - 2.0 * EDGE, MAP_HEIGHT, "fill=\"#f7f7f7\" stroke=\"#dddddd\"");
    drawPipes();
    for (FoulingMap.Site site : map.sites()) {
      page.circle(
          x(site.longitude()),
          y(site.latitude()),
          site.fouled() > 0 ? 2.5 : 1.5,
          "fill=\"" + (site.fouled() > 0 ? "#555555" : "#cccccc") + "\"");
    }
    for (FoulingMap.Member member : map.members()) {
      if (member.cases() > 0) {
        page.circle(
            x(member.longitude()),
            y(member.latitude()),
            4,
            "fill=\"" + colour(member.number()) + "\"");
      }
    }
    for (FoulingMap.Water event : map.water()) {
      if (event.latitude() != null && event.longitude() != null) {
        double ex = x(event.longitude());
        double ey = y(event.latitude());
        if (isInside(ex, ey)) {
          page.line(ex - 4, ey - 4, ex + 4, ey + 4, "#333333");
          page.line(ex - 4, ey + 4, ex + 4, ey - 4, "#333333");
        }
      }
    }
    for (FoulingMap.Cluster cluster : map.clusters()) {
      drawOutline(cluster);
      page.text(
          x(cluster.longitude()), y(cluster.latitude()) - 6, "middle", 13, "" + cluster.number());
    }
    scaleBar();
  }

  /** A line about a circle or an ellipse; of what has no such form, a ring about each site. */
  private void drawOutline(FoulingMap.Cluster cluster) {
    String line =
        "fill=\"none\" stroke-width=\"2\" stroke=\""
            + colour(cluster.number())
            + "\""
            + (cluster.significant() ? "" : " stroke-dasharray=\"5 3\"");
    if (cluster.outline() instanceof ClusterOutline.Circle circle) {
      page.circle(
          x(cluster.longitude()),
          y(cluster.latitude()),
          Math.max(6, circle.radiusKm() * pixelsAKm),
          line);
      return;
    }
    List<double[]> corners =
        FoulingOutline.cornersKm(cluster.outline(), CORNERS, LEAST_PIXELS / pixelsAKm);
    if (!corners.isEmpty()) {
      page.polygon(
          corners.stream()
              .map(
                  km ->
                      new double[] {
                        x(cluster.longitude()) + km[0] * pixelsAKm,
                        y(cluster.latitude()) - km[1] * pixelsAKm
                      })
              .toList(),
          line);
      return;
    }
    for (FoulingMap.Member member : map.members()) {
      if (member.number() == cluster.number()) {
        page.circle(x(member.longitude()), y(member.latitude()), LEAST_PIXELS, line);
      }
    }
  }

  /** Pipes lie beneath everything else, and end at the edge of the map. */
  private void drawPipes() {
    if (map.pipes().isEmpty()) {
      return;
    }
    page.beginWindow(EDGE, MAP_TOP, WIDTH - 2.0 * EDGE, MAP_HEIGHT);
    for (double[][] pipe : map.pipes()) {
      for (int i = 1; i < pipe.length; i++) {
        page.line(x(pipe[i - 1][0]), y(pipe[i - 1][1]), x(pipe[i][0]), y(pipe[i][1]), "#b8cfe0");
      }
    }
    page.endWindow();
  }

  private static boolean isInside(double x, double y) {
    return x > EDGE && x < WIDTH - EDGE && y > MAP_TOP && y < MAP_TOP + MAP_HEIGHT;
  }

  private void scaleBar() {
    double km = 1;
    while (km * pixelsAKm > 200) {
      km /= 10;
    }
    while (km * pixelsAKm < 40) {
      km *= 2;
    }
    int y = MAP_TOP + MAP_HEIGHT - 14;
    page.line(EDGE + 12, y, EDGE + 12 + km * pixelsAKm, y, "#333333");
    page.text(EDGE + 12, y - 5, "start", 11, String.format(Locale.ROOT, "%s km", plain(km)));
    page.text(
        WIDTH - EDGE - 8,
        y,
        "end",
        11,
        "north is up; dark: found fouled; dashed: not beyond chance; cross: disturbance of the water"
            + (map.pipes().isEmpty() ? "" : "; pale lines: pipes"));
  }

  private static String plain(double km) {
    return km >= 1 ? "" + (long) km : "" + Math.round(km * 1000) / 1000.0;
  }

  private void fitTime() {
    from = map.clusters().get(0).firstDay();
    until = map.clusters().get(0).lastDay();
    for (FoulingMap.Cluster cluster : map.clusters()) {
      from = cluster.firstDay().isBefore(from) ? cluster.firstDay() : from;
      until = cluster.lastDay().isAfter(until) ? cluster.lastDay() : until;
    }
    from = from.minusDays(365);
    until = until.plusDays(90);
  }

  private double at(LocalDate day) {
    double share =
        (double) (day.toEpochDay() - from.toEpochDay()) / (until.toEpochDay() - from.toEpochDay());
    return LABEL + share * (WIDTH - EDGE - LABEL);
  }

  private void drawTime(int top, int lanes) {
    int bottom = top + LANE * lanes;
    int step = Math.max(1, (until.getYear() - from.getYear()) / 8);
    for (int year = from.getYear() + 1; year <= until.getYear(); year += step) {
      double x = at(LocalDate.of(year, 1, 1));
      page.line(x, top, x, bottom + 5, "#dddddd");
      page.text(x, bottom + 18, "middle", 11, "" + year);
    }
    int lane = 0;
    for (FoulingMap.Cluster cluster : map.clusters()) {
      int y = top + LANE * lane++;
      page.text(LABEL - 10, y + 16, "end", 11, "cluster " + cluster.number());
      page.rect(
          at(cluster.firstDay()),
          y + 4,
          Math.max(2, at(cluster.lastDay()) - at(cluster.firstDay())),
          LANE - 8,
          "fill-opacity=\"0.25\" fill=\"" + colour(cluster.number()) + "\"");
      for (FoulingMap.Finding finding : map.findings()) {
        if (finding.number() == cluster.number()) {
          double x = at(finding.day());
          page.line(x, y + 4, x, y + LANE - 4, colour(cluster.number()));
        }
      }
    }
    if (!map.water().isEmpty()) {
      int y = top + LANE * lane;
      page.text(LABEL - 10, y + 16, "end", 11, "water of its zones");
      for (FoulingMap.Water event : map.water()) {
        if (!event.day().isBefore(from) && !event.day().isAfter(until)) {
          boolean flushing = "FLUSHING".equals(event.kind());
          page.circle(
              at(event.day()),
              y + LANE / 2.0,
              3.5,
              (flushing ? "fill=\"#ffffff\" stroke=\"" : "fill=\"")
                  + ("MAIN_BREAK".equals(event.kind()) || flushing ? "#333333" : GREY)
                  + "\"");
        }
      }
    }
    page.text(
        LABEL,
        bottom + 34,
        "start",
        11,
        "bar: its time; stroke: a day with fouling; dot: main break; ring: flushing; grey: other");
  }

  private String colour(int number) {
    boolean significant =
        map.clusters().stream().anyMatch(c -> c.number() == number && c.significant());
    return significant ? SvgPage.COLOURS[(number - 1) % SvgPage.COLOURS.length] : GREY;
  }
}
