package sealspan.app.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import sealspan.app.engine.Engine;

@Command(
    name = "engine",
    hidden = true,
    mixinStandardHelpOptions = true,
    description = "The engine itself, in the foreground; 'start' runs it in the background.")
final class EngineCommandLine implements Callable<Integer> {
  @Mixin private DataOption data;

  @Override
  public Integer call() throws Exception {
    Engine.run(data.folder());
    return ExitCode.DONE;
  }
}
