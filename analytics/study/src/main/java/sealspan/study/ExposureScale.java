package sealspan.study;

import java.util.Collection;
import java.util.Map;
import sealspan.table.ExposurePowerRow;

/**
 * How an exposure counts. Where failures accumulate evenly, as it is; where the coefficient of log
 * exposure is not 1, its years are taken to the power of the coefficient, so that a year stays a
 * year.
 */
final class ExposureScale {
  private final Map<String, ExposurePowerRow> powers;

  private ExposureScale(Map<String, ExposurePowerRow> powers) {
    this.powers = powers;
  }

  /** From what a fit found; without it every exposure counts as it is. */
  static ExposureScale read(Collection<ExposurePowerRow> rows) {
    return new ExposureScale(ExposurePowers.whole(rows));
  }

  /** PER_YEAR or PER_TEST: what may be quoted of assemblies of a type, which may be null. */
  String quoted(String type) {
    ExposurePowerRow row = row(type);
    return row == null ? ExposurePowers.PER_YEAR : row.quoted();
  }

  /** Years that an exposure counts for. */
  double years(int days, String type) {
    double years = days / RatePriors.YEAR_DAYS;
    ExposurePowerRow row = row(type);
    return row == null || row.quoted().equals(ExposurePowers.PER_YEAR)
        ? years
        : StrictMath.pow(years, Math.max(0, row.coefficient()));
  }

  /** Why shares are quoted; null where rates are. */
  String because(String type) {
    ExposurePowerRow row = row(type);
    return row == null || row.quoted().equals(ExposurePowers.PER_YEAR)
        ? null
        : "failures do not accumulate evenly with time (coefficient of log exposure "
            + hundredths(row.coefficient())
            + ", 95 % interval "
            + hundredths(row.lower())
            + " to "
            + hundredths(row.upper())
            + "), so shares per test are quoted, not yearly rates";
  }

  private static String hundredths(double value) {
    return String.format(java.util.Locale.ROOT, "%.2f", value);
  }

  private ExposurePowerRow row(String type) {
    ExposurePowerRow own = type == null ? null : powers.get("type=" + type);
    return own != null && own.coefficient() != null ? own : powers.get("all");
  }
}
