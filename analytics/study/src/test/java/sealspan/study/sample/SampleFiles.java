package sealspan.study.sample;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sealspan.event.Action;
import sealspan.event.AssemblyEvent;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyRemoved;
import sealspan.event.AssemblyType;
import sealspan.event.Cause;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.EventCorrected;
import sealspan.event.EventVoided;
import sealspan.event.FailureMode;
import sealspan.event.GaugeCalibrated;
import sealspan.event.LoggedEvent;
import sealspan.event.Measure;
import sealspan.event.Mechanism;
import sealspan.event.Moment;
import sealspan.event.NaturalKey;
import sealspan.event.Observation;
import sealspan.event.Quantity;
import sealspan.event.Reading;
import sealspan.event.RepairItem;
import sealspan.event.RepairPerformed;
import sealspan.event.ReplacementReason;
import sealspan.event.SiteDescribed;
import sealspan.event.Subject;
import sealspan.event.TestPerformed;
import sealspan.event.Unit;
import sealspan.event.Visit;

/**
 * Reads the sample files plainly: what the golden answers need, without the import. So the answers
 * are held to the files by a second reading, and the import can be held to it too.
 */
final class SampleFiles {
  static final Path FOLDER = Path.of("..", "..", "sample-events");

  private static final Pattern FIELD = Pattern.compile("\"(\\w+)\": (?:\"([^\"]*)\"|([-0-9.]+))");
  private static final Map<String, Component> PARTS =
      Map.of(
          "check1", Component.CHECK1,
          "check2", Component.CHECK2,
          "relief", Component.RELIEF_VALVE,
          "air_inlet", Component.AIR_INLET,
          "whole", Component.WHOLE);

  private final Map<String, AssemblyType> types = new LinkedHashMap<>();
  private final List<LoggedEvent> events = new ArrayList<>();

  /** Every event of assemblies, sites and gauges in the files. */
  static List<LoggedEvent> events() {
    SampleFiles files = new SampleFiles();
    List<Map<String, String>> lines = files.lines("events.jsonl");
    lines.stream()
        .filter(l -> l.get("event").equals("assembly"))
        .forEach(l -> files.types.put(l.get("assembly_id"), one(AssemblyType.class, l, "type")));
    table("visits.csv").forEach(files::visit);
    lines.forEach(files::event);
    return files.events;
  }

  /** The rows of a plain table, by name of column; empty cells are left out. */
  static List<Map<String, String>> table(String name) {
    List<String> lines = read(name);
    String[] header = lines.get(0).split(",", -1);
    List<Map<String, String>> rows = new ArrayList<>();
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",", -1);
      Map<String, String> row = new LinkedHashMap<>();
      for (int i = 0; i < header.length; i++) {
        if (!cells[i].isEmpty()) {
          row.put(header[i], cells[i]);
        }
      }
      rows.add(row);
    }
    return rows;
  }

  private List<Map<String, String>> lines(String name) {
    List<Map<String, String>> rows = new ArrayList<>();
    for (String line : read(name)) {
      Map<String, String> row = new LinkedHashMap<>();
      Matcher matcher = FIELD.matcher(line);
      while (matcher.find()) {
        row.put(matcher.group(1), matcher.group(2) == null ? matcher.group(3) : matcher.group(2));
      }
      rows.add(row);
    }
    return rows;
  }

  private static List<String> read(String name) {
    try {
      return Files.readAllLines(FOLDER.resolve(name));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void visit(Map<String, String> row) {
    if (row.containsKey("found_verdict")) {
      add("visits.csv", row.get("found_event_id"), test(row, "found_", 1));
    }
    if (row.containsKey("repair_work_minutes")) {
      add("visits.csv", null, repair(row, "repair_", 2));
    }
    if (row.containsKey("left_verdict")) {
      add("visits.csv", null, test(row, "left_", 3));
    }
  }

  private void event(Map<String, String> row) {
    AssemblyEvent event =
        switch (row.get("event")) {
          case "site" -> site(row);
          case "assembly" -> assembly(row);
          case "calibration" ->
              new GaugeCalibrated(
                  row.get("gauge_id"),
                  day(row, "date"),
                  LocalDate.parse(row.get("valid_until")),
                  null,
                  null,
                  null,
                  null);
          case "removal" ->
              new AssemblyRemoved(
                  row.get("assembly_id"),
                  day(row, "date"),
                  one(AssemblyRemoved.Reason.class, row, "removal_reason"),
                  null);
          case "repair" -> repair(row, "", Integer.parseInt(row.get("visit_sequence")));
          case "test" -> testOrCorrection(row);
          case "void" ->
              new EventVoided(
                  row.get("corrects_event_id"),
                  Subject.assembly(row.get("assembly_id")),
                  day(row, "corrected_on"),
                  row.get("corrected_by"),
                  row.get("corrected_why"));
          default -> null;
        };
    if (event != null) {
      add("events.jsonl", null, event);
    }
  }

  private void add(String source, String id, AssemblyEvent event) {
    events.add(
        new LoggedEvent(
            id == null ? NaturalKey.idOf(source, event) : id,
            source,
            event,
            null,
            LoggedEvent.ReportedOrigin.NOT_RECORDED,
            Instant.ofEpochSecond(1_750_000_000L + events.size()),
            LoggedEvent.Arrival.IMPORTED));
  }

  private AssemblyEvent testOrCorrection(Map<String, String> row) {
    String sequence = row.getOrDefault("visit_sequence", "1");
    TestPerformed test = test(row, "", Integer.parseInt(sequence));
    return row.containsKey("corrects_event_id")
        ? new EventCorrected(
            row.get("corrects_event_id"),
            day(row, "corrected_on"),
            row.get("corrected_by"),
            row.get("corrected_why"),
            test)
        : test;
  }

  private TestPerformed test(Map<String, String> row, String block, int sequence) {
    boolean left = block.equals("left_") || "as_left".equals(row.get("phase"));
    String purpose = left ? block + "purpose" : "purpose";
    String gauge = row.get("gauge_calibrated_on");
    return new TestPerformed(
        row.get("assembly_id"),
        day(row, "date"),
        null,
        visit(row, sequence),
        row.get("report_number"),
        left ? TestPerformed.Phase.AS_LEFT : TestPerformed.Phase.AS_FOUND,
        one(TestPerformed.Purpose.class, row, purpose),
        one(TestPerformed.Conduct.class, row, block + "conduct"),
        row.get("tester_id"),
        row.get("certificate_number"),
        LocalDate.parse(row.get("certificate_valid_until")),
        row.get("gauge_id"),
        gauge == null ? null : LocalDate.parse(gauge),
        null,
        null,
        null,
        null,
        null,
        null,
        readings(row, block),
        null,
        null,
        null,
        List.of(),
        null,
        row.containsKey(block + "flushed_to_pass") ? true : null,
        null,
        null,
        one(TestPerformed.IssuedVerdict.class, row, block + "verdict"),
        null,
        List.of());
  }

  private List<Reading> readings(Map<String, String> row, String block) {
    AssemblyType type = types.get(row.get("assembly_id"));
    List<Reading> readings = new ArrayList<>();
    for (Map.Entry<String, String> cell : row.entrySet()) {
      Matcher name =
          Pattern.compile(
                  "(bypass_)?" + block + "(check1|check2|relief|air_inlet)_(flow_)?(psid|back.*)")
              .matcher(cell.getKey());
      if (name.matches()) {
        ComponentAt at = at(name.group(1), name.group(2));
        boolean single = type == AssemblyType.RPDA_II && name.group(1) != null;
        boolean reduced = type.name().startsWith("RP") && !single;
        Measure measure =
            switch (at.component()) {
              case CHECK1 -> reduced ? Measure.STATIC_DROP : Measure.DIRECTION_OF_FLOW;
              case CHECK2 -> reduced ? Measure.BACKPRESSURE_TIGHTNESS : Measure.DIRECTION_OF_FLOW;
              default -> Measure.OPENING_POINT;
            };
        String value = cell.getValue();
        readings.add(
            Character.isDigit(value.charAt(0))
                ? Reading.measured(at, measure, new Quantity(value, Unit.PSI))
                : Reading.seen(at, measure, Observation.valueOf(value.toUpperCase(Locale.ROOT))));
      }
    }
    return readings;
  }

  private static ComponentAt at(String bypass, String part) {
    return new ComponentAt(
        bypass == null ? ComponentAt.Line.MAIN : ComponentAt.Line.BYPASS, 1, PARTS.get(part));
  }

  private RepairPerformed repair(Map<String, String> row, String block, int sequence) {
    List<RepairItem> items = new ArrayList<>();
    for (String line : List.of("", "bypass_")) {
      for (String part : PARTS.keySet()) {
        String name = line + block + part;
        if (row.containsKey(name + "_action")) {
          items.add(
              new RepairItem(
                  at(line.isEmpty() ? null : line, part),
                  one(FailureMode.class, row, name + "_mode"),
                  one(Mechanism.class, row, name + "_mechanism"),
                  one(Cause.class, row, name + "_cause"),
                  one(Action.class, row, name + "_action"),
                  one(ReplacementReason.class, row, name + "_reason"),
                  List.of()));
        }
      }
    }
    return new RepairPerformed(
        row.get("assembly_id"),
        day(row, "date"),
        visit(row, sequence),
        row.get("report_number"),
        items,
        List.of(),
        null,
        null,
        null);
  }

  private static Visit visit(Map<String, String> row, int sequence) {
    return new Visit(row.get("visit_id"), null, sequence, Visit.SequenceOrigin.DERIVED);
  }

  private static SiteDescribed site(Map<String, String> row) {
    return new SiteDescribed(
        row.get("site_id"),
        day(row, "date"),
        null,
        row.get("premises"),
        null,
        null,
        null,
        Double.valueOf(row.get("latitude")),
        Double.valueOf(row.get("longitude")),
        null,
        row.get("zone_id"),
        null,
        row.get("time_zone"),
        one(SiteDescribed.HazardClass.class, row, "hazard"),
        one(SiteDescribed.Protection.class, row, "protection"),
        one(SiteDescribed.WaterUse.class, row, "use"),
        null,
        null);
  }

  private static AssemblyInstalled assembly(Map<String, String> row) {
    return new AssemblyInstalled(
        row.get("assembly_id"),
        day(row, "date"),
        row.containsKey("install_date")
            ? AssemblyInstalled.DayMeaning.INSTALLED
            : AssemblyInstalled.DayMeaning.RECORD_BEGINS,
        row.get("site_id"),
        row.get("position_id"),
        row.get("replaces_assembly_id"),
        null,
        null,
        null,
        one(AssemblyType.class, row, "type"),
        row.get("maker"),
        row.get("model"),
        row.get("serial"),
        row.get("bypass_serial"),
        row.get("size"),
        null,
        null,
        null,
        null);
  }

  private static Moment day(Map<String, String> row, String name) {
    return Moment.on(LocalDate.parse(row.get(name)));
  }

  private static <E extends Enum<E>> E one(Class<E> type, Map<String, String> row, String name) {
    String value = row.get(name);
    return value == null ? null : Enum.valueOf(type, value.toUpperCase(Locale.ROOT));
  }
}
