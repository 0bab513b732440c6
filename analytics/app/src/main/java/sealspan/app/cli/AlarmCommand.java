package sealspan.app.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sealspan.answers.RaisedAlarms;
import sealspan.app.Problem;
import sealspan.app.engine.DataFolder;
import sealspan.app.engine.EngineDoor;
import sealspan.app.engine.LogClient;

@Command(
    name = "alarm",
    mixinStandardHelpOptions = true,
    synopsisSubcommandLabel = "(close ALARM-ID --why TEXT --by ID)",
    description = {
      "Closes alarms of the watch over fouling; 'ask alarms' lists them.",
      "An alarm is never deleted: that it was closed, why and by whom is kept beside it for ever."
    })
final class AlarmCommand implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }

  @Command(
      name = "close",
      mixinStandardHelpOptions = true,
      description = "Notes that an alarm was looked into, and what came of it.")
  int close(
      @Mixin DataOption data,
      @Parameters(paramLabel = "ALARM-ID", description = "id of the alarm, as ask alarms shows it")
          String id,
      @Option(
              names = "--why",
              required = true,
              paramLabel = "TEXT",
              description = "what was found or done, in words; it is kept for ever")
          String why,
      @Option(
              names = "--by",
              required = true,
              paramLabel = "ID",
              description = "id of who decided it; an id, not a name")
          String by) {
    DataFolder folder = data.folder();
    if (why.isBlank() || by.isBlank()) {
      throw new Problem("An alarm is closed with a reason and an id: --why TEXT --by ID.");
    }
    if (!RaisedAlarms.isRaised(folder.root(), id)) {
      throw new Problem(
          "There is no alarm "
              + id
              + " in the newest answers. 'sealspan ask alarms' lists those that there are.");
    }
    try (LogClient log = LogClient.of(folder, new EngineDoor(folder).opened())) {
      log.closeAlarm(id, why, by);
    }
    spec.commandLine().getOut().println("The alarm " + id + " is closed.");
    return ExitCode.DONE;
  }
}
