package sealspan.study;

import java.util.ArrayList;
import java.util.List;

/**
 * Assemblies enough for a regression. A very large fleet is thinned by a digest of the assembly id,
 * so that the choice depends neither on order nor on any other assembly's events.
 */
final class Subsample {
  static final String NOTE =
      "from a part of the assemblies, chosen by their ids; it has more than enough tests";
  private static final int TESTS = 300_000;

  private Subsample() {}

  /** All units, or about as many as have so many tests. */
  static List<RatedUnit> of(List<RatedUnit> units) {
    long tests = units.stream().mapToLong(unit -> unit.tests().size()).sum();
    long keepOneOf = (tests + TESTS - 1) / TESTS;
    if (keepOneOf <= 1) {
      return units;
    }
    List<RatedUnit> some = new ArrayList<>();
    for (RatedUnit unit : units) {
      int mixed = unit.assemblyId().hashCode() * 0x9E3779B9;
      if (Integer.remainderUnsigned(mixed >>> 8, (int) keepOneOf) == 0) {
        some.add(unit);
      }
    }
    return some;
  }
}
