package sealspan.answers.explore;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import sealspan.answers.Answer;
import sealspan.answers.ResultTable;
import sealspan.answers.ResultTable.ResultColumn;
import sealspan.study.fouling.ClusterOutline;
import sealspan.study.fouling.Exploration;
import sealspan.study.fouling.ExplorationCautions;
import sealspan.study.fouling.ExplorationNotes;
import sealspan.study.fouling.ExplorationWords;
import sealspan.table.FoulingClusterMemberRow;
import sealspan.table.FoulingClusterRow;

/**
 * A look for clusters as an answer, with the columns of the question {@code clusters}; what is no
 * circle has an extent in words instead of a radius.
 */
public final class ExplorationAnswer {
  private static final String NAME = "look-for-clusters";
  private static final String TEXT = "VARCHAR";
  private static final String WHOLE = "INTEGER";
  private static final String NUMBER = "DOUBLE";

  private ExplorationAnswer() {}

  /** For people: the sites of each cluster stand in the words above the table. */
  public static Answer forPeople(Exploration found, String asOf) {
    List<ResultColumn> columns = columns();
    boolean circles = found.outlines().stream().allMatch(o -> o instanceof ClusterOutline.Circle);
    boolean noCircle = found.outlines().stream().noneMatch(o -> o instanceof ClusterOutline.Circle);
    columns.removeIf(
        c -> c.name().equals("extent") && circles || c.name().equals("radius_km") && noCircle);
    return answer(found, asOf, columns);
  }

  /** For programs: every look has the same columns, with sites, null and warning in each row. */
  public static Answer forPrograms(Exploration found, String asOf) {
    List<ResultColumn> columns = columns();
    columns.add(new ResultColumn("exploration", "BOOLEAN"));
    columns.add(new ResultColumn("shape", TEXT));
    columns.add(new ResultColumn("held_against", TEXT));
    columns.add(new ResultColumn("looks", WHOLE));
    columns.add(new ResultColumn("site_ids", TEXT));
    columns.add(new ResultColumn("warning", TEXT));
    return answer(found, asOf, columns);
  }

  private static List<ResultColumn> columns() {
    return new ArrayList<>(
        List.of(
            new ResultColumn("number", WHOLE),
            new ResultColumn("centre", TEXT),
            new ResultColumn("radius_km", NUMBER),
            new ResultColumn("extent", TEXT),
            new ResultColumn("first_day", "DATE"),
            new ResultColumn("last_day", "DATE"),
            new ResultColumn("sites", WHOLE),
            new ResultColumn("visits", WHOLE),
            new ResultColumn("cases", WHOLE),
            new ResultColumn("expected", NUMBER),
            new ResultColumn("relative_risk", NUMBER),
            new ResultColumn("p", NUMBER),
            new ResultColumn("p_made_by", TEXT),
            new ResultColumn("significant", "BOOLEAN")));
  }

  private static Answer answer(Exploration found, String asOf, List<ResultColumn> columns) {
    List<List<Object>> rows = new ArrayList<>();
    for (int i = 0; i < found.clusters().size(); i++) {
      FoulingClusterRow cluster = found.clusters().get(i);
      ClusterOutline outline = found.outlines().get(i);
      List<Object> row = new ArrayList<>();
      columns.forEach(column -> row.add(value(column.name(), found, cluster, outline)));
      rows.add(row);
    }
    return new Answer(
        NAME,
        ExplorationWords.title(found.choice()),
        asOf,
        ExplorationWords.answer(found),
        new ResultTable(columns, rows),
        ExplorationNotes.of(found));
  }

  private static Object value(
      String column, Exploration found, FoulingClusterRow cluster, ClusterOutline outline) {
    return switch (column) {
      case "number" -> cluster.number();
      case "centre" ->
          String.format(Locale.ROOT, "%.5f, %.5f", cluster.latitude(), cluster.longitude());
      case "radius_km" ->
          outline instanceof ClusterOutline.Circle circle ? (Object) circle.radiusKm() : null;
      case "extent" -> outline instanceof ClusterOutline.Circle ? null : outline.words();
      case "first_day" -> cluster.firstDay();
      case "last_day" -> cluster.lastDay();
      case "sites" -> cluster.sites();
      case "visits" -> cluster.visits();
      case "cases" -> cluster.cases();
      case "expected" -> cluster.expected();
      case "relative_risk" -> cluster.relativeRisk();
      case "p" -> cluster.p();
      case "p_made_by" -> cluster.pMadeBy().toLowerCase(Locale.ROOT).replace('_', ' ');
      case "significant" -> cluster.significant();
      case "exploration" -> true;
      case "shape" -> found.choice().shape().name().toLowerCase(Locale.ROOT);
      case "held_against" ->
          found.choice().permuted() ? "times dealt out anew" : "tests that were made";
      case "looks" -> found.choice().looks();
      case "site_ids" ->
          ExplorationWords.ordered(found, cluster.number()).stream()
              .map(FoulingClusterMemberRow::siteId)
              .collect(Collectors.joining("; "));
      case "warning" -> found.choice().permuted() ? ExplorationCautions.route() : null;
      default -> throw new IllegalArgumentException("There is no column " + column + ".");
    };
  }
}
