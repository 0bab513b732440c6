package sealspan.app.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import sealspan.app.Problem;
import sealspan.assembly.AssemblyParts;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyType;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.ComponentAt.Line;
import sealspan.event.LoggedEvent;
import sealspan.ingest.validate.Columns;

/**
 * Asks for a visit line by line. An empty line leaves a field not recorded; a question mark shows
 * what may stand there.
 */
final class VisitForm {
  private static final List<String> REPAIR =
      List.of("action", "mode", "mechanism", "cause", "reason", "fitted", "kit");

  private final BufferedReader in;
  private final PrintWriter out;
  private final Function<String, List<LoggedEvent>> known;
  private final ObjectNode visit = TypedEvents.empty();

  /**
   * A form.
   *
   * @param known what is known of an assembly
   */
  VisitForm(BufferedReader in, PrintWriter out, Function<String, List<LoggedEvent>> known) {
    this.in = in;
    this.out = out;
    this.known = known;
  }

  /** The visit as it was typed. */
  ObjectNode filledIn() {
    out.println("Enter: not recorded. ?: what may stand there.");
    String id = "";
    while (id.isEmpty()) {
      id = ask("", "assembly_id", "");
    }
    AssemblyType type = typeOf(id);
    ask("", "date", LocalDate.now().toString());
    for (String column :
        List.of(
            "time",
            "time_zone",
            "report_number",
            "tester_id",
            "certificate_number",
            "gauge_id",
            "gauge_calibrated_on",
            "method",
            "line_pressure_psi",
            "serial_seen")) {
      ask("", column, "");
    }
    out.println("Test as found, before any repair or flushing:");
    ask("found_", "purpose", "routine");
    round("found_", type);
    out.println("Repairs (Enter at an action: none):");
    if (repairs(type)) {
      out.println("Test as left:");
      round("left_", type);
    }
    ask("", "remarks", "");
    return visit;
  }

  private AssemblyType typeOf(String id) {
    AssemblyType type = null;
    for (LoggedEvent event : known.apply(id)) {
      if (event.event() instanceof AssemblyInstalled installed && installed.type() != null) {
        type = installed.type();
        out.println(
            "Known: "
                + installed.type()
                + words(" size ", installed.sizeInch())
                + words(", ", installed.maker())
                + words(" ", installed.model())
                + words(", serial ", installed.serial()));
      }
    }
    while (type == null) {
      out.println("Nothing is known of it yet.");
      type = typed(ask("", "type", ""));
      ask("", "size", "");
      ask("", "site_id", "");
      ask("", "install_date", "");
    }
    return type;
  }

  private AssemblyType typed(String text) {
    try {
      return AssemblyType.valueOf(text.strip().toUpperCase(Locale.ROOT).replace(' ', '_'));
    } catch (IllegalArgumentException e) {
      out.println("Types: " + List.of(AssemblyType.values()));
      visit.remove("type");
      return null;
    }
  }

  private static String words(String before, String value) {
    return value == null ? "" : before + value;
  }

  private void round(String phase, AssemblyType type) {
    for (ComponentAt part : AssemblyParts.tested(type, 1)) {
      for (String column : readings(part.component(), type)) {
        ask(line(part) + phase, column, "");
      }
    }
    ask(phase, "downstream_shutoff", "");
    ask(phase, "verdict", "");
  }

  /** The readings that a type's test commonly takes of a part (common practice, no source). */
  private static List<String> readings(Component part, AssemblyType type) {
    boolean reducedPressure =
        AssemblyParts.tested(type, 1).contains(ComponentAt.main(Component.RELIEF_VALVE));
    return switch (part) {
      case CHECK1 -> List.of("check1_psid");
      case CHECK2 -> List.of(reducedPressure ? "check2_backpressure" : "check2_psid");
      case RELIEF_VALVE -> List.of("relief_psid");
      case AIR_INLET -> List.of("air_inlet_psid");
      default -> List.of();
    };
  }

  private boolean repairs(AssemblyType type) {
    boolean any = false;
    Map<Component, String> names = Columns.partNames();
    for (ComponentAt part : AssemblyParts.tested(type, 1)) {
      String prefix = line(part) + "repair_";
      String name = names.get(part.component());
      if (!ask(prefix, name + "_action", "").isEmpty()) {
        any = true;
        for (String attribute : REPAIR.subList(1, REPAIR.size())) {
          ask(prefix, name + "_" + attribute, "");
        }
      }
    }
    if (any) {
      ask("repair_", "work_minutes", "");
    }
    return any;
  }

  private static String line(ComponentAt part) {
    return part.line() == Line.BYPASS ? "bypass_" : "";
  }

  /** Asks for one field and notes what was typed; gives it back, empty for nothing. */
  private String ask(String prefix, String column, String usual) {
    while (true) {
      out.print(prefix + column + (usual.isEmpty() ? "" : " [" + usual + "]") + ": ");
      out.flush();
      String line = line();
      if (line.equals("?")) {
        var documented = Columns.named(column);
        out.println("  " + documented.meaning() + " (" + documented.domain() + ")");
        continue;
      }
      String value = line.isEmpty() ? usual : line;
      if (!value.isEmpty()) {
        visit.put(prefix + column, value);
      }
      return value;
    }
  }

  private String line() {
    try {
      String line = in.readLine();
      if (line == null) {
        throw new Problem("The input ended before the visit was complete. Nothing was appended.");
      }
      return line.strip();
    } catch (IOException e) {
      throw new Problem("The terminal cannot be read (" + e.getMessage() + ").", e);
    }
  }
}
