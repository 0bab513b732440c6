package sealspan.app.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import sealspan.app.Problem;
import sealspan.app.engine.DataFolder;
import sealspan.event.LoggedEvent;
import sealspan.event.LoggedEvent.Arrival;
import sealspan.ingest.validate.Validation;

@Command(
    name = "record",
    mixinStandardHelpOptions = true,
    description = {
      "Takes down one visit: the test as found, the repairs, the test as left.",
      "It is judged at once by the criteria in force: passed or failed, marginal or not, why, what"
          + " is missing and what is odd. Then you are asked whether it goes into the log."
    },
    footerHeading = "%n",
    footer = Cautions.DEFERENCE)
final class RecordCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private DataOption data;

  @Option(
      names = "--file",
      paramLabel = "FILE",
      description =
          "the visit as a JSON object whose members are named as the columns of a visit row;"
              + " without it you are asked, line by line")
  private Path file;

  @Option(names = "--yes", description = "appends without asking")
  private boolean yes;

  @Option(names = "--dry-run", description = "judges, and appends nothing")
  private boolean dryRun;

  @Option(
      names = "--source",
      paramLabel = "NAME",
      description = "name of the source; without it '" + LogIntake.USUAL_SOURCE + "'")
  private String source = LogIntake.USUAL_SOURCE;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    DataFolder folder = data.folder();
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset()));
    NewEvents newEvents = new NewEvents(folder, in, out);
    ObjectNode visit;
    if (file == null) {
      out.println(Cautions.forFieldWork());
      out.println();
      visit = new VisitForm(in, out, id -> newEvents.known(id, List.of())).filledIn();
      out.println();
    } else {
      visit = TypedEvents.read(file);
    }
    List<LoggedEvent> events = events(visit, folder, out);
    newEvents.preview(events, VisitPreview.ids(events));
    out.println();
    boolean appended =
        newEvents.append(
            events,
            dryRun
                ? NewEvents.Consent.REFUSED
                : yes ? NewEvents.Consent.GIVEN : NewEvents.Consent.ASK);
    if (appended) {
      out.println(Cautions.DEFERENCE);
    } else if (file == null) {
      out.println("What you typed is kept in " + keep(visit, folder) + ".");
    }
    out.flush();
    return ExitCode.DONE;
  }

  private List<LoggedEvent> events(ObjectNode visit, DataFolder folder, PrintWriter out) {
    Validation validation = TypedEvents.judged(visit, source, Arrival.LIVE);
    if (validation instanceof Validation.Accepted accepted) {
      Instant now = Instant.now();
      return accepted.events().stream().map(e -> e.recorded(now)).toList();
    }
    ((Validation.Rejected) validation)
        .problems()
        .forEach(p -> out.println((p.field() == null ? "" : p.field() + ": ") + p.text()));
    out.flush();
    throw new Problem(
        file == null
            ? "The visit cannot be taken as it is. What you typed is kept in "
                + keep(visit, folder)
                + ": mend it there, then: sealspan record --file FILE"
            : "The visit cannot be taken as it is. Mend " + file + ".");
  }

  private static Path keep(ObjectNode visit, DataFolder folder) {
    Path kept =
        folder
            .root()
            .resolve("drafts")
            .resolve("visit-" + Instant.now().getEpochSecond() + ".json");
    TypedEvents.write(visit, kept);
    return kept;
  }
}
