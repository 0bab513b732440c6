package sealspan.app.cli;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import sealspan.app.Problem;
import sealspan.app.engine.Coverage;
import sealspan.app.engine.DataFolder;
import sealspan.app.engine.EngineDoor;
import sealspan.app.engine.LogClient;
import sealspan.event.LoggedEvent;
import sealspan.ingest.log.Receipt;
import sealspan.ingest.source.EventLinesWriter;
import sealspan.ingest.source.VisitSheetWriter;
import sealspan.study.practice.PracticeFleet;
import sealspan.study.practice.PracticeParameters;
import sealspan.study.practice.TruthText;

@Command(
    name = "practice",
    mixinStandardHelpOptions = true,
    description = {
      "Invents a fleet whose true seal lives, repairs and fouling are known, to practise with and to"
          + " measure. Everything in it is invented.",
      "Use a data folder of its own: an invented fleet must not mix with a real record."
    })
final class PracticeCommand implements Callable<Integer> {
  private static final int BATCH = 4000;

  @Spec private CommandSpec spec;
  @Mixin private DataOption data;

  @Option(
      names = "--assemblies",
      paramLabel = "N",
      defaultValue = "1000",
      description = "positions, each with one assembly at a time; without it ${DEFAULT-VALUE}")
  private int assemblies;

  @Option(
      names = "--years",
      paramLabel = "N",
      defaultValue = "8",
      description = "years of the record; without it ${DEFAULT-VALUE}")
  private int years;

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "the same seed invents the same fleet; without it ${DEFAULT-VALUE}")
  private long seed;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description =
          "writes there what can be imported (visits.csv, events.jsonl) and the truth behind it"
              + " (parameters.csv, failures.csv, actions.csv)")
  private Path out;

  @Option(
      names = "--into-log",
      description = "appends the events to the log of the data folder; needs --data")
  private boolean intoLog;

  @Override
  public Integer call() {
    if (out == null && !intoLog) {
      throw new Problem("Say what to do with the fleet: --out DIR, --into-log, or both.");
    }
    if (intoLog && !data.isGiven()) {
      throw new Problem(
          "Name a data folder of its own with --data DIR: an invented fleet must not mix with a real"
              + " record.");
    }
    PracticeFleet fleet = fleet();
    if (out != null) {
      writeFiles(fleet);
    }
    if (intoLog) {
      append(fleet);
    }
    spec.commandLine().getOut().flush();
    return ExitCode.DONE;
  }

  private PracticeFleet fleet() {
    try {
      return new PracticeFleet(PracticeParameters.usual(seed, assemblies).overYears(years));
    } catch (IllegalArgumentException e) {
      throw new Problem(e.getMessage(), e);
    }
  }

  private void writeFiles(PracticeFleet fleet) {
    try {
      Files.createDirectories(out);
      write("parameters.csv", TruthText.parameters(fleet.parameters()).stream());
      write("failures.csv", TruthText.failures(fleet));
      write("actions.csv", TruthText.actions(fleet));
      writeEvents(fleet);
    } catch (IOException e) {
      throw new Problem("The fleet cannot be written to " + out + " (" + e.getMessage() + ").", e);
    }
    spec.commandLine()
        .getOut()
        .println(
            "Wrote the fleet and the truth behind it to "
                + out
                + ". To import it, into a data folder of its own: sealspan import --data DIR --source "
                + fleet.parameters().town().source()
                + " "
                + out.resolve("events.jsonl")
                + " "
                + out.resolve("visits.csv"));
  }

  /** One row per visit, and for what has no place there one line per event. */
  private void writeEvents(PracticeFleet fleet) throws IOException {
    try (VisitSheetWriter visits =
            new VisitSheetWriter(Files.newBufferedWriter(out.resolve("visits.csv")));
        EventLinesWriter lines =
            new EventLinesWriter(Files.newBufferedWriter(out.resolve("events.jsonl")));
        Stream<LoggedEvent> events = fleet.events()) {
      for (Iterator<LoggedEvent> each = events.iterator(); each.hasNext(); ) {
        LoggedEvent event = each.next();
        if (!visits.write(event)) {
          lines.write(event);
        }
      }
    }
  }

  private void write(String name, Stream<String> lines) throws IOException {
    try (lines;
        BufferedWriter writer = Files.newBufferedWriter(out.resolve(name))) {
      for (Iterator<String> each = lines.iterator(); each.hasNext(); ) {
        writer.write(each.next());
        writer.write('\n');
      }
    }
  }

  private void append(PracticeFleet fleet) {
    DataFolder folder = data.folder();
    PrintWriter words = spec.commandLine().getOut();
    long[] counts = new long[3];
    try (StatusLine line = new StatusLine();
        LogClient log = LogClient.of(folder, new EngineDoor(folder).opened());
        Stream<LoggedEvent> events = fleet.events()) {
      List<LoggedEvent> batch = new ArrayList<>(BATCH);
      for (Iterator<LoggedEvent> each = events.iterator(); each.hasNext(); ) {
        batch.add(each.next());
        if (batch.size() == BATCH || !each.hasNext()) {
          log.events().append(batch).forEach(receipt -> count(receipt, counts));
          batch.clear();
          line.show(counts[0] + " events appended");
        }
      }
      new Coverage(folder).await(log.events().end(), line::showAnswers);
    }
    words.println(
        counts[0]
            + " events appended, "
            + counts[1]
            + " there already, "
            + counts[2]
            + " in conflict with a report of the same number. The answers are up to date.");
  }

  private static void count(Receipt<LoggedEvent> receipt, long[] counts) {
    if (receipt instanceof Receipt.Appended<LoggedEvent>) {
      counts[0]++;
    } else if (receipt instanceof Receipt.Duplicate<LoggedEvent>) {
      counts[1]++;
    } else {
      counts[2]++;
    }
  }
}
