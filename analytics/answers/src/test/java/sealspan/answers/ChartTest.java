package sealspan.answers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import sealspan.answers.ResultTable.ResultColumn;
import sealspan.answers.chart.Chart;
import sealspan.answers.chart.SvgChart;
import sealspan.answers.chart.TextChart;

class ChartTest {
  private static final String STEP =
      "x=years y=share lower=low upper=high also=least by=stratum draw=step from=0 to=1";

  private static Question question(String chart) {
    return Question.parse(
        "curve",
        "-- title: How long?\n-- asked by: analyst\n"
            + (chart == null ? "" : "-- chart: " + chart + "\n-- x axis: age, years\n")
            + "select 1\n-- beneath\nselect 'n'\n");
  }

  private static Answer answer(List<List<Object>> rows) {
    return new Answer(
        "curve",
        "How long do <seals> & discs last?",
        "3 events",
        new ResultTable(
            List.of(
                new ResultColumn("stratum", "VARCHAR"),
                new ResultColumn("years", "DOUBLE"),
                new ResultColumn("share", "DOUBLE"),
                new ResultColumn("low", "DOUBLE"),
                new ResultColumn("high", "DOUBLE"),
                new ResultColumn("least", "DOUBLE"),
                new ResultColumn("day", "DATE")),
            rows),
        List.of("n = 4", "Caution: invented."));
  }

  private static List<Object> row(String stratum, Double x, Double y, Double... more) {
    List<Object> row = new ArrayList<>(List.of(stratum));
    row.add(x);
    row.add(y);
    row.addAll(Arrays.asList(more));
    row.add(null);
    return row;
  }

  /**
   * A curve by hand: 1 until year 2, .5 (interval .25 to .75, at least .25) until year 4, then 0.
   */
  private static final List<List<Object>> HALVED =
      List.of(
          row("RP", 4.0, 0.0, 0.0, null, null),
          row("RP", 0.0, 1.0, 1.0, 1.0, 1.0),
          row("RP", 2.0, 0.5, 0.25, 0.75, 0.25),
          row("RP", null, 0.9, null, null, null),
          row("RP", 3.0, null, null, null, null));

  @Test
  void drawsAStepCurveInTheTerminal() {
    assertEquals(
        """
        How long do <seals> & discs last?

        share
          1 +AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA
            |
            |
            |
        0.8 +
            |                                  .................................
            |                                  .................................
            |                                  .................................
        0.6 +                                  .................................
            |                                  .................................
            |                                  AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA
            |                                  :::::::::::::::::::::::::::::::::
        0.4 +                                  :::::::::::::::::::::::::::::::::
            |                                  :::::::::::::::::::::::::::::::::
            |                                  :::::::::::::::::::::::::::::::::
            |                                  :::::::::::::::::::::::::::::::::
        0.2 +
            |
            |
            |
          0 +                                                                   A
            ++----------------+----------------+---------------+----------------+
             0                1                2               3                4
                                          age, years

          A  RP
          .  interval
          :  left open by the data

        As of: 3 events
        n = 4
        Caution: invented.
        """,
        TextChart.of(Chart.of(question(STEP), answer(HALVED))));
  }

  @Test
  void theSvgIsWellFormedAndPutsPointsWhereTheyBelong() throws Exception {
    Document svg = parsed(SvgChart.of(Chart.of(question(STEP), answer(HALVED))));
    List<String> lines = new ArrayList<>();
    NodeList polylines = svg.getElementsByTagName("polyline");
    for (int i = 0; i < polylines.getLength(); i++) {
      lines.add(((Element) polylines.item(i)).getAttribute("points"));
    }
    // The plot is 730 wide from 70 and 360 high from 50: year 2 of 4 at 435, .5 at 230, .25 at 320.
    assertEquals(
        List.of(
            "70.0,50.0 435.0,50.0 435.0,320.0",
            "70.0,50.0 435.0,50.0 435.0,230.0 800.0,230.0 800.0,410.0"),
        lines);
    String text = svg.getDocumentElement().getTextContent();
    for (String part :
        List.of(
            "How long do <seals> & discs last?", "age, years", "As of: 3 events", "n = 4", "RP")) {
      assertTrue(text.contains(part), part);
    }
  }

  @Test
  void drawsPointsByDayWithTheirIntervals() throws Exception {
    List<Object> first = new ArrayList<>(row("RP", 1.0, 2.0, 1.0, 3.0, null));
    List<Object> second = new ArrayList<>(row("DC", 1.0, 4.0, null, null, null));
    first.set(6, LocalDate.of(2020, 1, 1));
    second.set(6, LocalDate.of(2024, 1, 1));
    Chart chart =
        Chart.of(
            question("x=day y=share lower=low upper=high by=stratum draw=points"),
            answer(List.of(first, second)));
    Document svg = parsed(SvgChart.of(chart));
    assertEquals(2, svg.getElementsByTagName("circle").getLength());
    String text = TextChart.of(chart);
    assertTrue(text.contains("2020        "), text);
    assertTrue(text.contains("2024"), text);
    assertTrue(text.contains("  A  RP\n  B  DC\n  .  interval\n"), text);
  }

  @Test
  void saysWhatIsNotDrawn() {
    List<List<Object>> rows = new ArrayList<>();
    for (int i = 0; i < 9; i++) {
      rows.add(row("S" + i, 1.0, 7.0, null, null, null));
    }
    String many = TextChart.of(Chart.of(question("x=years y=share by=stratum"), answer(rows)));
    assertTrue(many.contains("Drawn: the first 6 of 9 series"), many);
    assertFalse(many.contains("S6"), many);
    Chart none = Chart.of(question("x=years y=share"), answer(List.of()));
    assertTrue(TextChart.of(none).contains("nothing to draw"), TextChart.of(none));
    assertTrue(SvgChart.of(none).contains("nothing to draw"), SvgChart.of(none));
    AnswersException e =
        assertThrows(AnswersException.class, () -> Chart.of(question(null), answer(List.of())));
    assertTrue(e.getMessage().startsWith("The question curve has no chart."), e.getMessage());
  }

  @Test
  void rejectsAHeaderThatNamesNoSuchThing() {
    for (String header :
        List.of("x=a", "y=a", "x=a y=b z=c", "x=a y=b lower=c", "x=a y=b draw=curly", "x y=b")) {
      assertThrows(IllegalArgumentException.class, () -> question(header), header);
    }
  }

  private static Document parsed(String svg) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
  }
}
