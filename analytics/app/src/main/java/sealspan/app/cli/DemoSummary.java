package sealspan.app.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import sealspan.answers.Answers;
import sealspan.answers.Questions;
import sealspan.app.engine.DataFolder;

/** What the demonstration shows of its answers; every figure comes from a standing question. */
final class DemoSummary {
  private static final int ROWS = 3;

  private final Answers answers;
  private final List<String> lines = new ArrayList<>();

  private DemoSummary(Answers answers) {
    this.answers = answers;
  }

  /** The summary, line by line. */
  static List<String> of(DataFolder folder) {
    try (Answers answers = Answers.open(folder.root())) {
      DemoSummary summary = new DemoSummary(answers);
      summary.passShare();
      summary.worstSites();
      summary.sealLife();
      summary.setAside();
      return summary.lines;
    }
  }

  private void passShare() {
    for (Map<String, Object> row : rows("pass-share")) {
      if ("all".equals(row.get("type")) && "all".equals(row.get("rounds"))) {
        lines.add(
            String.format(
                Locale.ROOT,
                "%d of %d routine tests passed as found: %s (95 %% interval %s to %s).",
                row.get("passed"),
                row.get("tests"),
                share(row.get("share_passed")),
                share(row.get("lower")),
                share(row.get("upper"))));
      }
    }
    lines.add("  " + notes("pass-share").get(0));
  }

  private void worstSites() {
    lines.add("");
    lines.add("Sites where assemblies failed most often, as a share of their tests:");
    rows("worst-sites").stream()
        .limit(ROWS)
        .forEach(
            row ->
                lines.add(
                    String.format(
                        Locale.ROOT,
                        "  %-4s %-20s %d of %d failed, %s (95 %% interval %s to %s)",
                        row.get("site_id"),
                        row.get("label"),
                        row.get("failed"),
                        row.get("tests"),
                        share(row.get("share_failed")),
                        share(row.get("lower")),
                        share(row.get("upper")))));
  }

  private void sealLife() {
    lines.add("");
    for (Map<String, Object> row : rows("seal-life")) {
      if ("all".equals(row.get("stratum"))) {
        lines.add(
            String.format(
                Locale.ROOT,
                "Seals: %s: %s (95 %% interval %s to %s), from %d replacements in %d assemblies.",
                row.get("quantity"),
                number(row.get("figure")),
                number(row.get("lower")),
                number(row.get("upper")),
                row.get("endings"),
                row.get("assemblies")));
        lines.add(
            "  left out: "
                + row.get("left_out_unknown_origin")
                + " seals whose origin is not known; "
                + row.get("note"));
      }
    }
  }

  private void setAside() {
    lines.add("");
    lines.add("Rows set aside: " + notes("rejected").get(0));
    rows("rejected").stream()
        .limit(ROWS)
        .forEach(
            row ->
                lines.add(
                    "  "
                        + row.get("file")
                        + ", line "
                        + row.get("line")
                        + (row.get("field") == null ? "" : ", " + row.get("field"))
                        + ": "
                        + row.get("reason")));
  }

  private List<Map<String, Object>> rows(String question) {
    return NamedRows.of(answers.ask(Questions.named(question), Map.of()).table());
  }

  private List<String> notes(String question) {
    return answers.ask(Questions.named(question), Map.of()).notes();
  }

  private static String share(Object share) {
    return share == null
        ? "not known"
        : String.format(Locale.ROOT, "%.1f %%", 100 * ((Number) share).doubleValue());
  }

  private static String number(Object number) {
    return number == null
        ? "not known"
        : String.format(Locale.ROOT, "%.1f", ((Number) number).doubleValue());
  }
}
