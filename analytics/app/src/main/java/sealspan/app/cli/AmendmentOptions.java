package sealspan.app.cli;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.util.List;
import java.util.Set;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import sealspan.app.engine.DataFolder;
import sealspan.event.LoggedEvent;

/** What is typed for every amendment: of which event, why, by whom, and whether to ask first. */
final class AmendmentOptions {
  @Parameters(paramLabel = "EVENT-ID", description = "id of the event, as ask history shows it")
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

  String id() {
    return id;
  }

  String why() {
    return why;
  }

  String by() {
    return by;
  }

  /**
   * Shows what the history would say with the amendment, asks unless told not to, and appends it.
   *
   * @param rounds ids of the test rounds to show
   */
  void append(DataFolder folder, LoggedEvent amendment, Set<String> rounds, PrintWriter out) {
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset()));
    NewEvents newEvents = new NewEvents(folder, in, out);
    List<LoggedEvent> fresh = List.of(amendment);
    newEvents.preview(fresh, rounds);
    newEvents.append(fresh, yes ? NewEvents.Consent.GIVEN : NewEvents.Consent.ASK);
    out.flush();
  }
}
