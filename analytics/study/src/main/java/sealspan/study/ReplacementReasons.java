package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sealspan.stats.Estimate;
import sealspan.stats.PointEstimate;
import sealspan.stats.survival.AalenJohansen;
import sealspan.stats.survival.EndedLife;
import sealspan.stats.survival.Lifetime;
import sealspan.stats.survival.LogRank;
import sealspan.table.CurveRow;
import sealspan.table.SealLifeRow;

/**
 * Why first seals came to their end: the share replaced by an age for each reason, or removed with
 * the assembly, each in the presence of the others; and whether types differ in how long a first
 * seal stays.
 *
 * @param figures the figures
 * @param curves one curve for each reason that occurred
 */
record ReplacementReasons(List<SealLifeRow> figures, List<CurveRow> curves) {
  private static final String ESTIMATOR = "AALEN_JOHANSEN";
  private static final String COMPARISON = "LOG_RANK";
  private static final double LEVEL = 0.95;
  private static final int FIVE_YEARS = (int) Math.round(5 * RatePriors.YEAR_DAYS);

  /** Fewer replacements than this draw no curve. */
  private static final int FEWEST_ENDINGS = 5;

  /** The reasons in a stratum; types are compared where the stratum has several. */
  static ReplacementReasons of(String stratum, FirstSeals seals) {
    Map<String, Integer> numbers = new TreeMap<>();
    seals.seals().stream()
        .map(FirstSeal::reason)
        .filter(reason -> reason != null)
        .sorted()
        .forEach(reason -> numbers.putIfAbsent(reason, numbers.size()));
    List<EndedLife> lives = new ArrayList<>();
    int ended = 0;
    for (FirstSeal seal : seals.seals()) {
      String reason = seal.reason();
      lives.add(
          new EndedLife(
              seal.entryAge(),
              seal.endAge(),
              reason == null ? EndedLife.GOING_ON : numbers.get(reason),
              1));
      ended += reason == null ? 0 : 1;
    }
    SealFigures sample =
        new SealFigures(
            stratum,
            Replacements.QUESTION,
            ESTIMATOR,
            lives.size(),
            lives.size(),
            ended,
            seals.leftOut());
    List<SealLifeRow> figures = new ArrayList<>();
    List<CurveRow> curves = new ArrayList<>();
    if (ended >= FEWEST_ENDINGS
        && AalenJohansen.of(lives, numbers.size())
            instanceof Estimate.Identified<AalenJohansen> found) {
      numbers.forEach(
          (reason, number) -> {
            figures.add(share(sample, seals, found.value(), reason, number));
            curves.addAll(points(sample, found.value(), reason, number));
          });
    }
    SealLifeRow types = types(sample.by(COMPARISON), seals);
    if (types != null) {
      figures.add(types);
    }
    return new ReplacementReasons(List.copyOf(figures), List.copyOf(curves));
  }

  private static SealLifeRow share(
      SealFigures sample, FirstSeals seals, AalenJohansen curves, String reason, int number) {
    String words = reason.toLowerCase(Locale.ROOT).replace('_', ' ');
    int day = Math.min(FIVE_YEARS, curves.any().curve().toDay());
    return sample.of(
        reason.equals(FirstSeal.REMOVED)
            ? "share removed with the assembly within " + years(day) + " years"
            : "share replaced within " + years(day) + " years, reason: " + words,
        curves.incidence(number, day, LEVEL),
        1,
        curves.any().curve().toDay() / RatePriors.YEAR_DAYS,
        seals.basis() + "; " + curves.total(number) + " of this reason; other reasons compete");
  }

  private static List<CurveRow> points(
      SealFigures sample, AalenJohansen curves, String reason, int number) {
    List<CurveRow> points = new ArrayList<>();
    int[] days = curves.days();
    int last = curves.any().curve().toDay();
    points.add(point(sample, curves, reason, number, curves.any().curve().fromDay(), -1));
    for (int i = 0; i < days.length; i++) {
      if (curves.ended(number)[i] > 0) {
        points.add(point(sample, curves, reason, number, days[i], i));
      }
    }
    if (points.get(points.size() - 1).days() < last) {
      points.add(point(sample, curves, reason, number, last, -1));
    }
    return points;
  }

  private static CurveRow point(
      SealFigures sample, AalenJohansen curves, String reason, int number, int day, int step) {
    PointEstimate at = curves.incidence(number, day, LEVEL).orThrow();
    return sample.point(
        reason,
        day,
        at,
        step < 0 ? 0 : Math.round(curves.any().curve().atRisk()[step]),
        step < 0 ? 0 : Math.round(curves.ended(number)[step]));
  }

  /** Whether types share one curve until replaced; null where there is nothing to compare. */
  private static SealLifeRow types(SealFigures figures, FirstSeals seals) {
    Map<String, List<Lifetime>> byType = new TreeMap<>();
    int replaced = 0;
    for (FirstSeal seal : seals.seals()) {
      if (seal.type() != null) {
        boolean over = seal.replaced();
        int entry = seal.entryAge();
        byType
            .computeIfAbsent(seal.type(), type -> new ArrayList<>())
            .add(
                over
                    ? Lifetime.ended(entry, seal.endAge())
                    : Lifetime.goingOn(entry, seal.endAge()));
        replaced += over ? 1 : 0;
      }
    }
    if (byType.size() < 2
        || replaced < FEWEST_ENDINGS
        || !(LogRank.of(List.copyOf(byType.values())) instanceof Estimate.Identified<LogRank> t)) {
      return null;
    }
    LogRank test = t.value();
    List<String> names = List.copyOf(byType.keySet());
    List<String> counts = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      counts.add(
          String.format(
              Locale.ROOT,
              "%s %.0f against %.1f",
              names.get(i),
              test.observed()[i],
              test.expected()[i]));
    }
    return figures.row(
        "chance of such differences between types if seals of all types stay equally long",
        test.pValue(),
        null,
        seals.seals().stream().mapToInt(FirstSeal::endAge).max().orElse(0) / RatePriors.YEAR_DAYS,
        null,
        String.format(
            Locale.ROOT,
            "log-rank %.2f on %d degrees of freedom; replaced against expected: %s; %s",
            test.chiSquared(),
            test.degreesOfFreedom(),
            counts.stream().collect(Collectors.joining(", ")),
            seals.basis()));
  }

  private static String years(int days) {
    return SealFigures.text(days / RatePriors.YEAR_DAYS);
  }
}
