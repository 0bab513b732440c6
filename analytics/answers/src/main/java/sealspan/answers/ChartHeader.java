package sealspan.answers;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * How the answer to a question is drawn. In the header of a question it stands as {@code -- chart:
 * x=COLUMN y=COLUMN} with, where wanted, {@code lower=COLUMN upper=COLUMN} (a band), {@code
 * also=COLUMN} (a second, dashed line; the room between is shaded), {@code by=COLUMN,COLUMN} (one
 * series for each combination), {@code draw=line|step|points}, {@code from=0 to=1} (ends of the y
 * axis). The axes are named by {@code -- x axis: ...} and {@code -- y axis: ...}, with units; else
 * by their columns.
 *
 * @param x column of the places on the x axis: numbers or days
 * @param y column of the heights
 * @param lower column of the lower end of the interval; null for none
 * @param upper column of the upper end; null for none
 * @param also column of a second line of the same series; null for none
 * @param by columns whose values name a series; none: all rows are one series
 * @param draw how the points of a series are joined
 * @param from lowest y that is shown at least; null for the lowest value
 * @param to highest y that is shown at least; null for the highest value
 * @param axisX name of the x axis
 * @param axisY name of the y axis
 */
public record ChartHeader(
    String x,
    String y,
    String lower,
    String upper,
    String also,
    List<String> by,
    Draw draw,
    Double from,
    Double to,
    String axisX,
    String axisY) {
  private static final Set<String> KEYS =
      Set.of("x", "y", "lower", "upper", "also", "by", "draw", "from", "to");

  /** How the points of a series are joined. */
  public enum Draw {
    /** By straight lines. */
    LINE,
    /** A height holds from its x up to the next. */
    STEP,
    /** Not at all. */
    POINTS
  }

  public ChartHeader {
    by = List.copyOf(by);
  }

  /** Reads the text after {@code -- chart:}. */
  static ChartHeader of(String header) {
    Map<String, String> parts = new HashMap<>();
    for (String part : header.split(" +")) {
      String[] pair = part.split("=", 2);
      if (pair.length < 2 || pair[1].isBlank() || !KEYS.contains(pair[0])) {
        throw new IllegalArgumentException("Not a part of a chart: " + part);
      }
      parts.put(pair[0], pair[1]);
    }
    if (!parts.containsKey("x")
        || !parts.containsKey("y")
        || parts.containsKey("lower") != parts.containsKey("upper")) {
      throw new IllegalArgumentException(
          "A chart needs x and y, and lower and upper both or neither: " + header);
    }
    String by = parts.get("by");
    return new ChartHeader(
        parts.get("x"),
        parts.get("y"),
        parts.get("lower"),
        parts.get("upper"),
        parts.get("also"),
        by == null ? List.of() : Arrays.asList(by.split(",")),
        draw(parts.getOrDefault("draw", "line")),
        number(parts.get("from")),
        number(parts.get("to")),
        parts.get("x").replace('_', ' '),
        parts.get("y").replace('_', ' '));
  }

  /** The same with named axes; null keeps the name of the column. */
  ChartHeader named(String ofX, String ofY) {
    return new ChartHeader(
        x,
        y,
        lower,
        upper,
        also,
        by,
        draw,
        from,
        to,
        ofX == null ? axisX : ofX,
        ofY == null ? axisY : ofY);
  }

  private static Draw draw(String word) {
    return switch (word) {
      case "line" -> Draw.LINE;
      case "step" -> Draw.STEP;
      case "points" -> Draw.POINTS;
      default -> throw new IllegalArgumentException("Not a way to draw: " + word);
    };
  }

  private static Double number(String word) {
    return word == null ? null : Double.valueOf(word);
  }
}
