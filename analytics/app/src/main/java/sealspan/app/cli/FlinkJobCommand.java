package sealspan.app.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sealspan.app.Problem;
import sealspan.jobs.JobJar;

@Command(
    name = "flink-job",
    mixinStandardHelpOptions = true,
    description = {
      "Writes the jobs as one jar for a Flink cluster of your own. Its programs are"
          + " sealspan.jobs.HistoriesMain (the continuous job) and sealspan.jobs.FittingMain (a fit"
          + " at a cut)."
    })
final class FlinkJobCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "the jar to write")
  private Path file;

  @Override
  public Integer call() {
    try {
      JobJar.write(file, System.getProperty("java.class.path"));
    } catch (IOException e) {
      throw new Problem(file + " cannot be written (" + e.getMessage() + ").", e);
    }
    spec.commandLine()
        .getOut()
        .println("Wrote " + file + ". Run it with: flink run -d -c sealspan.jobs.HistoriesMain");
    return ExitCode.DONE;
  }
}
