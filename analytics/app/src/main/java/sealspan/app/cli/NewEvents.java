package sealspan.app.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import sealspan.answers.AnswersException;
import sealspan.answers.KnownEvents;
import sealspan.app.Problem;
import sealspan.app.engine.CriteriaInForce;
import sealspan.app.engine.DataFolder;
import sealspan.app.engine.EngineDoor;
import sealspan.app.engine.LogClient;
import sealspan.event.LoggedEvent;
import sealspan.event.Subject;
import sealspan.ingest.log.Receipt;

/** Shows what new events would say, asks, and appends them. */
final class NewEvents {
  /** Whether one is asked before anything is appended. */
  enum Consent {
    ASK,
    GIVEN,
    /** Nothing is appended at all. */
    REFUSED
  }

  private final DataFolder folder;
  private final BufferedReader in;
  private final PrintWriter out;

  NewEvents(DataFolder folder, BufferedReader in, PrintWriter out) {
    this.folder = folder;
    this.in = in;
    this.out = out;
  }

  /** What is known of an assembly, its site, and the gauges and testers of some more events. */
  List<LoggedEvent> known(String assemblyId, List<LoggedEvent> fresh) {
    try (KnownEvents events = KnownEvents.open(folder.root())) {
      List<LoggedEvent> own = events.of(Set.of(Subject.assembly(assemblyId)));
      List<LoggedEvent> all = new ArrayList<>(own);
      all.addAll(fresh);
      Set<Subject> others = new LinkedHashSet<>(VisitPreview.subjects(assemblyId, all));
      others.remove(Subject.assembly(assemblyId));
      List<LoggedEvent> known = new ArrayList<>(own);
      known.addAll(events.of(others));
      return known;
    } catch (AnswersException e) {
      return List.of(); // Nothing was published yet, so nothing is known.
    }
  }

  /**
   * Shows what the histories of the assemblies would say.
   *
   * @param rounds ids of the test rounds to show
   */
  void preview(List<LoggedEvent> fresh, Set<String> rounds) {
    Set<String> assemblies = new LinkedHashSet<>();
    for (LoggedEvent event : fresh) {
      if (event.event().subject().kind() == Subject.Kind.ASSEMBLY) {
        assemblies.add(event.event().subject().id());
      }
    }
    for (String id : assemblies) {
      new VisitPreview(id, known(id, fresh), fresh, CriteriaInForce.of(folder))
          .words(rounds)
          .forEach(out::println);
    }
  }

  /**
   * Asks, and appends.
   *
   * @return whether they are in the log now
   * @throws Problem when one is in conflict with what the log holds
   */
  boolean append(List<LoggedEvent> fresh, Consent consent) {
    if (consent == Consent.REFUSED) {
      out.println("A trial run: nothing was appended.");
      return false;
    }
    if (consent == Consent.ASK && !yes("Append this to the log? [y/N] ")) {
      out.println("Nothing was appended.");
      return false;
    }
    try (LogClient log = LogClient.of(folder, new EngineDoor(folder).opened())) {
      List<Receipt<LoggedEvent>> receipts = log.events().append(fresh);
      for (int i = 0; i < receipts.size(); i++) {
        tell(fresh.get(i), receipts.get(i));
      }
    }
    return true;
  }

  private void tell(LoggedEvent event, Receipt<LoggedEvent> receipt) {
    String what = shown(event) + " " + event.id();
    if (receipt instanceof Receipt.Appended<LoggedEvent>) {
      out.println("Appended: " + what);
    } else if (receipt instanceof Receipt.Duplicate<LoggedEvent>) {
      out.println("There already, nothing changed: " + what);
    } else {
      throw new Problem(
          "The log holds another content of "
              + what
              + ", and that one holds. If this one is right, enter it as a correction: sealspan"
              + " correct "
              + event.id()
              + " --with FILE --why TEXT");
    }
  }

  private static String shown(LoggedEvent event) {
    return event
        .event()
        .getClass()
        .getSimpleName()
        .replaceAll("([a-z])([A-Z])", "$1 $2")
        .toLowerCase(Locale.ROOT);
  }

  private boolean yes(String question) {
    out.print(question);
    out.flush();
    try {
      String line = in.readLine();
      return line != null && line.strip().toLowerCase(Locale.ROOT).matches("y|yes");
    } catch (IOException e) {
      throw new Problem("The answer could not be read (" + e.getMessage() + ").", e);
    }
  }
}
