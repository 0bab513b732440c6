package sealspan.study;

import java.util.Locale;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.stats.effect.ActionEffect;
import sealspan.stats.effect.Arm;

/** The answer to "cleaned or replaced" in words. */
final class EffectWords {
  private EffectWords() {}

  static String of(EpisodeCohort cohort, Estimate<ActionEffect> effect) {
    int cleaned = cohort.count(Arm.FIRST);
    int renewed = cohort.count(Arm.SECOND);
    String n =
        "n = " + (cleaned + renewed) + " (" + cleaned + " cleaned, " + renewed + " seals renewed)";
    if (effect instanceof Estimate.NotIdentified<ActionEffect> none) {
      String because =
          cleaned + renewed == 0 ? "there is no such repair yet" : because(none.because());
      return "Not identified, because " + because + "; " + n + ".";
    }
    ActionEffect.Risks risks = effect.orThrow().comparable();
    return "Had all been cleaned, "
        + percent(risks.first())
        + " would have failed the next yearly test; had all seals been renewed, "
        + percent(risks.second())
        + ": "
        + verdict(risks.difference().interval())
        + "; "
        + n
        + ".";
  }

  private static String verdict(Interval difference) {
    if (difference.lower() > 0) {
      return "a new seal holds better";
    }
    return difference.upper() < 0
        ? "cleaning holds better"
        : "a toss-up, the difference may be none";
  }

  /** Why there is no figure, in the words of the trade. */
  static String because(String because) {
    return because
        .replace("no case got the first action", "no part was cleaned")
        .replace("no case got the second action", "no seal was renewed")
        .replace("the first action", "cleaning")
        .replace("the second action", "a new seal")
        .replace("units", "assemblies");
  }

  private static String percent(PointEstimate risk) {
    return String.format(
        Locale.ROOT,
        "%s %% (%s to %s)",
        number(risk.value()),
        number(risk.interval().lower()),
        number(risk.interval().upper()));
  }

  private static String number(double share) {
    double percent = 100 * share;
    return String.format(Locale.ROOT, percent < 10 ? "%.1f" : "%.0f", percent);
  }
}
