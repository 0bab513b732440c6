package sealspan.study.fouling;

import java.util.Locale;
import java.util.Map;

/**
 * The water qualities that are looked at, with the units in which results are understood. A unit is
 * told by its name; one that is not in the list is left out, not guessed. So is plain mg/l for
 * hardness, of which nobody can tell what it is a weight of. NTU and FNU come of different lamps
 * and are not one unit.
 */
enum WaterQuality {
  TURBIDITY("turbidity", "ntu", Map.of("ntu", 1.0)),
  IRON("iron", "mg/l", Weights.PER_LITRE),
  MANGANESE("manganese", "mg/l", Weights.PER_LITRE),
  HARDNESS(
      "hardness",
      "mg/l caco3",
      // 1 grain a US gallon is 64.79891 mg in 3.785411784 l; a German degree 17.848 mg/l
      Map.of("mg/l caco3", 1.0, "mg/l as caco3", 1.0, "gpg", 17.118, "[degdh]", 17.848)),
  CHLORINE("chlorine", "mg/l", Weights.PER_LITRE);

  /** By mass in a litre of water; ppm as in the trade. */
  private static final class Weights {
    static final Map<String, Double> PER_LITRE =
        Map.of("mg/l", 1.0, "ppm", 1.0, "ug/l", 0.001, "ppb", 0.001, "g/l", 1000.0);
  }

  private final String word;
  private final String unit;
  private final Map<String, Double> factors;

  WaterQuality(String word, String unit, Map<String, Double> factors) {
    this.word = word;
    this.unit = unit;
    this.factors = factors;
  }

  /** In words. */
  String words() {
    return this == CHLORINE ? "chlorine residual" : word;
  }

  /** The unit that results are brought to. */
  String unit() {
    return unit;
  }

  /** Whether a result of this name is of this quality. */
  boolean is(String characteristic) {
    String name = characteristic.strip().toLowerCase(Locale.ROOT);
    return name.equals(word) || name.startsWith(word + ",") || name.startsWith(word + " ");
  }

  /** What a number in a unit is multiplied by; null for a unit that is not understood. */
  Double factor(String entered) {
    return entered == null
        ? null
        : factors.get(
            entered.strip().toLowerCase(Locale.ROOT).replace('\u00b5', 'u').replace('\u03bc', 'u'));
  }
}
