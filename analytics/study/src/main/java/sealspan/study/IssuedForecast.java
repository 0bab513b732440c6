package sealspan.study;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.table.LedgerEntry;

/**
 * A forecast as it was issued. Many travel in one entry of the ledger, as text: a first line that
 * says what they rest on, then a line of each, its fields parted by tabs. What was written once
 * must be readable for ever, so the first line names the form.
 *
 * @param assemblyId the assembly; without tabs and line ends
 * @param ledgerId id of the entry of the ledger; null before it is entered
 * @param issuedAt when it was issued; null before it is entered
 * @param fitCutId id of the cut of the fit that it rests on
 * @param codeVersion version of the code that made it
 * @param basisEventId event id of the round that had passed last
 * @param basisDay day of that round
 * @param atOnce probability that it fails a test on that day
 * @param after6Months the same, 6 months later
 * @param after12Months the same, 12 months later
 * @param after24Months the same, 24 months later
 * @param base probability for any assembly of its type, 12 months after a pass
 * @param byDrift of the probability after 12 months, by drift
 * @param suddenly of the probability after 12 months, sudden
 * @param drivenBy what makes up most of it
 * @param type assembly type
 */
public record IssuedForecast(
    String assemblyId,
    String ledgerId,
    Instant issuedAt,
    String fitCutId,
    String codeVersion,
    String basisEventId,
    LocalDate basisDay,
    double atOnce,
    double after6Months,
    double after12Months,
    double after24Months,
    double base,
    double byDrift,
    double suddenly,
    String drivenBy,
    String type) {

  /** The kind of ledger entry that holds forecasts. */
  public static final String KIND = "FORECASTS_ISSUED";

  private static final String FORM = "forecasts 1";
  private static final String TAB = "\t";

  /** The content of a ledger entry; all forecasts rest on the same fit and code. */
  public static String content(List<IssuedForecast> forecasts) {
    IssuedForecast first = forecasts.get(0);
    StringBuilder text =
        new StringBuilder(String.join(TAB, FORM, first.fitCutId, first.codeVersion));
    for (IssuedForecast each : forecasts) {
      text.append('\n').append(each.line());
    }
    return text.toString();
  }

  private String line() {
    return String.join(
        TAB,
        assemblyId,
        basisEventId,
        basisDay.toString(),
        Double.toString(atOnce),
        Double.toString(after6Months),
        Double.toString(after12Months),
        Double.toString(after24Months),
        Double.toString(base),
        Double.toString(byDrift),
        Double.toString(suddenly),
        drivenBy,
        type);
  }

  /**
   * The forecasts of a ledger entry.
   *
   * @throws IllegalArgumentException where it holds none, or in a form that this version cannot
   *     read
   */
  public static List<IssuedForecast> of(LedgerEntry entry) {
    String[] lines = entry.content().split("\n", -1);
    String[] head = lines[0].split(TAB, -1);
    if (!entry.kind().equals(KIND) || !head[0].equals(FORM) || head.length != 3) {
      throw new IllegalArgumentException(
          "The ledger entry %s holds no forecasts that this version can read (it begins with %s)."
              .formatted(entry.id(), head[0]));
    }
    List<IssuedForecast> forecasts = new ArrayList<>(lines.length - 1);
    for (int i = 1; i < lines.length; i++) {
      String[] f = lines[i].split(TAB, -1);
      forecasts.add(
          new IssuedForecast(
              f[0],
              entry.id(),
              entry.decidedAt(),
              head[1],
              head[2],
              f[1],
              LocalDate.parse(f[2]),
              Double.parseDouble(f[3]),
              Double.parseDouble(f[4]),
              Double.parseDouble(f[5]),
              Double.parseDouble(f[6]),
              Double.parseDouble(f[7]),
              Double.parseDouble(f[8]),
              Double.parseDouble(f[9]),
              f[10],
              f[11]));
    }
    return forecasts;
  }

  /** Whether an id can stand in a line. */
  public static boolean isWritable(String id) {
    return id != null && id.indexOf('\t') < 0 && id.indexOf('\n') < 0 && id.indexOf('\r') < 0;
  }

  /** The forecast alone, as an entry of the ledger that holds nothing else, with the same id. */
  public LedgerEntry alone() {
    return new LedgerEntry(ledgerId, KIND, content(List.of(this)), issuedAt, null);
  }

  /**
   * Probability that a test some days after the basis fails; between the times that it names, the
   * hazard is even. NaN for a day that it does not reach.
   */
  double probabilityAfter(long days) {
    double[] at = {0, days(6), days(12), days(24)};
    double[] hazard = {
      hazard(atOnce), hazard(after6Months), hazard(after12Months), hazard(after24Months)
    };
    for (int i = 1; i < at.length; i++) {
      if (days <= at[i] && days >= 0) {
        double share = (days - at[i - 1]) / (at[i] - at[i - 1]);
        return -StrictMath.expm1(-(hazard[i - 1] + share * (hazard[i] - hazard[i - 1])));
      }
    }
    return Double.NaN;
  }

  /** The probability of its type some days after a pass. */
  double baseAfter(long days) {
    return -StrictMath.expm1(-hazard(base) * days / days(12));
  }

  private double days(int months) {
    return basisDay.plusMonths(months).toEpochDay() - basisDay.toEpochDay();
  }

  /** Certainty has no finite hazard. */
  private static double hazard(double probability) {
    return -StrictMath.log1p(-Math.min(probability, 1 - 1e-12));
  }
}
