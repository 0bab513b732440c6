package sealspan.study.fouling;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import sealspan.table.FoulingClusterMemberRow;
import sealspan.table.FoulingClusterRow;
import sealspan.table.FoulingScanRow;

/** What a look for clusters found, in words, and what has to be known to judge it. */
public final class ExplorationWords {
  private ExplorationWords() {}

  /** The title of a look. */
  public static String title(ExplorationChoice choice) {
    String days =
        (choice.since() == null ? "" : ", since " + choice.since())
            + (choice.until() == null ? "" : ", until " + choice.until());
    return "Exploration: where "
        + (choice.wholeTime() ? "" : "and when ")
        + "did fouling cluster, by "
        + switch (choice.shape()) {
          case CIRCLES -> "circles";
          case ELLIPSES -> "ellipses";
          case SUBSETS -> "subsets of near sites";
          case PIPES -> "distance along the pipes";
        }
        + (choice.permuted() ? ", against times dealt out anew" : "")
        + days
        + "?";
  }

  /** The answer: how many are beyond chance, what each is, and who belongs to it. */
  public static List<String> answer(Exploration found) {
    List<String> lines = new ArrayList<>();
    if (found.choice().permuted()) {
      lines.add("WARNING: " + ExplorationCautions.route());
    }
    lines.add(status(found));
    for (int i = 0; i < found.clusters().size(); i++) {
      FoulingClusterRow cluster = found.clusters().get(i);
      if (cluster.significant()) {
        lines.add("  " + cluster(found, cluster, found.outlines().get(i)));
      }
    }
    for (FoulingClusterRow cluster : found.clusters()) {
      // Of what chance brings, a centre and a size say enough where they can be told.
      if (cluster.significant() || !found.choice().shape().isRegular()) {
        lines.add(members(found, cluster));
      }
    }
    return lines;
  }

  private static String status(Exploration found) {
    FoulingScanRow scan = found.scan();
    if (scan == null) {
      return sentence(found.fit().because());
    }
    if (scan.because() != null) {
      return sentence(scan.because());
    }
    long beyond = found.clusters().stream().filter(FoulingClusterRow::significant).count();
    String level = plain(found.choice().level());
    if (beyond == 0) {
      return "Fouling does not cluster beyond chance: the most likely cluster has p = "
          + p(found.clusters().get(0).p())
          + ", which is more than "
          + level
          + ".";
    }
    return beyond
        + (beyond == 1 ? " cluster is" : " clusters are")
        + " beyond chance (p at most "
        + level
        + ")"
        + (beyond < found.clusters().size() ? "; the last one shown is not." : ".");
  }

  private static String cluster(
      Exploration found, FoulingClusterRow cluster, ClusterOutline outline) {
    String risk =
        cluster.relativeRisk() == null
            ? ": all there were"
            : ": "
                + tenths(cluster.relativeRisk())
                + (found.choice().permuted()
                    ? " times as many for what chance would bring as elsewhere"
                    : " times the risk elsewhere");
    return cluster.number()
        + ": "
        + cluster.cases()
        + " visits with a fouling failure where "
        + tenths(cluster.expected())
        + " were expected, at "
        + counted(cluster.sites(), "site")
        + ", "
        + outline.words()
        + String.format(
            Locale.ROOT, ", centre %.5f, %.5f, ", cluster.latitude(), cluster.longitude())
        + cluster.firstDay()
        + " to "
        + cluster.lastDay()
        + risk
        + "; p = "
        + p(cluster.p());
  }

  /** All sites of a cluster: those with most fouling first, then those that belong most surely. */
  private static String members(Exploration found, FoulingClusterRow cluster) {
    return "Sites of cluster "
        + cluster.number()
        + (cluster.significant() ? "" : ", which is not beyond chance")
        + ", each with its visits that found fouling, of all its visits then, and the share of the"
        + " zones scoring nearly as well that hold it: "
        + ordered(found, cluster.number()).stream()
            .map(
                m ->
                    String.format(
                        Locale.ROOT,
                        "%s (%d of %d, %.0f %%)",
                        m.siteId(),
                        m.cases(),
                        m.visits(),
                        100 * m.shareOfNearBest()))
            .collect(Collectors.joining(", "))
        + ".";
  }

  /** The sites of a cluster in the order in which people read them. */
  public static List<FoulingClusterMemberRow> ordered(Exploration found, int number) {
    return found.members().stream()
        .filter(m -> m.number() == number)
        .sorted(
            (a, b) ->
                a.cases() != b.cases()
                    ? b.cases() - a.cases()
                    : a.shareOfNearBest() != b.shareOfNearBest()
                        ? Double.compare(b.shareOfNearBest(), a.shareOfNearBest())
                        : a.siteId().compareTo(b.siteId()))
        .toList();
  }

  /** A number of things. */
  static String counted(int n, String thing) {
    return n + " " + thing + (n == 1 ? "" : "s");
  }

  /** A p-value. */
  static String p(double p) {
    return String.format(Locale.ROOT, p < .001 ? "%.1e" : "%.3f", p);
  }

  /** A number without needless digits. */
  static String plain(double number) {
    return new java.math.BigDecimal(number)
        .round(new java.math.MathContext(3))
        .stripTrailingZeros()
        .toPlainString();
  }

  private static String tenths(double number) {
    return String.format(Locale.ROOT, number < 10 ? "%.1f" : "%.0f", number);
  }

  private static String sentence(String because) {
    return Character.toUpperCase(because.charAt(0)) + because.substring(1) + ".";
  }
}
