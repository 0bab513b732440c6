package sealspan.study.watch;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sealspan.study.IssuedForecast;
import sealspan.study.fouling.FoulingModel;
import sealspan.table.FoulingCoefficientRow;
import sealspan.table.LedgerEntry;

/**
 * A model as it was frozen: how likely a fouling failure is, which places there are, and how much
 * evidence an alarm needs. It judges the tests that become known after it was frozen, until the
 * next. It stands in the ledger as text, in parts if it is long: a first line that says what it is,
 * then a line of each coefficient and place, fields parted by tabs. What was written once must be
 * readable for ever, so the first line names the form.
 *
 * @param id id of the ledger entry, of several the least; null before it is entered
 * @param frozenAt when it was entered, of several entries the last; null before it is entered
 * @param cutId id of the cut of the fit
 * @param codeVersion version of the code that fitted it
 * @param visits site visits that the fit knew
 * @param testsPerYear tests a year that the fit knew of late, more than 0
 * @param threshold mean number of tests to a false alarm, at least 1
 * @param coefficients what the probabilities are made from, on the {@link HighSide}; of models with
 *     code version 1 as they were fitted
 * @param sites the places
 */
public record WatchModel(
    String id,
    Instant frozenAt,
    String cutId,
    String codeVersion,
    int visits,
    double testsPerYear,
    double threshold,
    List<FoulingCoefficientRow> coefficients,
    List<WatchSite> sites) {

  /** The kind of ledger entry that holds a model or a part of one. */
  public static final String KIND = "WATCH_MODEL_FROZEN";

  /** Years to a false alarm, on average, at the pace that the fit knew. */
  public static final int YEARS_TO_FALSE_ALARM = 5;

  private static final String FORM = "watch model 1";
  private static final String TAB = "\t";
  private static final int LINES_PER_PART = 5_000;
  private static final int HEAD_FIELDS = 8;

  static final Comparator<WatchModel> BY_TIME =
      Comparator.comparing(WatchModel::frozenAt).thenComparing(WatchModel::id);

  /** The threshold for a pace: the tests of some years, rounded up, at least 100. */
  public static double thresholdFor(double testsPerYear) {
    return Math.max(100, Math.ceil(YEARS_TO_FALSE_ALARM * testsPerYear));
  }

  /** The contents of the ledger entries that hold it; places with unwritable ids are left out. */
  public List<String> contents() {
    List<String> lines = new ArrayList<>();
    for (FoulingCoefficientRow each : coefficients) {
      lines.add(String.join(TAB, "coefficient", each.name(), Double.toString(each.value())));
    }
    for (WatchSite site : sites) {
      boolean zone = site.zoneId() != null && IssuedForecast.isWritable(site.zoneId());
      if (IssuedForecast.isWritable(site.siteId())) {
        lines.add(
            String.join(
                TAB,
                "place",
                site.siteId(),
                zone ? site.zoneId() : "",
                site.isPlaced() ? site.latitude().toString() : "",
                site.isPlaced() ? site.longitude().toString() : ""));
      }
    }
    int parts = Math.max(1, (lines.size() + LINES_PER_PART - 1) / LINES_PER_PART);
    List<String> contents = new ArrayList<>();
    for (int part = 0; part < parts; part++) {
      int to = Math.min(lines.size(), (part + 1) * LINES_PER_PART);
      String head =
          String.join(
              TAB,
              FORM,
              cutId,
              codeVersion,
              Integer.toString(visits),
              Double.toString(testsPerYear),
              Double.toString(threshold),
              Integer.toString(part + 1),
              Integer.toString(parts));
      StringBuilder text = new StringBuilder(head);
      lines.subList(part * LINES_PER_PART, to).forEach(line -> text.append('\n').append(line));
      contents.add(text.toString());
    }
    return contents;
  }

  /**
   * The models that entries of the ledger hold, in the order in which they were frozen. One that is
   * not all there yet is not among them, nor is one without a probability.
   *
   * @param entries entries of any kind, in any order, with any repetition
   * @throws IllegalArgumentException where one has a form that this version cannot read
   */
  public static List<WatchModel> of(Collection<LedgerEntry> entries) {
    Map<String, Map<Integer, LedgerEntry>> byHead = new HashMap<>();
    Map<String, Integer> partsOf = new HashMap<>();
    for (LedgerEntry entry : entries) {
      if (entry.kind().equals(KIND)) {
        String[] head = entry.content().split("\n", 2)[0].split(TAB, -1);
        if (!head[0].equals(FORM) || head.length != HEAD_FIELDS) {
          throw new IllegalArgumentException(
              "The ledger entry %s holds no model that this version can read (it begins with %s)."
                  .formatted(entry.id(), head[0]));
        }
        String same = String.join(TAB, List.of(head).subList(0, 6)) + TAB + head[7];
        byHead
            .computeIfAbsent(same, h -> new TreeMap<>())
            .merge(Integer.valueOf(head[6]), entry, WatchModel::earlier);
        partsOf.put(same, Integer.valueOf(head[7]));
      }
    }
    List<WatchModel> models = new ArrayList<>();
    byHead.forEach(
        (head, parts) -> {
          if (parts.size() == partsOf.get(head)) {
            models.add(read(head.split(TAB, -1), parts.values()));
          }
        });
    models.removeIf(model -> FoulingModel.of(model.coefficients()).isEmpty());
    models.sort(BY_TIME);
    return models;
  }

  private static LedgerEntry earlier(LedgerEntry a, LedgerEntry b) {
    return b.decidedAt().isBefore(a.decidedAt()) ? b : a;
  }

  private static WatchModel read(String[] head, Collection<LedgerEntry> parts) {
    String id = null;
    Instant frozenAt = Instant.MIN;
    List<FoulingCoefficientRow> coefficients = new ArrayList<>();
    List<WatchSite> sites = new ArrayList<>();
    for (LedgerEntry part : parts) {
      id = id == null || part.id().compareTo(id) < 0 ? part.id() : id;
      frozenAt = part.decidedAt().isAfter(frozenAt) ? part.decidedAt() : frozenAt;
      String[] lines = part.content().split("\n", -1);
      for (int i = 1; i < lines.length; i++) {
        String[] f = lines[i].split(TAB, -1);
        if (f[0].equals("coefficient")) {
          coefficients.add(new FoulingCoefficientRow(f[1], Double.parseDouble(f[2]), null, null));
        } else {
          sites.add(new WatchSite(f[1], f[2].isEmpty() ? null : f[2], number(f[3]), number(f[4])));
        }
      }
    }
    return new WatchModel(
        id,
        frozenAt,
        head[1],
        head[2],
        Integer.parseInt(head[3]),
        Double.parseDouble(head[4]),
        Double.parseDouble(head[5]),
        List.copyOf(coefficients),
        List.copyOf(sites));
  }

  private static Double number(String text) {
    return text.isEmpty() ? null : Double.valueOf(text);
  }
}
