package sealspan.study.fouling;

import java.util.Locale;
import sealspan.stats.Estimate;

/** What the water goes with, in words. */
final class WaterWords {
  /** An adjusted probability above this may be chance. */
  static final double CHANCE = .05;

  private WaterWords() {}

  /** What an exposure is called in the middle of a sentence. */
  static String name(String exposure) {
    for (WaterQuality quality : WaterQuality.values()) {
      if (quality.name().equals(exposure)) {
        return quality.words();
      }
    }
    return exposure.toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** The same with its article. */
  static String article(String exposure) {
    return exposure.equals("FLUSHING") ? "flushing" : "a " + name(exposure);
  }

  private static String plural(String exposure) {
    return switch (exposure) {
      case "MAIN_BREAK" -> "breaks";
      case "FLUSHING" -> "flushing";
      case "TREATMENT_CHANGE" -> "treatment changes";
      case "SHUTDOWN" -> "shutdowns";
      default -> "samples";
    };
  }

  /**
   * The answer to one question.
   *
   * @param answer the answer
   * @param chance the ratio of chances with its limits; null where there is none
   * @param adjustedP probability raised for all questions; null where there is none
   * @param questions questions that were asked at once
   */
  static String of(WaterAnswer answer, double[] chance, Double adjustedP, int questions) {
    String exposure = answer.exposure().text();
    boolean isEvent = answer.exposure().isEvent();
    String when = answer.lag() == WaterLag.SINCE_LAST_PASS ? "" : ", " + answer.lag().words() + ",";
    String what =
        isEvent
            ? "after " + article(exposure) + " in the same zone" + when
            : "with twice the " + name(exposure) + " in the same zone since the last pass";
    String counted =
        isEvent
            ? answer.exposedFouled() + " of " + answer.exposed() + " tests"
            : answer.fouled() + " of " + answer.tests() + " tests";
    if (chance == null) {
      return "whether fouling is found more often "
          + what.replaceAll(",$", "")
          + " is not identified: "
          + ((Estimate.NotIdentified<WaterEffectFit>) answer.effect()).because()
          + "; "
          + counted;
    }
    String words =
        what
            + " the chance of a fouled check at the next test is "
            + times(chance)
            + (isEvent ? " that without; " : "; ")
            + counted
            + "; "
            + (isEvent ? "future " + plural(exposure) : "samples after the test")
            + control(answer.future());
    if (adjustedP != null && adjustedP > CHANCE) {
      words +=
          questions > 1
              ? "; among " + questions + " questions asked at once this may be chance"
              : "; this may be chance";
    }
    if (fails(answer.future()) || fails(answer.otherZone())) {
      words += "; a control that should show 1 does not, so something else is behind it";
    }
    return words;
  }

  /** A ratio with its limits, as "1.8 times (1.3 to 2.5)". */
  static String times(double[] ratio) {
    return number(ratio[0])
        + " times ("
        + number(ratio[1])
        + " to "
        + (Double.isInfinite(ratio[2]) ? "no limit" : number(ratio[2]))
        + ")";
  }

  private static String control(Estimate<WaterEffectFit> estimate) {
    if (estimate instanceof Estimate.Identified<WaterEffectFit> found) {
      WaterEffectFit fit = found.value();
      return " show "
          + number(StrictMath.exp(fit.log()))
          + " ("
          + number(StrictMath.exp(fit.lower()))
          + " to "
          + number(StrictMath.exp(fit.upper()))
          + ")";
    }
    return " cannot be checked";
  }

  private static boolean fails(Estimate<WaterEffectFit> control) {
    return control instanceof Estimate.Identified<WaterEffectFit> found
        && (found.value().lower() > 0 || found.value().upper() < 0);
  }

  static String number(double ratio) {
    return String.format(
        Locale.ROOT, ratio < .095 ? "%.2f" : ratio < 99.5 ? "%.1f" : "%.0f", ratio);
  }
}
