package sealspan.bench.truth;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.LongFunction;
import java.util.stream.IntStream;
import sealspan.study.Members;
import sealspan.study.fouling.WaterEffects;
import sealspan.study.practice.InventedWater;
import sealspan.table.WaterEffectRow;

/**
 * Whether the other questions about water are answered rightly: fouling that was noticed on a day,
 * in windows around main breaks and by weeks after them, and fouling at routine tests by the iron
 * in the water. Flushing and chlorine do nothing. Zones differ, and so do quarters of the year.
 *
 * <p>Run {@code java -cp ... sealspan.bench.truth.WaterRecordTruth RUNS}; the seeds are 1 to RUNS.
 */
public final class WaterRecordTruth {
  private static final int ZONES = 12;
  private static final int YEARS = 6;
  private static final int BEGIN = (int) LocalDate.of(2015, 1, 1).toEpochDay();
  private static final int DAYS = YEARS * 365;
  private static final double BREAKS_A_YEAR = 1.5;
  private static final double FLUSHINGS_A_YEAR = 2;
  private static final double NOTICED_A_DAY = 4 / 365.25;
  private static final double SOON = 4;
  private static final double LATER = 2;
  private static final int WEEKS = 13;
  private static final double FIRST_WEEK_LOG = StrictMath.log(4);
  private static final double FOULED_A_YEAR = .06;
  private static final double PER_DOUBLING = 1.5;
  private static final int ASSEMBLIES_A_ZONE = 50;

  /** Days since any assembly was installed; nothing here goes by it. */
  private static final int AGE = 5_000;

  private WaterRecordTruth() {}

  /**
   * One figure of a setting.
   *
   * @param coverage how often the interval held the truth
   * @param truth the true ratio
   * @param meanRatio geometric mean of the estimates that are more than 0
   */
  public record Figure(Coverage coverage, double truth, double meanRatio) {
    String row() {
      return String.format(Locale.ROOT, "%s %.3f | %.3f |", coverage.row(), truth, meanRatio);
    }
  }

  /** A row of the answers, and its truth. */
  private record Asked(String name, String exposure, String method, int which, double truth) {}

  /** Fouling noticed by day: the rate is higher in windows after a break, of the latest one. */
  static InventedWater byWindows(long seed) {
    Random random = new Random(seed);
    InventedWater record = new InventedWater();
    for (int zone = 0; zone < ZONES; zone++) {
      double rate = NOTICED_A_DAY * level(random);
      List<Integer> breaks = events(record, zone, random);
      for (int day = 0; day < DAYS; day++) {
        int since = since(breaks, day);
        int at = day;
        // A day before a break belongs to that break, as in the answers.
        boolean before = breaks.stream().anyMatch(one -> one > at && one - at <= 14);
        double ratio = since < 0 || before ? 1 : since <= 30 ? SOON : since <= 90 ? LATER : 1;
        notice(record, zone, day, rate * season(day) * ratio, random);
      }
    }
    return record;
  }

  /**
   * Fouling noticed by week: each break multiplies the rate of its week and the twelve after it,
   * the less the later, and weeks differ beyond chance.
   */
  static InventedWater byWeeks(long seed) {
    Random random = new Random(seed);
    InventedWater record = new InventedWater();
    for (int zone = 0; zone < ZONES; zone++) {
      double rate = NOTICED_A_DAY * level(random);
      boolean[] began = new boolean[DAYS / 7 + 1];
      for (int day : events(record, zone, random)) {
        began[day / 7] = true;
      }
      double noise = 1;
      for (int day = 0; day < DAYS; day++) {
        if (day % 7 == 0) {
          noise = StrictMath.exp(.4 * random.nextGaussian() - .08);
        }
        double log = 0;
        for (int lag = 0; lag < WEEKS && lag <= day / 7; lag++) {
          log += began[day / 7 - lag] ? curve(lag) : 0;
        }
        notice(record, zone, day, rate * season(day) * noise * StrictMath.exp(log), random);
      }
    }
    return record;
  }

  private static double curve(int lag) {
    return FIRST_WEEK_LOG * (1 - lag / (double) WEEKS);
  }

  /** Yearly routine tests; the rate of fouling goes with the mean iron since the last one. */
  static InventedWater byIron(long seed) {
    Random random = new Random(seed);
    InventedWater record = new InventedWater();
    double power = StrictMath.log(PER_DOUBLING) / StrictMath.log(2);
    for (int zone = 0; zone < ZONES; zone++) {
      String name = name(zone);
      double level = level(random);
      double[] iron = new double[12 * YEARS];
      double yearly = 0;
      for (int month = 0; month < iron.length; month++) {
        yearly = month % 12 == 0 ? .5 * random.nextGaussian() : yearly;
        iron[month] = .1 * StrictMath.exp(yearly + .5 * random.nextGaussian());
        int day = BEGIN + month * 365 / 12 + 3;
        sample(record, name, "Iron", day, iron[month]);
        sample(record, name, "Chlorine", day, StrictMath.exp(.4 * random.nextGaussian()));
      }
      for (int unit = 0; unit < ASSEMBLIES_A_ZONE; unit++) {
        int last = 5 + random.nextInt(360);
        while (true) {
          int day = last + 300 + random.nextInt(130);
          if (day >= DAYS) {
            break;
          }
          double sum = 0;
          int count = 0;
          for (int month = 0; month < iron.length; month++) {
            int sampled = month * 365 / 12 + 3;
            if (sampled > last && sampled <= day) {
              sum += iron[month];
              count++;
            }
          }
          double mean = sum / count / .1;
          double hazard =
              FOULED_A_YEAR
                  * level
                  * (day - last)
                  / 365.25
                  * season(day)
                  * StrictMath.pow(mean, power);
          boolean fouled = random.nextDouble() < -StrictMath.expm1(-hazard);
          record.test(
              name + "-" + unit,
              name,
              LocalDate.ofEpochDay(BEGIN + day),
              day - last,
              AGE,
              fouled ? "FOULING" : null,
              "ROUTINE");
          last = day;
        }
      }
    }
    return record;
  }

  private static String name(int zone) {
    return String.format(Locale.ROOT, "Z%02d", zone);
  }

  private static double level(Random random) {
    return StrictMath.exp(.4 * random.nextGaussian());
  }

  private static double season(int day) {
    return StrictMath.exp(.3 * StrictMath.sin(2 * StrictMath.PI * day / 365.25));
  }

  private static int since(List<Integer> breaks, int day) {
    int since = -1;
    for (int one : breaks) {
      since = one <= day ? day - one : since;
    }
    return since;
  }

  /** Breaks, by day from the begin of the record, and flushing, which does nothing. */
  private static List<Integer> events(InventedWater record, int zone, Random random) {
    String name = name(zone);
    sample(record, name, "Chlorine", BEGIN, 1);
    sample(record, name, "Chlorine", BEGIN + DAYS - 1, 1);
    List<Integer> breaks = new ArrayList<>();
    for (int day = 0; day < DAYS; day++) {
      if (random.nextDouble() < BREAKS_A_YEAR / 365.25) {
        record.event(name, "MAIN_BREAK", LocalDate.ofEpochDay(BEGIN + day), null);
        breaks.add(day);
      }
      if (random.nextDouble() < FLUSHINGS_A_YEAR / 365.25) {
        record.event(name, "FLUSHING", LocalDate.ofEpochDay(BEGIN + day), null);
      }
    }
    return breaks;
  }

  private static void notice(InventedWater record, int zone, int day, double rate, Random random) {
    double left = StrictMath.exp(-rate);
    for (double u = random.nextDouble(); u > left; u *= random.nextDouble()) {
      String name = name(zone);
      LocalDate noticed = LocalDate.ofEpochDay(BEGIN + day);
      record.test("noticed in " + name, name, noticed, null, AGE, "FOULING", "COMPLAINT");
    }
  }

  private static void sample(
      InventedWater record, String zone, String what, int day, double milligramsPerLitre) {
    record.sample(
        zone, what, LocalDate.ofEpochDay(day), Double.toString(milligramsPerLitre), "mg/l");
  }

  /** Coverage over records with the seeds from 1. */
  private static List<Figure> run(
      int runs, LongFunction<InventedWater> record, Coverage.Side side, List<Asked> asked) {
    List<List<WaterEffectRow>> all =
        IntStream.rangeClosed(1, runs)
            .parallel()
            .mapToObj(
                seed -> {
                  InventedWater one = record.apply(seed);
                  return WaterEffects.of(Members.of(one.assemblies()), one.zones());
                })
            .toList();
    List<Figure> figures = new ArrayList<>();
    for (Asked each : asked) {
      int known = 0;
      int covered = 0;
      double logs = 0;
      int positive = 0;
      for (List<WaterEffectRow> rows : all) {
        WaterEffectRow row =
            rows.stream()
                .filter(r -> r.exposure().equals(each.exposure()))
                .filter(r -> r.method().equals(each.method()))
                .skip(each.which())
                .findFirst()
                .orElseThrow();
        if (row.lower() != null && row.upper() != null) {
          known++;
          covered += row.lower() <= each.truth() && each.truth() <= row.upper() ? 1 : 0;
          if (row.ratio() > 0) {
            logs += StrictMath.log(row.ratio());
            positive++;
          }
        }
      }
      Coverage coverage = new Coverage(each.name(), known, runs - known, covered, side);
      figures.add(new Figure(coverage, each.truth(), StrictMath.exp(logs / Math.max(1, positive))));
    }
    return figures;
  }

  /** Noticed fouling in windows around breaks. */
  public static List<Figure> windows(int runs) {
    String own = "SELF_CONTROLLED";
    return run(
        runs,
        WaterRecordTruth::byWindows,
        Coverage.Side.BOTH,
        List.of(
            new Asked("noticed 14 to 1 days before a break", "MAIN_BREAK", own, 0, 1),
            new Asked("noticed 0 to 30 days after a break", "MAIN_BREAK", own, 1, SOON),
            new Asked("noticed 31 to 90 days after a break", "MAIN_BREAK", own, 2, LATER),
            new Asked("noticed 0 to 30 days after a flushing", "FLUSHING", own, 1, 1),
            new Asked("noticed 31 to 90 days after a flushing", "FLUSHING", own, 2, 1)));
  }

  /** Noticed fouling by weeks after breaks. */
  public static List<Figure> weeks(int runs) {
    double mean = 0;
    for (int lag = 0; lag < WEEKS; lag++) {
      mean += curve(lag) / WEEKS;
    }
    return run(
        runs,
        WaterRecordTruth::byWeeks,
        Coverage.Side.BOTH,
        List.of(
            new Asked(
                "noticed in 13 weeks from a break, weeks differ",
                "MAIN_BREAK",
                "DISTRIBUTED_LAG",
                0,
                StrictMath.exp(mean)),
            new Asked(
                "noticed in 13 weeks from a flushing, weeks differ",
                "FLUSHING",
                "DISTRIBUTED_LAG",
                0,
                1)));
  }

  /** Routine tests by iron and by chlorine. */
  public static List<Figure> qualities(int runs) {
    return run(
        runs,
        WaterRecordTruth::byIron,
        Coverage.Side.LOWER,
        List.of(
            new Asked(
                "routine tests, twice the iron", "IRON", "INTERVAL_EXPOSURE", 0, PER_DOUBLING),
            new Asked("routine tests, twice the chlorine", "CHLORINE", "INTERVAL_EXPOSURE", 0, 1)));
  }

  /** Prints the table of the study. */
  public static void main(String[] arguments) {
    int runs = Integer.parseInt(arguments[0]);
    System.out.println(
        "| interval of | runs | not identified | coverage | asked for | true ratio | mean estimate |");
    System.out.println("|---|---:|---:|---:|---|---:|---:|");
    for (List<Figure> figures : List.of(windows(runs), weeks(runs), qualities(runs))) {
      figures.forEach(figure -> System.out.println(figure.row()));
    }
  }
}
