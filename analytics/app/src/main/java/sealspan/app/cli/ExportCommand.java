package sealspan.app.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sealspan.app.engine.DataFolder;
import sealspan.app.engine.LogArchive;
import sealspan.ingest.archive.Manifest;

@Command(
    name = "export",
    mixinStandardHelpOptions = true,
    description = {
      "Writes the whole log to a folder: every event, every row that was set aside, and what was"
          + " decided (criteria adopted, cuts fitted), with ids, reported and recorded times, order"
          + " and headers.",
      "The files are Avro object container files, with a manifest of counts, offsets and SHA-256"
          + " digests. What is appended while it runs is left out. The folder appears when all of"
          + " it is durable."
    })
final class ExportCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private DataOption data;

  @Parameters(paramLabel = "FOLDER", description = "the folder to make; must not be there yet")
  private Path target;

  @Override
  public Integer call() {
    DataFolder folder = data.folder();
    try (StatusLine line = new StatusLine()) {
      Manifest manifest =
          new LogArchive(folder)
              .export(
                  target,
                  Sealspan.VERSION,
                  (file, done, all) -> line.show(file + ": " + done + " of " + all + " records"));
      line.close();
      manifest
          .topics()
          .forEach(
              topic ->
                  spec.commandLine()
                      .getOut()
                      .printf(
                          "  %-22s %d records in %d files%n",
                          topic.topic(),
                          topic.files().stream().mapToLong(Manifest.DataFile::records).sum(),
                          topic.files().size()));
      spec.commandLine()
          .getOut()
          .println(
              "Exported to "
                  + target
                  + ". To put it back: sealspan restore "
                  + target
                  + " --data DIR");
    }
    return ExitCode.DONE;
  }
}
