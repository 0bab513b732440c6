package sealspan.app.cli;

import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sealspan.app.engine.CriteriaInForce;
import sealspan.app.engine.DataFolder;
import sealspan.app.engine.EngineDoor;
import sealspan.app.engine.Letters.Wish;
import sealspan.assembly.AcceptanceCriteria;

@Command(
    name = "criteria",
    mixinStandardHelpOptions = true,
    synopsisSubcommandLabel = "(show | check FILE | use FILE)",
    description = {
      "The limits that tests are judged by: a dated table, each row with its source.",
      "To set your own: 'criteria show --out FILE', edit it, 'criteria check FILE', 'criteria use"
          + " FILE'. The limits that your jurisdiction adopted prevail over the shipped ones."
    })
final class CriteriaCommand implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }

  @Command(
      name = "show",
      mixinStandardHelpOptions = true,
      description = "Writes the table in force as CSV.")
  int show(
      @Mixin DataOption data,
      @Option(
              names = "--out",
              paramLabel = "FILE",
              description = "the file to write; without it the terminal")
          Path out) {
    String csv = CriteriaInForce.of(data.folder()).csv();
    if (out == null) {
      spec.commandLine().getOut().print(csv);
      spec.commandLine().getOut().flush();
    } else {
      OutFile.write(out, csv);
      spec.commandLine().getOut().println("Wrote " + out + ".");
    }
    return ExitCode.DONE;
  }

  @Command(
      name = "check",
      mixinStandardHelpOptions = true,
      description = "Reads a table and says whether it is well formed; changes nothing.")
  int check(@Parameters(paramLabel = "FILE", description = "the table as CSV") Path file) {
    CriteriaInForce.read(file);
    spec.commandLine().getOut().println(file + " is well formed.");
    return ExitCode.DONE;
  }

  @Command(
      name = "use",
      mixinStandardHelpOptions = true,
      description = {
        "Puts a table in force and judges every report anew by it.",
        "Each table put in force is noted in the log for ever."
      })
  int use(
      @Mixin DataOption data,
      @Parameters(paramLabel = "FILE", description = "the table as CSV, or the word 'shipped'")
          String file) {
    AcceptanceCriteria criteria =
        file.equals("shipped") ? AcceptanceCriteria.shipped() : CriteriaInForce.read(Path.of(file));
    DataFolder folder = data.folder();
    CriteriaInForce.put(folder, criteria);
    EngineDoor door = new EngineDoor(folder);
    String rebuilt =
        door.open() == EngineDoor.Found.RUNNING
            ? StatusLine.ask(door, Wish.REBUILD)
            : "The engine was started and judges every report anew by it.";
    spec.commandLine().getOut().println("The table is in force. " + rebuilt);
    return ExitCode.DONE;
  }
}
