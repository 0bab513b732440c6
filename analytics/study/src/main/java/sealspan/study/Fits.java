package sealspan.study;

import java.util.List;
import sealspan.table.AssemblyRows;
import sealspan.table.FitRows;

/** The estimates of a stratum from the histories of its assemblies; pure functions. */
public final class Fits {
  private Fits() {}

  /** The strata that an assembly belongs to: {@code all}, and {@code type=...} where known. */
  public static List<String> strataOf(AssemblyRows rows) {
    throw new UnsupportedOperationException();
  }

  /**
   * The fit of one stratum.
   *
   * @param stratum one of {@link #strataOf}
   * @param members the rows of its assemblies as of the cut, in any order
   * @param cut the cut
   */
  public static FitRows of(String stratum, List<AssemblyRows> members, FitCut cut) {
    throw new UnsupportedOperationException();
  }
}
