package sealspan.study.fouling;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sealspan.table.WaterSampleRow;
import sealspan.table.ZoneRows;

/**
 * One water quality, as the base-2 logarithm of the mean of the results in a time: one more is
 * twice as much. A result that is not detected, or out of range, stands at its limit, which is the
 * most, or the least, that it can be. Only the fraction with the most results counts, since total
 * and dissolved are different things.
 */
final class QualityExposure implements WaterExposure {
  private final WaterQuality quality;
  private final Map<String, List<Result>> results = new TreeMap<>();
  private final Map<String, Integer> leftOut = new LinkedHashMap<>();
  private int atLimit;

  /** A result in the quality's unit. */
  private record Result(int day, double value) {}

  private QualityExposure(WaterQuality quality) {
    this.quality = quality;
  }

  static QualityExposure of(WaterQuality quality, List<ZoneRows> zones) {
    QualityExposure exposure = new QualityExposure(quality);
    String fraction = commonestFraction(quality, zones);
    for (ZoneRows zone : zones) {
      List<Result> own = new ArrayList<>();
      for (WaterSampleRow sample : zone.samples()) {
        if (isOf(quality, sample)) {
          exposure.add(sample, fraction, own);
        }
      }
      own.sort(Comparator.comparingInt(Result::day).thenComparingDouble(Result::value));
      exposure.results.put(zone.zoneId(), own);
    }
    return exposure;
  }

  private static boolean isOf(WaterQuality quality, WaterSampleRow sample) {
    return sample.characteristic() != null && quality.is(sample.characteristic());
  }

  private static String commonestFraction(WaterQuality quality, List<ZoneRows> zones) {
    Map<String, Integer> counts = new TreeMap<>();
    for (ZoneRows zone : zones) {
      for (WaterSampleRow sample : zone.samples()) {
        if (isOf(quality, sample)) {
          counts.merge(fraction(sample), 1, Integer::sum);
        }
      }
    }
    String commonest = "";
    for (Map.Entry<String, Integer> fraction : counts.entrySet()) {
      if (fraction.getValue() > counts.getOrDefault(commonest, 0)) {
        commonest = fraction.getKey();
      }
    }
    return commonest;
  }

  private static String fraction(WaterSampleRow sample) {
    return sample.fraction() == null ? "" : sample.fraction();
  }

  private void add(WaterSampleRow sample, String fraction, List<Result> into) {
    boolean measured = "MEASURED".equals(sample.detection());
    String text = measured ? sample.enteredValue() : sample.detectionLimit();
    String unit = measured ? sample.enteredUnit() : sample.detectionLimitUnit();
    Double factor = quality.factor(unit);
    Double number = number(text);
    String what = " results of " + quality.words();
    if (!fraction(sample).equals(fraction)) {
      leftOut.merge(what + " of another fraction than " + named(fraction), 1, Integer::sum);
    } else if (sample.day() == null || number == null) {
      leftOut.merge(what + " without a number, a limit or a day", 1, Integer::sum);
    } else if (factor == null) {
      leftOut.merge(what + " in a unit not understood: " + named(unit), 1, Integer::sum);
    } else {
      atLimit += measured ? 0 : 1;
      into.add(new Result((int) sample.day().toEpochDay(), number * factor));
    }
  }

  private static String named(String text) {
    return text == null || text.isEmpty() ? "not recorded" : text;
  }

  private static Double number(String text) {
    try {
      double value = text == null ? -1 : new BigDecimal(text.strip()).doubleValue();
      return value >= 0 && Double.isFinite(value) ? value : null;
    } catch (NumberFormatException notANumber) {
      return null;
    }
  }

  /** Results left out, by the reason in words. */
  Map<String, Integer> leftOut() {
    Map<String, Integer> named = new LinkedHashMap<>();
    leftOut.forEach((reason, count) -> named.put(reason.strip(), count));
    return named;
  }

  /** Results that stand at their limit. */
  int atLimit() {
    return atLimit;
  }

  WaterQuality quality() {
    return quality;
  }

  @Override
  public String text() {
    return quality.name();
  }

  @Override
  public boolean isEvent() {
    return false;
  }

  @Override
  public Double between(String zoneId, int afterDay, int lastDay) {
    List<Result> own = results.getOrDefault(zoneId, List.of());
    double sum = 0;
    int count = 0;
    for (int i = firstAfter(own, afterDay); i < own.size() && own.get(i).day() <= lastDay; i++) {
      sum += own.get(i).value();
      count++;
    }
    return sum > 0 ? StrictMath.log(sum / count) / StrictMath.log(2) : null;
  }

  @Override
  public int[] daysBetween(String zoneId, int afterDay, int lastDay) {
    List<Result> own = results.getOrDefault(zoneId, List.of());
    int first = firstAfter(own, afterDay);
    int until = firstAfter(own, lastDay);
    int[] days = new int[Math.max(0, until - first)];
    int count = 0;
    for (int i = first; i < until; i++) {
      if (count == 0 || days[count - 1] != own.get(i).day()) {
        days[count++] = own.get(i).day();
      }
    }
    return Arrays.copyOf(days, count);
  }

  /** Place of the first of the results, which are in order of their days, after a day. */
  private static int firstAfter(List<Result> own, int day) {
    int low = 0;
    int high = own.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (own.get(middle).day() <= day) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** Tests of one year in a zone have most samples in common. */
  @Override
  public String shared(String zoneId, int day) {
    return zoneId + " " + LocalDate.ofEpochDay(day).getYear();
  }
}
