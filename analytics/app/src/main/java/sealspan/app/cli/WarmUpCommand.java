package sealspan.app.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import sealspan.answers.Answer;
import sealspan.answers.ParquetFile;
import sealspan.answers.Questions;
import sealspan.answers.ResultTable;
import sealspan.answers.ResultTable.ResultColumn;
import sealspan.answers.TextTable;
import sealspan.app.engine.Installation;
import sealspan.app.engine.Trees;

/**
 * Loads the classes of short commands once, for the launcher's archive of ready classes, and lets a
 * broker make its own.
 */
@Command(
    name = "warm-up",
    hidden = true,
    description = "Used by the launcher after a build; does nothing that lasts.")
final class WarmUpCommand implements Callable<Integer> {
  @Override
  public Integer call() throws IOException {
    Sealspan.commandLine().getUsageMessage();
    ResultTable table =
        new ResultTable(
            List.of(new ResultColumn("questions", "INTEGER")),
            List.of(List.of(Questions.all().size())));
    Answer answer = new Answer("warm-up", "warm-up", "now", table, List.of("n = 1"));
    TextTable.of(answer);
    Path folder = Files.createTempDirectory("sealspan-");
    Path file = folder.resolve("warm-up.parquet");
    try {
      ParquetFile.write(answer, file);
      Installation.layBrokerReady(folder);
    } finally {
      Trees.delete(folder);
    }
    return ExitCode.DONE;
  }
}
