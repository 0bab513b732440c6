package sealspan.app.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import sealspan.app.engine.DataFolder;
import sealspan.app.engine.EngineDoor;

@Command(
    name = "stop",
    mixinStandardHelpOptions = true,
    description = {
      "Stops the engine in an orderly way and waits until it is gone. Nothing is lost; answers stay"
          + " readable.",
      "Without --data it stops the engines of the usual folder and of the demonstration."
    })
final class StopCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private DataOption data;

  @Override
  public Integer call() {
    if (data.isGiven()) {
      stop(data.folder(), Quiet.NEVER);
    } else {
      boolean demo = stop(DataFolder.ofDemo(), Quiet.WHEN_NONE_RAN);
      stop(DataFolder.usual(), demo ? Quiet.WHEN_NONE_RAN : Quiet.NEVER);
    }
    return ExitCode.DONE;
  }

  private enum Quiet {
    NEVER,
    WHEN_NONE_RAN
  }

  private boolean stop(DataFolder folder, Quiet quiet) {
    boolean ran = new EngineDoor(folder).stop();
    if (ran) {
      spec.commandLine().getOut().println("Stopped the engine of " + folder.root() + ".");
    } else if (quiet == Quiet.NEVER) {
      spec.commandLine().getOut().println("No engine runs on " + folder.root() + ".");
    }
    return ran;
  }
}
