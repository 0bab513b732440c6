package sealspan.app.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import sealspan.answers.Published;
import sealspan.app.Problem;
import sealspan.app.engine.Coverage;
import sealspan.app.engine.CriteriaInForce;
import sealspan.app.engine.Cuts;
import sealspan.app.engine.DataFolder;
import sealspan.app.engine.EngineDoor;
import sealspan.app.engine.Installation;
import sealspan.app.engine.Letters.Wish;
import sealspan.app.engine.LogClient;
import sealspan.ingest.log.Cut;
import sealspan.ingest.log.StandingRows;
import sealspan.ingest.source.ImportSummary;
import sealspan.ingest.source.Importing;
import sealspan.ingest.source.Mapping;
import sealspan.ingest.source.StationZones;

@Command(
    name = "demo",
    mixinStandardHelpOptions = true,
    description = {
      "Shows the whole way from files to answers with the sample events of an invented utility, in a"
          + " data folder of its own.",
      "It leaves an engine running; sealspan stop ends it."
    })
final class DemoCommand implements Callable<Integer> {
  private static final String SAMPLES = "sample-events";
  private static final List<String> FILES =
      List.of(
          "events.jsonl",
          "visits.csv",
          "disturbances.csv",
          "water-samples.csv",
          "awkward/rejected.csv");

  @Spec private CommandSpec spec;
  @Mixin private DataOption data;

  @Override
  public Integer call() {
    long began = System.nanoTime();
    DataFolder folder = data.folderOr(DataFolder.ofDemo());
    Path samples = Installation.file(SAMPLES);
    claim(folder);
    PrintWriter out = spec.commandLine().getOut();
    out.println("Sealspan with the sample events of Nullhaven, an invented utility.");
    out.flush();
    try (StatusLine line = new StatusLine()) {
      line.show("putting Nullhaven's criteria in force and starting the engine");
      if (!Files.exists(folder.criteria())) {
        CriteriaInForce.put(folder, CriteriaInForce.read(samples.resolve("criteria.csv")));
      }
      EngineDoor door = new EngineDoor(folder);
      try (LogClient log = LogClient.of(folder, door.opened())) {
        List<LogIntake.Reading> readings =
            FILES.stream()
                .map(
                    file ->
                        new LogIntake.Reading(
                            samples.resolve(file), Mapping.NONE, StationZones.NONE, "nullhaven"))
                .toList();
        StandingRows standing = LogIntake.standing(readings, log);
        for (LogIntake.Reading reading : readings) {
          line.show("importing " + reading.file().getFileName());
          ImportSummary summary = LogIntake.take(reading, log, standing, Importing.Progress.SILENT);
          line.close();
          out.println(brief(summary));
          out.flush();
        }
        line.show("histories and fits");
        awaitAnswers(folder, door, log.events().end(), line);
      }
    }
    out.println();
    DemoSummary.of(folder).forEach(out::println);
    next(folder, out, (System.nanoTime() - began) / 1_000_000_000.0);
    out.flush();
    return ExitCode.DONE;
  }

  /** Marks the folder as one of the demonstration; refuses one that holds a record already. */
  private static void claim(DataFolder folder) {
    Path mark = folder.root().resolve("demonstration");
    try {
      if (!Files.exists(mark) && Files.exists(folder.root().resolve("log"))) {
        throw new Problem(
            folder.root()
                + " holds a record already; the invented events of the demonstration must not mix"
                + " with it. Name an empty folder with --data, or none.");
      }
      Files.createDirectories(folder.root());
      Files.writeString(mark, "Everything in this folder is invented.\n");
    } catch (IOException e) {
      throw new Problem(
          folder.root() + " cannot be written (" + e.getMessage() + "). Name another with --data.",
          e);
    }
  }

  private static void awaitAnswers(DataFolder folder, EngineDoor door, Cut end, StatusLine line) {
    Coverage coverage = new Coverage(folder);
    coverage.await(end, line::showAnswers);
    boolean fitted =
        Published.newest(folder.root())
            .filter(p -> p.fitOffsets() != null)
            .filter(p -> Cuts.parse(p.fitOffsets()).covers(end))
            .isPresent();
    if (!fitted) {
      door.ask(Wish.FIT, line::show);
    }
    coverage.awaitFit(end, (done, all, meanwhile) -> line.show("estimates are being published"));
  }

  private static String brief(ImportSummary s) {
    StringBuilder text = new StringBuilder();
    text.append(
        String.format("  %-18s %3d rows, %3d new events", s.file(), s.rowsRead(), s.appended()));
    add(text, s.duplicates(), "there already");
    add(text, s.conflicts(), "in conflict");
    add(text, s.rejectedRows(), "rejected");
    add(text, s.leftOut().values().stream().mapToLong(Long::longValue).sum(), "left out");
    return text.toString();
  }

  private static void add(StringBuilder text, long count, String what) {
    if (count > 0) {
      text.append(", ").append(count).append(' ').append(what);
    }
  }

  private static void next(DataFolder folder, PrintWriter out, double seconds) {
    String typed = " --data " + folder.root();
    out.println();
    out.println(String.format(java.util.Locale.ROOT, "Ready after %.1f s. Try next:", seconds));
    for (String command :
        List.of(
            "ask history --assembly NH-02",
            "ask pass-share --type RP",
            "ask what-to-bring --site S03",
            "ask",
            "status",
            "stop")) {
      out.println("  analytics/sealspan " + command + typed);
    }
    out.println(Cautions.DEFERENCE);
  }
}
