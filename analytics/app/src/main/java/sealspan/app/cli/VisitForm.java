package sealspan.app.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.LinkedHashMap;
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
import sealspan.ingest.validate.CodeList;
import sealspan.ingest.validate.Codes;
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
    List<ComponentAt> parts = partsOf(id);
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
    round("found_", parts);
    out.println("Repairs (Enter at an action: none):");
    if (repairs(parts)) {
      out.println("Test as left:");
      round("left_", parts);
    }
    ask("", "remarks", "");
    return visit;
  }

  /** The parts that are tested and repaired; asks for what is not known of the assembly. */
  private List<ComponentAt> partsOf(String id) {
    AssemblyType type = null;
    Integer mainlines = null;
    for (LoggedEvent event : known.apply(id)) {
      if (event.event() instanceof AssemblyInstalled installed && installed.type() != null) {
        type = installed.type();
        mainlines = installed.mainlineCount();
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
      if (type != null && hasBypass(type)) {
        mainlines = count(ask("", "mainline_count", "1"));
      }
    }
    return AssemblyParts.tested(type, mainlines == null ? 1 : mainlines);
  }

  private static boolean hasBypass(AssemblyType type) {
    return AssemblyParts.has(type, 1, ComponentAt.bypass(Component.CHECK1));
  }

  /** A number of mainlines; one where the text is none, which the check of the visit then names. */
  private static int count(String text) {
    return text.matches("[1-9]") ? Integer.parseInt(text) : 1;
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

  private void round(String phase, List<ComponentAt> parts) {
    for (ComponentAt part : parts) {
      for (String column : readings(part, parts)) {
        ask(line(part) + phase, column, "");
      }
    }
    ask(phase, "downstream_shutoff", "");
    ask(phase, "verdict", "");
  }

  /** The readings that a test commonly takes of a part (common practice, no source). */
  private static List<String> readings(ComponentAt part, List<ComponentAt> parts) {
    boolean reducedPressure =
        parts.contains(new ComponentAt(part.line(), part.lineNumber(), Component.RELIEF_VALVE));
    return switch (part.component()) {
      case CHECK1 -> List.of(reducedPressure ? "check1_static_psid" : "check1_psid");
      case CHECK2 -> List.of(reducedPressure ? "check2_backpressure" : "check2_psid");
      case RELIEF_VALVE -> List.of("relief_psid");
      case AIR_INLET -> List.of("air_inlet_psid");
      default -> List.of();
    };
  }

  private boolean repairs(List<ComponentAt> parts) {
    boolean any = false;
    Map<Component, String> names = Columns.partNames();
    for (ComponentAt part : parts) {
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

  /** What the columns of a part begin with: nothing for the first mainline. */
  private static String line(ComponentAt part) {
    if (part.line() == Line.BYPASS) {
      return "bypass_";
    }
    return part.lineNumber() > 1 ? "main" + part.lineNumber() + "_" : "";
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
        codes(documented.domain()).forEach((code, meaning) -> out.println("  " + code + meaning));
        continue;
      }
      String value = line.isEmpty() ? usual : line;
      if (!value.isEmpty()) {
        visit.put(prefix + column, value);
      }
      return value;
    }
  }

  /** The codes of the lists that a domain names, each with its meaning. */
  private static Map<String, String> codes(String domain) {
    Map<String, String> codes = new LinkedHashMap<>();
    for (CodeList<?> list : Codes.all()) {
      if (domain.matches(".*\\bcodes " + list.name() + "\\b.*")) {
        list.meanings()
            .forEach(
                (code, meaning) -> codes.put(code.name().toLowerCase(Locale.ROOT), ": " + meaning));
      }
    }
    return codes;
  }

  private String line() {
    try {
      String line = in.readLine();
      if (line == null) {
        out.println();
        out.flush();
        throw new Problem("The input ended before the visit was complete. Nothing was appended.");
      }
      return line.strip();
    } catch (IOException e) {
      throw new Problem("The terminal cannot be read (" + e.getMessage() + ").", e);
    }
  }
}
