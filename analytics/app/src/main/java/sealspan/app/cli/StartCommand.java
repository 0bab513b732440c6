package sealspan.app.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import sealspan.app.Problem;
import sealspan.app.engine.DataFolder;
import sealspan.app.engine.EngineDoor;
import sealspan.app.engine.EngineState;

@Command(
    name = "start",
    mixinStandardHelpOptions = true,
    description = {
      "Starts the engine in the background: the log, the jobs and the writer of the answers.",
      "Commands that need it start it by themselves. There is one engine per data folder."
    })
final class StartCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private DataOption data;

  @Mixin private KafkaOptions kafka;

  @Override
  public Integer call() {
    DataFolder folder = data.folder();
    EngineDoor door = new EngineDoor(folder);
    if (door.running().isPresent()) {
      throw new Problem(
          "An engine already runs on "
              + folder.root()
              + " (process "
              + door.running().get().pid()
              + "). Any number of commands can use it; for a second engine choose another folder"
              + " with --data.");
    }
    kafka.remember(folder);
    EngineState state = door.opened();
    spec.commandLine()
        .getOut()
        .println(
            "The engine runs on "
                + folder.root()
                + " (process "
                + state.pid()
                + ", log at "
                + state.kafka()
                + "). End it with: sealspan stop"
                + DataOption.typed(folder));
    return ExitCode.DONE;
  }
}
