package sealspan.study.fouling;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sealspan.table.FoulingCoefficientRow;

/**
 * The probability that a site visit finds a fouling failure, whatever the place: 1 - exp(-H), where
 * log H is the constant, plus its coefficient times the logarithm of the mean exposure of the
 * rounds in years, the same for the number of rounds, for the season, and for the type. It is made
 * from the published coefficients, so whoever has these has the same probabilities.
 */
public final class FoulingModel {
  /** Name of the coefficient of the base type's rate a year. */
  public static final String CONSTANT = "constant";

  static final String EXPOSURE = "log exposure years";
  static final String ROUNDS = "log rounds";
  static final String SINE = "season sine";
  static final String COSINE = "season cosine";

  /** Begin of the names of the coefficients of types, before an equals sign. */
  public static final String TYPE = "type";

  static final double YEAR_DAYS = 365.25;

  private final Map<String, Double> coefficients = new HashMap<>();

  private FoulingModel(List<FoulingCoefficientRow> rows) {
    rows.forEach(row -> coefficients.put(row.name(), row.value()));
  }

  /** The model of some coefficients; empty where there are none. */
  public static Optional<FoulingModel> of(List<FoulingCoefficientRow> rows) {
    return rows.isEmpty() ? Optional.empty() : Optional.of(new FoulingModel(rows));
  }

  /** The probability for a visit, more than 0 and less than 1. */
  public double probability(FoulingVisit visit) {
    return probability(visit.type(), visit.rounds(), visit.exposureDays(), visit.day());
  }

  /**
   * The probability for rounds of a day at one site, more than 0 and less than 1.
   *
   * @param type type of the assemblies; an unknown one counts like that which the others are
   *     compared with
   * @param rounds number of rounds, at least 1; 1 for a single test
   * @param exposureDays sum of their exposures, at least 1
   * @param day the day
   */
  public double probability(String type, int rounds, long exposureDays, LocalDate day) {
    double turn = season(day);
    double predictor =
        of(CONSTANT)
            + of(EXPOSURE) * StrictMath.log(exposureDays / (rounds * YEAR_DAYS))
            + of(ROUNDS) * StrictMath.log(rounds)
            + of(SINE) * StrictMath.sin(turn)
            + of(COSINE) * StrictMath.cos(turn)
            + of(TYPE + "=" + type);
    double p = -StrictMath.expm1(-StrictMath.exp(predictor));
    return Math.min(1 - 1e-9, Math.max(1e-9, p));
  }

  private double of(String name) {
    return coefficients.getOrDefault(name, 0.0);
  }

  /** The day of the year as an angle. */
  static double season(LocalDate day) {
    return 2 * StrictMath.PI * (day.getDayOfYear() - 0.5) / YEAR_DAYS;
  }
}
