package sealspan.app.cli;

import java.io.PrintWriter;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import sealspan.app.engine.DataFolder;
import sealspan.event.EventVoided;
import sealspan.event.LoggedEvent;

@Command(
    name = "void",
    mixinStandardHelpOptions = true,
    description = {
      "Takes an event back: it counts as if it had never been recorded. It stays in the log, with"
          + " who took it back and why."
    })
final class VoidCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private DataOption data;
  @Mixin private AmendmentOptions amendment;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    DataFolder folder = data.folder();
    LoggedEvent target = Amendment.target(folder, amendment.id());
    EventVoided voided =
        new EventVoided(
            amendment.id(),
            target.event().subject(),
            Amendment.today(),
            amendment.by(),
            amendment.why());
    out.println(
        "To be taken back: "
            + target.event().getClass().getSimpleName()
            + " of "
            + target.event().when().day()
            + " about "
            + target.event().subject().key());
    amendment.append(folder, Amendment.logged(voided, target.source()), Set.of(), out);
    return ExitCode.DONE;
  }
}
