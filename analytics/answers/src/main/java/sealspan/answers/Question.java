package sealspan.answers;

import java.util.ArrayList;
import java.util.List;

/**
 * A question that can be asked: one file of SQL with a header of comments, {@code -- name: value}.
 *
 * <p>A line {@code -- chart: ...} says how the answer is drawn, see {@link ChartHeader}. In the SQL
 * a filter is written {@code $name} and is bound, never pasted; a filter that is not given is null.
 * After the line {@code -- beneath} stands a second query of one text column: the lines beneath the
 * answer, such as n and what was left out. Before it, after the line {@code -- in words}, may stand
 * a query of one text column for the answer in words, which is shown first.
 *
 * @param name the name that people type; that of the file
 * @param title the question in words
 * @param askedBy who asks it
 * @param filters what it takes
 * @param studyCall what is worked out after the SQL; null for nothing
 * @param chart how the answer is drawn; null where it is not
 * @param leftOut what the answer leaves out and why
 * @param cautions what to keep in mind when reading it
 * @param sql the query
 * @param wordsSql the query of the answer in words; null for none
 * @param beneathSql the query of the lines beneath
 */
public record Question(
    String name,
    String title,
    String askedBy,
    List<FilterUse> filters,
    StudyCall studyCall,
    ChartHeader chart,
    List<String> leftOut,
    List<String> cautions,
    String sql,
    String wordsSql,
    String beneathSql) {

  private static final String BENEATH = "-- beneath";
  private static final String IN_WORDS = "-- in words";

  public Question {
    filters = List.copyOf(filters);
    leftOut = List.copyOf(leftOut);
    cautions = List.copyOf(cautions);
  }

  /**
   * Reads a question.
   *
   * @param name its name
   * @param file the text of its file
   */
  static Question parse(String name, String file) {
    List<FilterUse> filters = new ArrayList<>();
    List<String> leftOut = new ArrayList<>();
    List<String> cautions = new ArrayList<>();
    String title = null;
    String askedBy = null;
    StudyCall studyCall = null;
    ChartHeader chart = null;
    String axisX = null;
    String axisY = null;
    int at = 0;
    List<String> lines = file.lines().toList();
    for (; at < lines.size() && lines.get(at).startsWith("-- "); at++) {
      String[] header = lines.get(at).substring(3).split(":", 2);
      String value = header.length == 2 ? header[1].strip() : "";
      switch (header[0]) {
        case "title" -> title = value;
        case "asked by" -> askedBy = value;
        case "filter" -> filters.add(FilterUse.of(value));
        case "study" -> studyCall = StudyCall.of(value);
        case "chart" -> chart = ChartHeader.of(value);
        case "x axis" -> axisX = value;
        case "y axis" -> axisY = value;
        case "left out" -> leftOut.add(value);
        case "caution" -> cautions.add(value);
        default -> throw new IllegalArgumentException(name + ": unknown header " + lines.get(at));
      }
    }
    int beneath = lines.indexOf(BENEATH);
    if (title == null || askedBy == null || beneath < at) {
      throw new IllegalArgumentException(name + " lacks a title, who asks it, or -- beneath");
    }
    int words = lines.indexOf(IN_WORDS);
    return new Question(
        name,
        title,
        askedBy,
        filters,
        studyCall,
        chart == null ? null : chart.named(axisX, axisY),
        leftOut,
        cautions,
        String.join("\n", lines.subList(at, words < 0 ? beneath : words)),
        words < 0 ? null : String.join("\n", lines.subList(words + 1, beneath)),
        String.join("\n", lines.subList(beneath + 1, lines.size())));
  }
}
