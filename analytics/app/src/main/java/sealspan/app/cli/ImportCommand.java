package sealspan.app.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sealspan.app.Problem;
import sealspan.app.engine.Coverage;
import sealspan.app.engine.DataFolder;
import sealspan.app.engine.EngineDoor;
import sealspan.app.engine.LogClient;
import sealspan.ingest.log.StandingRows;
import sealspan.ingest.source.ImportSummary;
import sealspan.ingest.source.Importing;
import sealspan.ingest.source.Mapping;
import sealspan.ingest.source.MappingFile;
import sealspan.ingest.source.SourceException;
import sealspan.ingest.source.StationZones;

@Command(
    name = "import",
    mixinStandardHelpOptions = true,
    description = {
      "Takes files into the log: CSV with one row per event or per visit, JSON Lines, or water"
          + " samples in Water Quality Portal columns. What a file is, is seen from its header.",
      "Good rows go in. Bad rows are set aside with file, line, field and reason (sealspan ask"
          + " rejected), and the exit code is 3. Importing a file again changes nothing; so a"
          + " mended file is imported whole, and a stopped import is started again."
    })
final class ImportCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private DataOption data;

  @Parameters(arity = "1..*", paramLabel = "FILE", description = "the files, taken in this order")
  private List<Path> files;

  @Option(
      names = "--mapping",
      paramLabel = "FILE",
      description =
          "how to read somebody else's table: names of columns, units, dates, words. A first one is"
              + " made by: sealspan propose-mapping FILE")
  private Path mapping;

  @Option(
      names = "--source",
      paramLabel = "NAME",
      description =
          "name of the source, part of the key of numbered reports: where two firms use the same"
              + " numbers, name each. Without it that of the mapping, else '"
              + LogIntake.USUAL_SOURCE
              + "'")
  private String source;

  @Option(
      names = "--zone-of-station",
      paramLabel = "FILE",
      description = "for water samples: a CSV with station_id and zone_id")
  private Path zoneOfStation;

  @Option(
      names = "--encoding",
      paramLabel = "NAME",
      description = "such as windows-1252; without it UTF-8, or what a byte-order mark says")
  private String encoding;

  @Option(names = "--dry-run", description = "reads and judges every row, and takes nothing in")
  private boolean dryRun;

  @Option(
      names = "--no-wait",
      description = "ends when all is durable in the log, not when it is in the answers too")
  private boolean noWait;

  @Override
  public Integer call() {
    files.forEach(ImportCommand::requireReadable);
    Mapping how = mapping();
    StationZones zones = zones();
    String named = source == null ? how.source() : source;
    String sourceName = named == null ? LogIntake.USUAL_SOURCE : named;
    List<LogIntake.Reading> readings =
        files.stream().map(f -> new LogIntake.Reading(f, how, zones, sourceName)).toList();
    return dryRun ? tryOut(readings) : take(readings);
  }

  private int tryOut(List<LogIntake.Reading> readings) {
    boolean clean = true;
    for (LogIntake.Reading reading : readings) {
      try (StatusLine line = new StatusLine()) {
        ImportSummary summary = LogIntake.tryOut(reading, progress(reading.file(), line));
        line.close();
        print(summary);
        clean &= summary.isClean();
      }
    }
    out().println("A trial run: nothing was taken in.");
    return clean ? ExitCode.DONE : ExitCode.IN_PART;
  }

  private int take(List<LogIntake.Reading> readings) {
    DataFolder folder = data.folder();
    boolean clean = true;
    boolean tooMany = false;
    try (StatusLine line = new StatusLine()) {
      line.show("starting the engine, if it does not run");
      try (LogClient log = LogClient.of(folder, new EngineDoor(folder).opened())) {
        StandingRows standing = LogIntake.standing(readings, log);
        tooMany = standing.tooMany();
        for (LogIntake.Reading reading : readings) {
          ImportSummary summary =
              LogIntake.take(reading, log, standing, progress(reading.file(), line));
          line.close();
          print(summary);
          clean &= summary.isClean();
        }
        if (!noWait) {
          new Coverage(folder).await(log.events().end(), line::showAnswers);
        }
      }
    }
    out().println(noWait ? "All of it is durable in the log." : "The answers are up to date.");
    if (tooMany) {
      out()
          .println(
              "More than "
                  + StandingRows.MOST_ROWS
                  + " rows of these files were set aside before: which of them are put right now"
                  + " was not worked out.");
    }
    if (!clean) {
      out()
          .println(
              "Some rows were set aside. Why: sealspan ask rejected" + DataOption.typed(folder));
    }
    return clean ? ExitCode.DONE : ExitCode.IN_PART;
  }

  private void print(ImportSummary summary) {
    LogIntake.words(summary).forEach(out()::println);
    out().flush();
  }

  private PrintWriter out() {
    return spec.commandLine().getOut();
  }

  private static Importing.Progress progress(Path file, StatusLine line) {
    return (rows, bytes, total) ->
        line.show(
            file.getFileName()
                + ": "
                + rows
                + " rows"
                + (total > 0 ? ", " + 100 * bytes / total + " %" : ""));
  }

  private Mapping mapping() {
    try {
      Mapping read = mapping == null ? Mapping.NONE : MappingFile.read(mapping);
      return read.inEncoding(encoding);
    } catch (SourceException e) {
      throw new Problem(e.getMessage(), e);
    }
  }

  private StationZones zones() {
    try {
      return zoneOfStation == null ? StationZones.NONE : StationZones.read(zoneOfStation);
    } catch (SourceException e) {
      throw new Problem(e.getMessage(), e);
    }
  }

  private static void requireReadable(Path file) {
    if (!Files.exists(file)) {
      throw new Problem("There is no file " + file + ". Check the path.");
    }
    if (Files.isDirectory(file)) {
      throw new Problem(file + " is a folder. Name the files in it.");
    }
    if (!Files.isReadable(file)) {
      throw new Problem("You may not read " + file + ". Change its permissions.");
    }
  }
}
