package sealspan.study;

import java.util.ArrayList;
import java.util.List;

/**
 * Assemblies enough for a regression. A very large fleet is thinned by a digest of the assembly id,
 * so that the choice depends neither on order nor on any other assembly's events.
 */
public final class Subsample {
  /** What is said where a part was taken. */
  public static final String NOTE =
      "from a part of the assemblies, chosen by their ids; it has more than enough tests";

  private static final int TESTS = 300_000;

  private Subsample() {}

  /** All units, or about as many as have so many tests. */
  static List<RatedUnit> of(List<RatedUnit> units) {
    long tests = units.stream().mapToLong(unit -> unit.tests().size()).sum();
    int keepOneOf = oneOf(tests);
    if (keepOneOf <= 1) {
      return units;
    }
    List<RatedUnit> some = new ArrayList<>();
    for (RatedUnit unit : units) {
      if (keeps(unit.assemblyId(), keepOneOf)) {
        some.add(unit);
      }
    }
    return some;
  }

  /** Of so many assemblies one is taken, where all of them have so many tests; 1 for all. */
  public static int oneOf(long tests) {
    return (int) Math.max(1, (tests + TESTS - 1) / TESTS);
  }

  /** Whether an assembly is taken. */
  public static boolean keeps(String assemblyId, int oneOf) {
    int mixed = assemblyId.hashCode() * 0x9E3779B9;
    return Integer.remainderUnsigned(mixed >>> 8, oneOf) == 0;
  }
}
