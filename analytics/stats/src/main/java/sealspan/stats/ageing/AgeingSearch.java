package sealspan.stats.ageing;

import java.util.ArrayList;
import java.util.List;

/**
 * Looks for the highest top from several starts. With many units the starts are sorted out on an
 * even part of them, every so-manieth; every different top found there is then climbed on with all
 * units, so the result is a top of all.
 */
final class AgeingSearch {
  /** Log shape and the logits of the two shares to start from. */
  private static final double[][] STARTS = {
    {StrictMath.log(1.3), 0, -1.5},
    {0, 1, 1},
    {StrictMath.log(2), -2, -2},
    {StrictMath.log(3), 2, -1}
  };

  /** Deviations of the log frailty to start from. */
  private static final double[] DEVIATIONS = {.4, 1};

  private static final int ENOUGH_UNITS = 2_000;

  private AgeingSearch() {}

  /**
   * What was found.
   *
   * @param surface the surface of all units
   * @param top its highest top
   * @param starts places started from
   * @param startsAtTop how many of them led there
   */
  record Found(AgeingSurface surface, AgeingPoint top, int starts, int startsAtTop) {}

  /** Null where no start is finite. */
  static Found of(
      RepairedLives lives, VirtualAge model, AgeingFit.Frailty frailty, AgeingFit.Prior prior) {
    AgeingSurface all = AgeingSurface.of(lives, model, frailty, prior);
    RepairedLives part = lives.atMost(ENOUGH_UNITS);
    boolean sortOut = part.units < lives.units && part.failures > 0 && part.tellsAsMuchAs(lives);
    List<AgeingPoint> tops =
        tops(sortOut ? AgeingSurface.of(part, model, frailty, prior) : all, frailty);
    int[] agree = new int[tops.size()];
    List<AgeingPoint> different = new ArrayList<>();
    for (AgeingPoint top : tops) {
      int at = indexOfSame(different, top);
      if (at < 0) {
        at = different.size();
        different.add(top);
      }
      agree[at]++;
    }
    int best = -1;
    List<AgeingPoint> climbed = new ArrayList<>();
    for (int i = 0; i < different.size(); i++) {
      AgeingPoint top =
          sortOut ? new AgeingClimb(all).from(different.get(i).at()) : different.get(i);
      climbed.add(top);
      if (Double.isFinite(top.value()) && (best < 0 || top.value() > climbed.get(best).value())) {
        best = i;
      }
    }
    return best < 0 ? null : new Found(all, climbed.get(best), tops.size(), agree[best]);
  }

  private static List<AgeingPoint> tops(AgeingSurface surface, AgeingFit.Frailty frailty) {
    List<AgeingPoint> tops = new ArrayList<>();
    AgeingClimb alike = new AgeingClimb(surface.alike());
    for (double[] start : STARTS) {
      double[] place = {start[0], 0, start[1], start[2], 0};
      place[AgeingPoint.SCALE] = surface.logScale(place);
      tops.add(alike.from(place));
    }
    if (frailty == AgeingFit.Frailty.NONE) {
      return tops;
    }
    List<AgeingPoint> different = new ArrayList<>();
    for (AgeingPoint top : tops) {
      if (Double.isFinite(top.value()) && indexOfSame(different, top) < 0) {
        different.add(top);
      }
    }
    List<AgeingPoint> frail = new ArrayList<>();
    AgeingClimb climb = new AgeingClimb(surface);
    for (AgeingPoint top : different) {
      for (double deviation : DEVIATIONS) {
        double[] start = top.at().clone();
        start[AgeingPoint.FRAILTY] = deviation;
        frail.add(climb.from(start));
      }
    }
    return frail;
  }

  private static int indexOfSame(List<AgeingPoint> tops, AgeingPoint top) {
    for (int i = 0; i < tops.size(); i++) {
      AgeingPoint other = tops.get(i);
      if (Math.abs(other.value() - top.value()) < 1e-4
          && Math.abs(other.at()[0] - top.at()[0]) < 1e-2
          && Math.abs(other.at()[1] - top.at()[1]) < 1e-2) {
        return i;
      }
    }
    return -1;
  }
}
