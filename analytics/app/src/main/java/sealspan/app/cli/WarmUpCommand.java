package sealspan.app.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** Loads the classes of short commands once, for the launcher's archive of ready classes. */
@Command(
    name = "warm-up",
    hidden = true,
    description = "Used by the launcher after a build; does nothing that lasts.")
final class WarmUpCommand implements Callable<Integer> {
  @Override
  public Integer call() {
    Sealspan.commandLine().getUsageMessage();
    return ExitCode.DONE;
  }
}
