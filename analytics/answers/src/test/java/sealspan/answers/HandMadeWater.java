package sealspan.answers;

import java.util.List;
import sealspan.table.WaterEffectRow;

/** What a study of the water found, invented: breaks foul, hardness is not told, few noticed it. */
final class HandMadeWater {
  private HandMadeWater() {}

  static List<WaterEffectRow> effects() {
    return List.of(
        new WaterEffectRow(
            0,
            "MAIN_BREAK",
            "since the last pass",
            "INTERVAL_EXPOSURE",
            "after a main break in the same zone the chance of a fouled check at the next test is"
                + " 1.8 times (1.3 to 2.5) that without; 14 of 96 tests; future breaks show 1.0"
                + " (0.7 to 1.4)",
            240,
            25,
            96,
            14,
            9,
            6,
            1.92,
            1.35,
            2.74,
            "tests that met such an event with tests that did not, within zones, at equal season and"
                + " type",
            1.8,
            1.3,
            2.5,
            0.0007,
            0.0014,
            2,
            1.0,
            0.7,
            1.4,
            0.9,
            0.6,
            1.35,
            "events",
            "tests without a recorded water zone: 3",
            null),
        new WaterEffectRow(
            1,
            "HARDNESS",
            "since the last pass",
            "INTERVAL_EXPOSURE",
            "whether fouling is found more often with twice the hardness in the same zone since the"
                + " last pass is not identified: there is no test with a known exposure; 0 of 0"
                + " tests",
            0,
            0,
            null,
            null,
            0,
            0,
            null,
            null,
            null,
            "twice the mean in mg/l caco3, within zones, at equal season and type",
            null,
            null,
            null,
            null,
            null,
            2,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            "results of hardness in a unit not understood: mg/l: 12; tests without a recorded water"
                + " zone: 3; tests without a result since the last pass: 240",
            "there is no test with a known exposure"),
        noticed(2, "0 to 30 days after it", 4, 4.6, 1.05, 15.9));
  }

  private static WaterEffectRow noticed(
      int place, String window, int inside, double ratio, double lower, double upper) {
    return new WaterEffectRow(
        place,
        "MAIN_BREAK",
        window,
        "SELF_CONTROLLED",
        "fouling noticed 0 to 30 days after a main break in the same zone comes 4.6 times (1.1 to"
            + " 15.9) as often as on other days; 4 of 14",
        14,
        14,
        null,
        inside,
        9,
        3,
        ratio,
        lower,
        upper,
        "days in the window with other days of the zone, by quarter",
        null,
        null,
        null,
        null,
        null,
        0,
        null,
        null,
        null,
        null,
        null,
        null,
        "outcomes of a zone",
        null,
        null);
  }
}
