package sealspan.app.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import sealspan.app.engine.EngineDoor;
import sealspan.app.engine.Letters.Wish;

@Command(
    name = "fit",
    mixinStandardHelpOptions = true,
    description = {
      "Makes the estimates anew from everything that is in the log now.",
      "The engine does so by itself some time after new events; histories and counts are always"
          + " up to date."
    })
final class FitCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private DataOption data;

  @Override
  public Integer call() {
    EngineDoor door = new EngineDoor(data.folder());
    door.open();
    spec.commandLine().getOut().println(StatusLine.ask(door, Wish.FIT));
    return ExitCode.DONE;
  }
}
