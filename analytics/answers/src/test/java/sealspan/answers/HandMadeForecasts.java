package sealspan.answers;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.table.DriftRow;
import sealspan.table.ForecastRow;
import sealspan.table.FrozenForecastRow;
import sealspan.table.LevelRow;
import sealspan.table.SuddenFailureRow;

/** Levels and forecasts of the small invented utility. */
final class HandMadeForecasts {
  private static final Instant ISSUED = Instant.parse("2024-06-01T09:00:00Z");

  private HandMadeForecasts() {}

  static List<LevelRow> levels(String assembly) {
    if (!assembly.equals("A2")) {
      return List.of();
    }
    return List.of(
        new LevelRow(
            "A2",
            "check1",
            "DIRECTION_OF_FLOW",
            LocalDate.parse("2024-05-31"),
            3,
            1.3,
            1.0,
            1.34,
            1.2,
            1.48,
            -0.2,
            -0.31,
            -0.09,
            0.24,
            0.21,
            "type=DC",
            null),
        new LevelRow(
            "A2",
            "check2",
            "DIRECTION_OF_FLOW",
            LocalDate.parse("2024-05-31"),
            1,
            1.9,
            1.0,
            1.9,
            1.67,
            2.13,
            -0.02,
            -0.12,
            0.08,
            0.0001,
            0.00001,
            "type=DC",
            "one reading since the last action: its drift is that of its type"));
  }

  static ForecastRow forecast(String assembly) {
    return switch (assembly) {
      case "A1" ->
          new ForecastRow(
              "A1",
              null,
              null,
              null,
              null,
              null,
              null,
              null,
              null,
              null,
              0,
              2,
              2,
              null,
              null,
              null,
              null,
              "it failed on 2024-04-04 and has not passed since");
      case "A2" ->
          new ForecastRow(
              "A2",
              "type=DC",
              "cut-1",
              "u3",
              LocalDate.parse("2024-05-31"),
              LocalDate.parse("2025-05-31"),
              0.27,
              0.24,
              0.04,
              "check1",
              4,
              2,
              0,
              0.01,
              0.08,
              0.6,
              0.05,
              null);
      case "A3" ->
          new ForecastRow(
              "A3",
              null,
              null,
              null,
              null,
              null,
              null,
              null,
              null,
              null,
              0,
              0,
              0,
              null,
              null,
              null,
              null,
              "no pass is on record");
      default -> null;
    };
  }

  /** Of A1 one that came true, of A2 enough of them for a score. */
  static List<FrozenForecastRow> frozen(String assembly) {
    List<FrozenForecastRow> rows = new ArrayList<>();
    if (assembly.equals("A1")) {
      rows.add(scored("A1", "RP", 0, 0.4, 0.2, true));
    }
    if (assembly.equals("A2")) {
      for (int i = 1; i <= 30; i++) {
        rows.add(scored("A2", "DC", i, 0.02 * (i % 10), 0.1, i % 10 >= 8));
      }
      rows.add(
          new FrozenForecastRow(
              "A2",
              "f-2024",
              ISSUED,
              "cut-1",
              "1",
              "u3",
              LocalDate.parse("2024-05-31"),
              0.01,
              0.08,
              0.27,
              0.6,
              0.05,
              0.24,
              0.04,
              "check1",
              "DC",
              null,
              null,
              null,
              null,
              null,
              null,
              "no counted round since"));
    }
    return rows;
  }

  private static FrozenForecastRow scored(
      String assembly, String type, int number, double probability, double base, boolean failed) {
    LocalDate day = LocalDate.parse("2023-04-05").plusDays(number);
    return new FrozenForecastRow(
        assembly,
        "f-" + number,
        ISSUED,
        "cut-0",
        "1",
        "b" + number,
        day.minusYears(1),
        probability / 10,
        probability / 2,
        probability,
        probability,
        base,
        0,
        probability,
        "sudden failure",
        type,
        "o" + number,
        day,
        ISSUED.plusSeconds(86_400L * (300 + number)),
        probability,
        base,
        failed,
        null);
  }

  static List<DriftRow> drifts() {
    return List.of(
        new DriftRow(
            "type=RP",
            "check1",
            "STATIC_DROP",
            1,
            1,
            1,
            1,
            1,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            "1 steps from one reading to the next; a drift needs at least 20"));
  }

  static SuddenFailureRow suddenFailure() {
    return new SuddenFailureRow("type=RP", 1, 2, 2, 0, 1.2, 6.0, 0.2, null);
  }
}
