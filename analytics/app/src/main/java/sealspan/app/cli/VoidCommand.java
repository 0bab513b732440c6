package sealspan.app.cli;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
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

  @Parameters(paramLabel = "EVENT-ID", description = "id of the event to take back")
  private String id;

  @Option(
      names = "--why",
      required = true,
      paramLabel = "TEXT",
      description = "why, in words; it is kept for ever")
  private String why;

  @Option(
      names = "--by",
      paramLabel = "ID",
      description = "id of who decided it; an id, not a name")
  private String by;

  @Option(names = "--yes", description = "appends without asking")
  private boolean yes;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    DataFolder folder = data.folder();
    LoggedEvent target = Amendment.target(folder, id);
    EventVoided voided = new EventVoided(id, target.event().subject(), Amendment.today(), by, why);
    List<LoggedEvent> fresh = List.of(Amendment.logged(voided, target.source()));
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset()));
    NewEvents newEvents = new NewEvents(folder, in, out);
    out.println(
        "To be taken back: "
            + target.event().getClass().getSimpleName()
            + " of "
            + target.event().when().day()
            + " about "
            + target.event().subject().key());
    newEvents.preview(fresh, Set.of());
    newEvents.append(fresh, yes ? NewEvents.Consent.GIVEN : NewEvents.Consent.ASK);
    out.flush();
    return ExitCode.DONE;
  }
}
