package sealspan.study;

import java.util.List;
import sealspan.stats.Estimate;
import sealspan.stats.effect.ActionEffect;
import sealspan.table.RepairEpisodeRow;

/**
 * What cleaning and a new seal would each have led to at the next yearly test, had all cases got
 * it. The first action is cleaning, the second a new seal; a risk is that of one year.
 */
public final class RepairEffect {
  private RepairEffect() {}

  /** The effect by the episodes that are compared; those left out are passed over. */
  public static Estimate<ActionEffect> of(List<RepairEpisodeRow> episodes) {
    return of(EpisodeCohort.of(episodes));
  }

  static Estimate<ActionEffect> of(EpisodeCohort cohort) {
    return ActionEffect.of(cohort.cases(), RepairEffects.LEVEL);
  }
}
