package sealspan.app.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import sealspan.app.engine.EngineDoor;
import sealspan.app.engine.Letters.Wish;

@Command(
    name = "rebuild",
    mixinStandardHelpOptions = true,
    description = {
      "Makes all answers anew from the log, beside the ones in use, and then puts them in their"
          + " place.",
      "The same log, criteria and build give the same answers, byte for byte."
    })
final class RebuildCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private DataOption data;

  @Override
  public Integer call() {
    EngineDoor door = new EngineDoor(data.folder());
    door.open();
    spec.commandLine().getOut().println(StatusLine.ask(door, Wish.REBUILD));
    return ExitCode.DONE;
  }
}
