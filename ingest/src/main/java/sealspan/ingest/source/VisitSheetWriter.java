package sealspan.ingest.source;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import sealspan.event.AssemblyEvent;
import sealspan.event.JobCosted;
import sealspan.event.LoggedEvent;
import sealspan.event.RepairPerformed;
import sealspan.event.TestPerformed;
import sealspan.event.VisitAttempted;

/**
 * Writes tests, repairs, attempts and jobs as a table with one row per visit: as found, repair and
 * as left side by side. Events of one visit that follow one another share a row as far as they fit;
 * what comes after goes on in a further row of the same visit. Whatever the table has no columns
 * for is declined, and belongs in rows of one event each ({@link EventFields}).
 */
public final class VisitSheetWriter implements AutoCloseable {
  private static final Set<String> SHARED =
      Set.of(
          "assembly_id",
          "date",
          "time_zone",
          "visit_id",
          "visit_start",
          "report_number",
          "reported_on",
          "tester_id",
          "certificate_number",
          "certificate_valid_until",
          "gauge_id",
          "gauge_calibrated_on",
          "gauge_resolution_psid",
          "line_pressure_psi",
          "serial_seen",
          "signed",
          "currency",
          "attempt_reason",
          "contract_id",
          "covered",
          "labour",
          "travel",
          "parts_cost",
          "invoiced");

  /** With a prefix, these would tell of a test. */
  private static final List<String> OF_ATTEMPT = List.of("time", "remarks");

  private static final List<String> ROUND =
      List.of(
          "time",
          "visit_sequence",
          "purpose",
          "conduct",
          "end_time",
          "flow_state",
          "downstream_shutoff",
          "compensating_step",
          "bypass_meter_reading",
          "flushed_to_pass",
          "verdict",
          "remarks");
  private static final List<String> READINGS =
      List.of(
          "check1_static_psid",
          "check1_flow_psid",
          "check2_psid",
          "check2_backpressure",
          "relief_psid",
          "air_inlet_psid");
  private static final List<String> REPAIR =
      List.of("time", "visit_sequence", "crew_ids", "work_minutes", "warranty", "remarks");
  private static final List<String> ITEM =
      List.of(
          "action",
          "mode",
          "mechanism",
          "cause",
          "reason",
          "fitted",
          "kit",
          "kit_maker",
          "material",
          "quantity",
          "unit_price");
  private static final List<String> PARTS = List.of("check1", "check2", "relief", "air_inlet");

  private final CsvWriter csv;
  private final List<String> header = header();
  private final Map<String, Integer> places = new HashMap<>();
  private final Map<Slot, Map<String, String>> row = new LinkedHashMap<>();

  /** The parts of a row, in the order in which they are read back. */
  private enum Slot {
    FOUND,
    REPAIR,
    LEFT,
    ATTEMPT,
    JOB
  }

  /** Begins a table with its header; closing it closes {@code out}. */
  public VisitSheetWriter(Writer out) {
    csv = CsvWriter.builder().build(out);
    for (String name : header) {
      places.put(name, places.size());
    }
    csv.writeRecord(header);
  }

  private static List<String> header() {
    List<String> names = new ArrayList<>(SHARED);
    names.sort(VisitSheetWriter::idFirst);
    names.addAll(OF_ATTEMPT);
    for (String line : List.of("", "bypass_")) {
      for (String block : List.of("found_", "repair_", "left_")) {
        boolean repair = block.equals("repair_");
        if (line.isEmpty()) {
          (repair ? REPAIR : ROUND).forEach(name -> names.add(block + name));
        }
        if (repair) {
          PARTS.forEach(part -> ITEM.forEach(item -> names.add(line + block + part + "_" + item)));
        } else {
          READINGS.forEach(name -> names.add(line + block + name));
        }
      }
    }
    return names;
  }

  private static int idFirst(String a, String b) {
    boolean first = a.equals("assembly_id");
    return first || b.equals("assembly_id") ? (first ? -1 : 1) : a.compareTo(b);
  }

  /**
   * Writes an event, or declines it.
   *
   * @return false where the event has no place in the table; nothing is written of it then
   */
  public boolean write(LoggedEvent logged) {
    Slot slot = slot(logged.event());
    Map<String, String> cells = slot == null ? null : cells(logged, slot);
    if (cells == null) {
      return false;
    }
    if (!fits(slot, cells)) {
      endRow();
    }
    row.put(slot, cells);
    return true;
  }

  private static Slot slot(AssemblyEvent event) {
    if (event instanceof TestPerformed test) {
      return test.phase() == null
          ? null
          : test.phase() == TestPerformed.Phase.AS_LEFT ? Slot.LEFT : Slot.FOUND;
    }
    return event instanceof RepairPerformed
        ? Slot.REPAIR
        : event instanceof VisitAttempted
            ? Slot.ATTEMPT
            : event instanceof JobCosted ? Slot.JOB : null;
  }

  /** The cells under the names of the table; null where it lacks a column for one. */
  private Map<String, String> cells(LoggedEvent logged, Slot slot) {
    Map<String, String> plain;
    try {
      plain = EventFields.of(logged);
    } catch (IllegalArgumentException e) {
      return null;
    }
    Map<String, String> cells = new LinkedHashMap<>();
    for (Map.Entry<String, String> cell : plain.entrySet()) {
      String name = cell.getKey();
      if (name.equals("event") || name.equals("phase")) {
        continue;
      }
      String column = SHARED.contains(name) ? name : named(slot, name);
      if (!places.containsKey(column)) {
        return null;
      }
      cells.put(column, cell.getValue());
    }
    return cells;
  }

  private static String named(Slot slot, String name) {
    String block =
        switch (slot) {
          case FOUND -> "found_";
          case REPAIR -> "repair_";
          case LEFT -> "left_";
          case ATTEMPT, JOB -> "";
        };
    boolean bypass = name.startsWith("bypass_") && !name.equals("bypass_meter_reading");
    return bypass ? "bypass_" + block + name.substring(7) : block + name;
  }

  /** A row holds later parts of the same visit whose shared cells are the same. */
  private boolean fits(Slot slot, Map<String, String> cells) {
    for (Map.Entry<Slot, Map<String, String>> told : row.entrySet()) {
      boolean apart =
          told.getKey().compareTo(slot) >= 0
              || told.getKey() == Slot.ATTEMPT
              || slot == Slot.ATTEMPT;
      if (apart || !agree(told.getKey(), told.getValue(), slot, cells)) {
        return false;
      }
    }
    return true;
  }

  private static boolean agree(
      Slot one, Map<String, String> cells, Slot other, Map<String, String> others) {
    for (String name : SHARED) {
      boolean matters = concerns(one, name) && concerns(other, name);
      if (matters && !Objects.equals(cells.get(name), others.get(name))) {
        return false;
      }
    }
    return true;
  }

  /** Whether a shared cell tells something of a part of the row. */
  private static boolean concerns(Slot slot, String name) {
    return switch (name) {
      case "assembly_id", "date", "time_zone", "visit_id", "reported_on" -> true;
      case "visit_start", "report_number" -> slot != Slot.JOB;
      case "currency" -> false;
      case "attempt_reason",
          "contract_id",
          "covered",
          "labour",
          "travel",
          "parts_cost",
          "invoiced" ->
          slot == Slot.JOB;
      default -> slot == Slot.FOUND || slot == Slot.LEFT;
    };
  }

  private void endRow() {
    if (row.isEmpty()) {
      return;
    }
    String[] cells = new String[header.size()];
    Arrays.fill(cells, "");
    for (Map<String, String> part : row.values()) {
      part.forEach((name, value) -> cells[places.get(name)] = value);
    }
    csv.writeRecord(cells);
    row.clear();
  }

  @Override
  public void close() throws IOException {
    endRow();
    csv.close();
  }
}
