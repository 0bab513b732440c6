package sealspan.answers;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import sealspan.table.FoulingClusterMemberRow;
import sealspan.table.FoulingClusterRow;
import sealspan.table.FoulingCoefficientRow;
import sealspan.table.FoulingFitRow;
import sealspan.table.FoulingRows;
import sealspan.table.FoulingScanRow;

/** What a study of fouling found, invented: one cluster at the school, and one that is none. */
final class HandMadeFouling {
  private HandMadeFouling() {}

  static FoulingRows rows() {
    return new FoulingRows(
        "all", 1, fit(), coefficients(), scan(), clusters(), members(), HandMadeWater.effects());
  }

  private static FoulingFitRow fit() {
    return new FoulingFitRow(
        "cut-1",
        "0:9",
        Instant.parse("2025-02-01T00:00:00Z"),
        "test",
        "A fouling failure is a failed round whose recorded mechanism is debris, deposit or scale.",
        260,
        41,
        24,
        3,
        240,
        23,
        2,
        LocalDate.parse("2020-04-02"),
        LocalDate.parse("2024-11-20"),
        87_600,
        "REGRESSION",
        "DC",
        null);
  }

  private static List<FoulingCoefficientRow> coefficients() {
    return List.of(
        new FoulingCoefficientRow("constant", -2.4, -2.9, -1.9),
        new FoulingCoefficientRow("log exposure years", 0.9, 0.2, 1.6),
        new FoulingCoefficientRow("type=RP", 0.5, 0.1, 0.9));
  }

  private static FoulingScanRow scan() {
    return new FoulingScanRow(
        230,
        22,
        8,
        1,
        2,
        "S8, S9",
        58,
        58,
        0,
        LocalDate.parse("2020-04-01"),
        LocalDate.parse("2024-12-31"),
        19,
        3,
        12,
        8,
        49_000,
        0.25,
        999,
        20_260_101,
        null);
  }

  private static List<FoulingClusterRow> clusters() {
    return List.of(
        new FoulingClusterRow(
            1,
            37.01,
            -139.99,
            0.42,
            LocalDate.parse("2023-01-01"),
            LocalDate.parse("2023-06-30"),
            9,
            7,
            1.3,
            7.4,
            7.9,
            0.0002,
            "GUMBEL_EXTRAPOLATED",
            0.001,
            0,
            true,
            2,
            14),
        new FoulingClusterRow(
            2,
            37.05,
            -139.9,
            1.1,
            LocalDate.parse("2021-07-01"),
            LocalDate.parse("2021-09-30"),
            6,
            3,
            1.1,
            2.9,
            1.4,
            0.871,
            "MONTE_CARLO",
            0.871,
            870,
            false,
            1,
            420));
  }

  private static List<FoulingClusterMemberRow> members() {
    return List.of(
        new FoulingClusterMemberRow(1, "S1", "Z1", 37.01, -139.99, 0, 5, 4, 0.7, 1),
        new FoulingClusterMemberRow(1, "S2", "Z2", 37.0137, -139.99, 0.42, 4, 3, 0.6, 0.36),
        new FoulingClusterMemberRow(2, "S2", "Z2", 37.05, -139.9, 1.1, 6, 3, 1.1, 0.2));
  }
}
