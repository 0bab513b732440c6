package sealspan.answers;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import sealspan.answers.ResultTable.ResultColumn;
import sealspan.study.ForecastReliability;
import sealspan.study.ForecastScores;
import sealspan.study.ScoredForecast;

/**
 * What forecasts were worth, from a row for each of them: its group, its probability, that of its
 * type, and whether the test failed, in the order in which that became known.
 */
enum ForecastCall implements StudyCall {
  SCORES {
    @Override
    public ResultTable applyTo(ResultTable table) {
      List<List<Object>> rows = new ArrayList<>();
      for (ForecastScores s : ForecastScores.of(forecasts(table))) {
        rows.add(
            Arrays.asList(
                s.group(),
                s.n(),
                s.failed(),
                s.expected(),
                s.brier(),
                s.reliability(),
                s.resolution(),
                s.uncertainty(),
                s.skill(),
                s.skillLower(),
                s.skillUpper(),
                s.logScore(),
                s.calibrationP(),
                s.monitor(),
                s.verdict()));
      }
      return new ResultTable(
          columns(
              "group VARCHAR, n INTEGER, failed INTEGER, expected DOUBLE, brier DOUBLE,"
                  + " reliability DOUBLE, resolution DOUBLE, uncertainty DOUBLE, skill DOUBLE,"
                  + " skill_lower DOUBLE, skill_upper DOUBLE, log_score DOUBLE,"
                  + " calibration_p DOUBLE, monitor DOUBLE, verdict VARCHAR"),
          rows);
    }
  },
  RELIABILITY {
    @Override
    public ResultTable applyTo(ResultTable table) {
      List<List<Object>> rows = new ArrayList<>();
      for (ForecastReliability r : ForecastReliability.of(forecasts(table))) {
        rows.add(
            Arrays.asList(
                r.said(),
                r.failedShare(),
                r.n(),
                r.lowest(),
                r.highest(),
                r.bandLower(),
                r.bandUpper()));
      }
      return new ResultTable(
          columns(
              "said DOUBLE, failed_share DOUBLE, n INTEGER, lowest DOUBLE, highest DOUBLE,"
                  + " band_lower DOUBLE, band_upper DOUBLE"),
          rows);
    }
  };

  /** Reads the form {@code forecast scores} or {@code forecast reliability}. */
  static ForecastCall of(String header) {
    return switch (header) {
      case "forecast scores" -> SCORES;
      case "forecast reliability" -> RELIABILITY;
      default -> throw new IllegalArgumentException("Not a study call: " + header);
    };
  }

  private static List<ScoredForecast> forecasts(ResultTable table) {
    int group = table.indexOf("group");
    int probability = table.indexOf("probability");
    int base = table.indexOf("base");
    int failed = table.indexOf("failed");
    List<ScoredForecast> forecasts = new ArrayList<>(table.rows().size());
    for (List<Object> row : table.rows()) {
      forecasts.add(
          new ScoredForecast(
              (String) row.get(group),
              ((Number) row.get(probability)).doubleValue(),
              ((Number) row.get(base)).doubleValue(),
              (Boolean) row.get(failed)));
    }
    return forecasts;
  }

  private static List<ResultColumn> columns(String definitions) {
    return Arrays.stream(definitions.split(", "))
        .map(d -> new ResultColumn(d.split(" ")[0], d.split(" ")[1]))
        .toList();
  }
}
