package sealspan.app.cli;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import sealspan.answers.Answer;
import sealspan.answers.CsvText;
import sealspan.answers.FoldedRecord;
import sealspan.answers.FoulingGeoJson;
import sealspan.answers.FoulingMap;
import sealspan.answers.JsonText;
import sealspan.answers.TextTable;
import sealspan.answers.chart.FoulingMapSvg;
import sealspan.answers.explore.ExplorationAnswer;
import sealspan.answers.explore.ExplorationMap;
import sealspan.answers.explore.PipeFile;
import sealspan.app.Problem;
import sealspan.study.fouling.Exploration;
import sealspan.study.fouling.ExplorationCautions;
import sealspan.study.fouling.ExplorationChoice;
import sealspan.study.fouling.PipeLines;
import sealspan.study.fouling.ZoneShape;

@Command(
    name = "look-for-clusters",
    mixinStandardHelpOptions = true,
    description = {
      "Looks back for clusters of fouling in the way that you choose: by circles, ellipses, subsets of"
          + " near sites, or distance along pipes. The engine need not run.",
      "It is an exploration: each further look brings its own chance of a false alarm. What the"
          + " engine found by circles: sealspan ask clusters"
    })
final class LookForClustersCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private DataOption data;

  @Option(
      names = "--shape",
      paramLabel = "SHAPE",
      description = "${COMPLETION-CANDIDATES}; without it circles")
  private Shape shape = Shape.circles;

  @Option(
      names = "--pipes",
      paramLabel = "FILE",
      description =
          "for the shape pipes: GeoJSON (WGS84) with pipes as LineString or MultiLineString features"
              + " and valves as Point features")
  private Path pipes;

  @Option(
      names = "--closed",
      paramLabel = "NAME",
      defaultValue = "closed",
      description =
          "the property of a feature that tells whether a pipe or valve is closed, by true or false,"
              + " yes or no, 1 or 0, closed or open; without it '${DEFAULT-VALUE}'. Nothing passes"
              + " what is closed")
  private String closed;

  @Option(
      names = "--pipe-within",
      paramLabel = "METRES",
      defaultValue = "100",
      description =
          "sites farther from every open pipe are left out and named; without it ${DEFAULT-VALUE}")
  private double pipeWithinM;

  @Option(
      names = "--whole-time",
      description = "where only: looks at the whole time at once, not at shorter times in it")
  private boolean wholeTime;

  @Option(
      names = "--against",
      paramLabel = "NULL",
      description =
          "what cases are held against: ${COMPLETION-CANDIDATES}; without it tests, those that were"
              + " made. permuted-times deals the times of the cases out anew among their places, and"
              + " takes the route of tests for clusters")
  private Against against = Against.tests;

  @Option(
      names = "--looks",
      paramLabel = "N",
      defaultValue = "1",
      description =
          "how often you mean to look in all: the 5 percent are shared out; without it"
              + " ${DEFAULT-VALUE}")
  private int looks;

  @Option(names = "--since", paramLabel = "DATE", description = "visits from that day on")
  private LocalDate since;

  @Option(names = "--until", paramLabel = "DATE", description = "visits up to that day")
  private LocalDate until;

  @Mixin private AsOfOption asOf;

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
      names = "--svg",
      paramLabel = "FILE",
      description = "draws a map with a time line too, as a picture")
  private Path svg;

  @Option(
      names = "--geojson",
      paramLabel = "FILE",
      description = "writes clusters and their sites as GeoJSON (WGS84) too")
  private Path geoJson;

  /** Shapes of zones, as they are typed. */
  enum Shape {
    circles,
    ellipses,
    subsets,
    pipes
  }

  /** What cases are held against, as it is typed. */
  enum Against {
    tests,
    permuted_times;

    @Override
    public String toString() {
      return name().replace('_', '-');
    }
  }

  /** Forms of the answer, as they are typed. */
  enum Format {
    table,
    csv,
    json
  }

  @Override
  public Integer call() {
    ExplorationChoice choice = choice();
    FoldedRecord record;
    Exploration found;
    try (StatusLine line = new StatusLine()) {
      record =
          FoldedRecord.read(
              data.folder().root(),
              asOf.asOf(),
              (step, done, all) -> line.show(step + ": " + done + " of " + all));
      found =
          Exploration.of(
              record.assemblies(),
              choice,
              number -> line.show("looking for cluster " + number + " by " + shape));
    }
    write(found, record);
    return ExitCode.DONE;
  }

  private ExplorationChoice choice() {
    try {
      if (pipes != null && shape != Shape.pipes) {
        throw new Problem("--pipes FILE goes with --shape pipes only.");
      }
      if (pipes == null && shape == Shape.pipes) {
        throw new Problem(
            "--shape pipes needs the pipes: --pipes FILE, a GeoJSON file of lines (WGS84).");
      }
      PipeLines lines = pipes == null ? null : PipeFile.read(pipes, closed);
      return new ExplorationChoice(
          ZoneShape.valueOf(shape.name().toUpperCase(Locale.ROOT)),
          lines,
          pipeWithinM,
          wholeTime,
          against == Against.permuted_times,
          since,
          until,
          looks);
    } catch (IllegalArgumentException e) {
      throw new Problem(e.getMessage(), e);
    }
  }

  private void write(Exploration found, FoldedRecord record) {
    Answer people = ExplorationAnswer.forPeople(found, record.asOf());
    StringWriter text = new StringWriter();
    try {
      switch (format) {
        case csv -> CsvText.write(ExplorationAnswer.forPrograms(found, record.asOf()), text);
        case json -> JsonText.write(ExplorationAnswer.forPrograms(found, record.asOf()), text);
        default -> text.append(TextTable.of(people));
      }
    } catch (IOException e) {
      throw new UncheckedIOException("Text in memory can be written.", e);
    }
    if (format != Format.table && found.choice().permuted()) {
      spec.commandLine().getErr().println("WARNING: " + ExplorationCautions.route());
      spec.commandLine().getErr().flush();
    }
    if (out == null) {
      spec.commandLine().getOut().print(text);
    } else {
      OutFile.write(out, text.toString());
      say(out);
    }
    FoulingMap map = ExplorationMap.of(found, record.zones(), people);
    if (svg != null) {
      OutFile.write(svg, FoulingMapSvg.of(map));
      say(svg);
    }
    if (geoJson != null) {
      OutFile.write(geoJson, FoulingGeoJson.of(map));
      say(geoJson);
    }
    spec.commandLine().getOut().flush();
  }

  /** Beside an answer on the terminal this would stand in its way. */
  private void say(Path file) {
    (out == null ? spec.commandLine().getErr() : spec.commandLine().getOut())
        .println("Wrote " + file + ".");
    spec.commandLine().getErr().flush();
  }
}
