package sealspan.app.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import sealspan.app.Problem;
import sealspan.app.engine.DataFolder;
import sealspan.event.EventCorrected;
import sealspan.event.LoggedEvent;
import sealspan.event.LoggedEvent.Arrival;
import sealspan.ingest.validate.Validation;

@Command(
    name = "correct",
    mixinStandardHelpOptions = true,
    description = {
      "Puts another content in the place of an event's. The first stays in the log; the correction"
          + " says who made it and why.",
      "An event that was filed under the wrong assembly is voided and entered anew."
    })
final class CorrectCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private DataOption data;
  @Mixin private AmendmentOptions amendment;

  @Option(
      names = "--with",
      required = true,
      paramLabel = "FILE",
      description =
          "the content that holds, whole: a JSON object as in JSON Lines, telling of one event")
  private Path file;

  @Override
  public Integer call() {
    DataFolder folder = data.folder();
    LoggedEvent target = Amendment.target(folder, amendment.id());
    LoggedEvent content = content();
    if (!content.event().subject().equals(target.event().subject())) {
      throw new Problem(
          "Event "
              + amendment.id()
              + " is about "
              + target.event().subject().key()
              + ", but "
              + file
              + " is about "
              + content.event().subject().key()
              + ". Void the event and enter the other anew.");
    }
    EventCorrected correction =
        new EventCorrected(
            amendment.id(), Amendment.today(), amendment.by(), amendment.why(), content.event());
    amendment.append(
        folder,
        Amendment.logged(correction, target.source()),
        Set.of(amendment.id()),
        spec.commandLine().getOut());
    return ExitCode.DONE;
  }

  private LoggedEvent content() {
    Validation validation =
        TypedEvents.judged(TypedEvents.read(file), LogIntake.USUAL_SOURCE, Arrival.LIVE);
    if (validation instanceof Validation.Rejected rejected) {
      StringBuilder text = new StringBuilder(file + " cannot be taken as it is:");
      rejected
          .problems()
          .forEach(
              p ->
                  text.append("\n  ")
                      .append(p.field() == null ? "" : p.field() + ": ")
                      .append(p.text()));
      throw new Problem(text.toString());
    }
    List<LoggedEvent> events = ((Validation.Accepted) validation).events();
    if (events.size() != 1) {
      throw new Problem(
          file
              + " tells of "
              + events.size()
              + " events. A correction is of one: add the member event, such as \"event\": \"test\".");
    }
    return events.get(0);
  }
}
