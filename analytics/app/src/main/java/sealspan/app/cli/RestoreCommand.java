package sealspan.app.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
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
import sealspan.app.engine.LogArchive;
import sealspan.app.engine.LogArchive.Flawed;
import sealspan.app.engine.LogClient;
import sealspan.ingest.archive.Restoring;

@Command(
    name = "restore",
    mixinStandardHelpOptions = true,
    description = {
      "Puts an export back into an empty data folder or cluster, checks every file against its"
          + " digest first, then starts the engine and waits for the answers. On the same build"
          + " they are the same, byte for byte.",
      "One that was broken off is gone on with by the same command."
    })
final class RestoreCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private DataOption data;
  @Mixin private KafkaOptions kafka;

  @Parameters(paramLabel = "FOLDER", description = "the folder that export made")
  private Path source;

  @Option(
      names = "--sound-only",
      description =
          "where files are damaged or missing, restores the others and says what was left out; the"
              + " exit code is then 3")
  private boolean soundOnly;

  @Option(names = "--no-start", description = "ends when all is durable, and starts no engine")
  private boolean noStart;

  @Override
  public Integer call() {
    DataFolder folder = data.folder();
    if (new EngineDoor(folder).running().isPresent()) {
      throw new Problem(
          "An engine runs on "
              + folder.root()
              + ". Restore into an empty folder, with --data DIR.");
    }
    kafka.remember(folder);
    Restoring.Outcome outcome;
    try (StatusLine line = new StatusLine()) {
      line.show("checking the export");
      outcome =
          new LogArchive(folder)
              .restore(
                  source,
                  soundOnly ? Flawed.LEAVE_OUT : Flawed.REFUSE,
                  (file, done, all) -> line.show(file + ": " + done + " of " + all + " records"));
    }
    out().println(outcome.records() + " records are in the log of " + folder.root() + ".");
    if (!outcome.leftOut().isEmpty()) {
      out().println("Left out, because they are not as they were written:");
      outcome.leftOut().forEach(flaw -> out().println("  " + flaw));
    }
    if (!noStart) {
      awaitAnswers(folder);
    }
    return outcome.leftOut().isEmpty() ? ExitCode.DONE : ExitCode.IN_PART;
  }

  private void awaitAnswers(DataFolder folder) {
    try (StatusLine line = new StatusLine();
        LogClient log = LogClient.of(folder, new EngineDoor(folder).opened())) {
      new Coverage(folder).await(log.events().end(), line::showAnswers);
    }
    out().println("The answers are up to date.");
  }

  private PrintWriter out() {
    return spec.commandLine().getOut();
  }
}
