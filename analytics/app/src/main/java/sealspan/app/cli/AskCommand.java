package sealspan.app.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.ISetter;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sealspan.answers.Answer;
import sealspan.answers.Answers;
import sealspan.answers.CsvText;
import sealspan.answers.Filter;
import sealspan.answers.FoulingGeoJson;
import sealspan.answers.FoulingMap;
import sealspan.answers.JsonText;
import sealspan.answers.ParquetFile;
import sealspan.answers.Question;
import sealspan.answers.Questions;
import sealspan.answers.TextTable;
import sealspan.answers.chart.Chart;
import sealspan.answers.chart.FoulingMapSvg;
import sealspan.answers.chart.SvgChart;
import sealspan.answers.chart.TextChart;
import sealspan.answers.freesql.FreeSql;
import sealspan.answers.freesql.SqlLimits;
import sealspan.app.Problem;

@Command(
    name = "ask",
    mixinStandardHelpOptions = true,
    description = {
      "Answers a question from the published answers; the engine need not run.",
      "Without a name it lists the questions and the filters that each takes."
    })
final class AskCommand implements Callable<Integer> {
  private static final Set<String> FOR_THE_FIELD =
      Set.of("history", "assembly", "what-to-bring", "cluster");

  /** Questions whose answer is a map too. */
  private static final Set<String> MAPPED = Set.of("clusters", "cluster");

  @Spec private CommandSpec spec;
  @Mixin private DataOption data;

  @Parameters(arity = "0..1", paramLabel = "NAME", description = "the question")
  private String name;

  @Mixin private AsOfOption asOf;

  @Option(
      names = "--sql",
      paramLabel = "SELECT",
      description =
          "answers one SELECT over the published tables, under limits of time and memory, and"
              + " refuses everything else")
  private String sql;

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      description = "${COMPLETION-CANDIDATES}; without it table, for people")
  private Format format = Format.table;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "the file to write; without it the terminal")
  private Path out;

  @Option(
      names = "--chart",
      description = "draws the answer in the terminal, for questions that have a chart")
  private boolean chart;

  @Option(
      names = "--svg",
      paramLabel = "FILE",
      description = "draws the answer as a picture, for questions that have a chart")
  private Path svg;

  @Option(
      names = "--geojson",
      paramLabel = "FILE",
      description = "writes clusters and their sites as GeoJSON (WGS84), for clusters and cluster")
  private Path geoJson;

  private final Map<String, String> filters = new LinkedHashMap<>();

  /** Forms of an answer, as they are typed. */
  enum Format {
    table,
    csv,
    json,
    parquet
  }

  /** Gives the command one option for every filter that a question may take. */
  static void addFilters(CommandLine line) {
    AskCommand ask = (AskCommand) line.getCommandSpec().userObject();
    for (Filter filter : Filter.values()) {
      line.getCommandSpec()
          .addOption(
              OptionSpec.builder("--" + filter.label())
                  .paramLabel(filter.kind().name())
                  .type(String.class)
                  .description("filter: " + filter.meaning())
                  .setter(ask.filterSetter(filter))
                  .build());
    }
  }

  private ISetter filterSetter(Filter filter) {
    return new ISetter() {
      @Override
      public <T> T set(T value) {
        if (value == null) {
          filters.remove(filter.label());
        } else {
          filters.put(filter.label(), value.toString());
        }
        return value;
      }
    };
  }

  @Override
  public Integer call() {
    if (name == null && sql == null) {
      list(spec.commandLine().getOut());
      return ExitCode.DONE;
    }
    requireSense();
    if (geoJson != null || svg != null && MAPPED.contains(name)) {
      map(Questions.named(name));
    } else if (chart || svg != null) {
      draw(Questions.named(name));
    } else {
      write(answer());
    }
    return ExitCode.DONE;
  }

  private void requireSense() {
    if (sql != null && (name != null || asOf.asOf() != null || !filters.isEmpty())) {
      throw new Problem("--sql stands alone: leave out the question, the filters and --as-of.");
    }
    if (format == Format.parquet && out == null) {
      throw new Problem("A Parquet file needs a name: --out FILE.");
    }
    if ((chart || svg != null) && (sql != null || format != Format.table)) {
      throw new Problem("--chart and --svg draw a question: leave out --sql and --format.");
    }
    if (geoJson != null
        && (!MAPPED.contains(name)
            || chart
            || svg != null
            || out != null
            || format != Format.table)) {
      throw new Problem(
          "--geojson FILE goes with the questions clusters and cluster, and with no other form of the"
              + " answer.");
    }
    if (svg != null && (chart || out != null)) {
      throw new Problem("--svg names its own file: leave out --chart and --out.");
    }
  }

  /** A map: as GeoJSON, or as a picture with a time line. */
  private void map(Question question) {
    String number = filters.get(Filter.NUMBER.label());
    try (StatusLine line = new StatusLine();
        Answers answers = open(data.folder().root(), line)) {
      line.close();
      Answer answer = answers.ask(question, filters);
      FoulingMap map = answers.foulingMap(answer, number == null ? null : Long.valueOf(number));
      Path file = geoJson != null ? geoJson : svg;
      OutFile.write(file, geoJson != null ? FoulingGeoJson.of(map) : FoulingMapSvg.of(map));
      spec.commandLine().getOut().println("Wrote " + file + ".");
    }
  }

  private void draw(Question question) {
    Chart drawn = Chart.of(question, answer());
    if (svg != null) {
      OutFile.write(svg, SvgChart.of(drawn));
      spec.commandLine().getOut().println("Wrote " + svg + ".");
    } else {
      print(TextChart.of(drawn));
    }
  }

  private Answer answer() {
    Path folder = data.folder().root();
    if (sql != null) {
      return FreeSql.ask(folder, sql, SqlLimits.USUAL);
    }
    Question question = Questions.named(name);
    try (StatusLine line = new StatusLine();
        Answers answers = open(folder, line)) {
      line.close();
      return answers.ask(question, filters);
    }
  }

  private Answers open(Path folder, StatusLine line) {
    return asOf.asOf() == null
        ? Answers.open(folder)
        : Answers.openAsOf(
            folder, asOf.asOf(), (step, done, all) -> line.show(step + ": " + done + " of " + all));
  }

  private void write(Answer answer) {
    if (format == Format.parquet) {
      ParquetFile.write(answer, out);
      spec.commandLine().getOut().println("Wrote " + out + ".");
      return;
    }
    StringWriter text = new StringWriter();
    try {
      switch (format) {
        case csv -> CsvText.write(answer, text);
        case json -> JsonText.write(answer, text);
        default -> text.append(TextTable.of(answer)).append(reminders(answer));
      }
    } catch (IOException e) {
      throw new UncheckedIOException("Text in memory can be written.", e);
    }
    print(text.toString());
  }

  private void print(String text) {
    if (out == null) {
      spec.commandLine().getOut().print(text);
      spec.commandLine().getOut().flush();
    } else {
      OutFile.write(out, text);
      spec.commandLine().getOut().println("Wrote " + out + ".");
    }
  }

  /** Reminders beneath answers that people take to the field. */
  private static String reminders(Answer answer) {
    return FOR_THE_FIELD.contains(answer.name())
        ? System.lineSeparator() + Cautions.forFieldWork() + System.lineSeparator()
        : "";
  }

  private static void list(PrintWriter out) {
    out.println("Questions, and the filters that each takes (sealspan ask NAME --FILTER VALUE):");
    out.println();
    for (Question question : Questions.all()) {
      out.println("  " + question.name());
      out.println("      " + question.title());
      out.println(
          "      asked by: "
              + question.askedBy()
              + filters(question)
              + (question.chart() == null ? "" : "; can be drawn: --chart, --svg FILE")
              + (MAPPED.contains(question.name()) ? "; as a map: --svg FILE, --geojson FILE" : ""));
    }
    out.println();
    out.println("Any one SELECT over the published tables: sealspan ask --sql \"SELECT ...\"");
    out.flush();
  }

  private static String filters(Question question) {
    StringBuilder text = new StringBuilder();
    question
        .filters()
        .forEach(
            use -> text.append(text.isEmpty() ? "; filters: " : ", ").append(use.filter().label()));
    return text.toString();
  }
}
