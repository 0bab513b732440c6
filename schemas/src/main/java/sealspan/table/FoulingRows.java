package sealspan.table;

import java.util.List;
import sealspan.event.Means;

/** What the visits and the water of a cut tell of fouling failures, for all assemblies together. */
public record FoulingRows(
    @Means("which assemblies: all") String scope,
    @Means("grows with every cut that is fitted") long revision,
    @Means("what counts, and how likely a fouling failure is") FoulingFitRow fit,
    @Means("what goes with fouling failures") List<FoulingCoefficientRow> coefficients,
    @Means("how the scan for clusters was made; absent where none was") FoulingScanRow scan,
    @Means("where and when there were too many fouling failures") List<FoulingClusterRow> clusters,
    @Means("the sites of the clusters") List<FoulingClusterMemberRow> members,
    @Means("what events and qualities of the water go with fouling")
        List<WaterEffectRow> waterEffects)
    implements Bundle {
  /** Key of the only bundle there is. */
  public static final String KEY = "fouling/all";

  @Override
  public String key() {
    return "fouling/" + scope;
  }
}
