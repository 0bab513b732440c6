package sealspan.ingest.source;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import sealspan.ingest.validate.HeaderException;
import sealspan.ingest.validate.Origin;
import sealspan.ingest.validate.Problem;
import sealspan.ingest.validate.Problem.Fault;
import sealspan.ingest.validate.RowDraft;
import sealspan.ingest.validate.RowPlan;

/**
 * Results of water samples in the columns of the Water Quality Portal. Quality-control samples,
 * rejected results, media other than water and stations outside every zone are left out; results
 * that were not detected keep no number.
 */
final class PortalSource implements DraftSource {
  /** Fixed offsets of the time zone codes, hours west of UTC (from memory). */
  private static final Map<String, String> TIME_ZONES =
      Map.ofEntries(
          Map.entry("UTC", "Etc/UTC"),
          Map.entry("GMT", "Etc/UTC"),
          Map.entry("AST", "Etc/GMT+4"),
          Map.entry("ADT", "Etc/GMT+3"),
          Map.entry("EST", "Etc/GMT+5"),
          Map.entry("EDT", "Etc/GMT+4"),
          Map.entry("CST", "Etc/GMT+6"),
          Map.entry("CDT", "Etc/GMT+5"),
          Map.entry("MST", "Etc/GMT+7"),
          Map.entry("MDT", "Etc/GMT+6"),
          Map.entry("PST", "Etc/GMT+8"),
          Map.entry("PDT", "Etc/GMT+7"),
          Map.entry("AKST", "Etc/GMT+9"),
          Map.entry("AKDT", "Etc/GMT+8"),
          Map.entry("HST", "Etc/GMT+10"));

  private static final List<String> OURS =
      List.of(
          "event",
          "date",
          "time",
          "time_zone",
          "zone_id",
          "station_id",
          "activity_id",
          "result_id",
          "characteristic",
          "fraction",
          "value",
          "value_unit",
          "detection",
          "detection_limit",
          "detection_limit_unit",
          "analysis_method",
          "sample_status",
          "provider_id");

  private final CsvFile csv;
  private final Mapping mapping;
  private final StationZones zones;
  private final Map<PortalColumns, Integer> places = new EnumMap<>(PortalColumns.class);
  private final RowPlan plan;

  PortalSource(CsvFile csv, Mapping mapping, StationZones zones) throws SourceException {
    this.csv = csv;
    this.mapping = mapping;
    this.zones = zones;
    for (PortalColumns column : PortalColumns.values()) {
      places.put(column, column.in(csv.header()));
    }
    try {
      this.plan = RowPlan.of(OURS, theirNames());
    } catch (HeaderException e) {
      throw new SourceException(csv.name() + ": " + e.getMessage(), e);
    }
  }

  private List<String> theirNames() {
    List<String> names = new ArrayList<>();
    names.add("event");
    for (PortalColumns column :
        new PortalColumns[] {
          PortalColumns.DAY,
          PortalColumns.TIME,
          PortalColumns.ZONE_OF_TIME,
          PortalColumns.ZONE,
          PortalColumns.STATION,
          PortalColumns.ACTIVITY,
          PortalColumns.RESULT,
          PortalColumns.CHARACTERISTIC,
          PortalColumns.FRACTION,
          PortalColumns.VALUE,
          PortalColumns.UNIT,
          PortalColumns.CONDITION,
          PortalColumns.LIMIT,
          PortalColumns.LIMIT_UNIT,
          PortalColumns.METHOD,
          PortalColumns.STATUS,
          PortalColumns.PROVIDER
        }) {
      int place = places.get(column);
      names.add(place < 0 ? column.profileName() : csv.header().get(place));
    }
    return names;
  }

  @Override
  public Item next() throws IOException {
    CsvRows.Row row = csv.next();
    if (row == null) {
      return null;
    }
    Origin origin = new Origin(csv.name(), row.line(), row.text());
    if (row.problem() != null) {
      return new Item.Broken(origin, row.problem());
    }
    String[] cells = row.cells();
    String reason = leftOutBecause(cells);
    if (reason != null) {
      return new Item.LeftOut(origin, reason);
    }
    String zone = zone(cells);
    if (zone.isEmpty()) {
      return zones.zoneOfStation().isEmpty()
          ? new Item.Broken(origin, noZone())
          : new Item.LeftOut(origin, "station in no water zone");
    }
    PortalResult result =
        PortalResult.of(
            cell(cells, PortalColumns.VALUE),
            cell(cells, PortalColumns.CONDITION),
            cell(cells, PortalColumns.LIMIT));
    return result == null
        ? new Item.LeftOut(origin, "neither a value nor a detection condition")
        : new Item.Draft(draft(origin, cells, zone, result));
  }

  private RowDraft draft(Origin origin, String[] cells, String zone, PortalResult result) {
    String limitUnit = cell(cells, PortalColumns.LIMIT_UNIT);
    String unit = cell(cells, PortalColumns.UNIT);
    String[] ours = {
      "sample",
      cell(cells, PortalColumns.DAY),
      cell(cells, PortalColumns.TIME),
      timeZone(cells),
      zone,
      cell(cells, PortalColumns.STATION),
      cell(cells, PortalColumns.ACTIVITY),
      cell(cells, PortalColumns.RESULT),
      cell(cells, PortalColumns.CHARACTERISTIC),
      cell(cells, PortalColumns.FRACTION),
      result.value(),
      unit,
      result.detection(),
      result.limit(),
      result.limitFromValue() && limitUnit.isEmpty() ? unit : limitUnit,
      cell(cells, PortalColumns.METHOD),
      cell(cells, PortalColumns.STATUS),
      cell(cells, PortalColumns.PROVIDER)
    };
    return new RowDraft(origin, plan, ours, mapping.notation());
  }

  private String leftOutBecause(String[] cells) {
    String type = cell(cells, PortalColumns.TYPE).toLowerCase(Locale.ROOT);
    if (type.startsWith("quality control")) {
      return "quality-control sample";
    }
    if (cell(cells, PortalColumns.STATUS).equalsIgnoreCase("rejected")) {
      return "rejected by its provider";
    }
    String medium = cell(cells, PortalColumns.MEDIUM);
    return medium.isEmpty() || medium.equalsIgnoreCase("water") ? null : "medium is not water";
  }

  private String zone(String[] cells) {
    String own = cell(cells, PortalColumns.ZONE);
    if (!own.isEmpty()) {
      return own;
    }
    String ofStation = zones.zoneOfStation().get(cell(cells, PortalColumns.STATION));
    return ofStation != null ? ofStation : mapping.constants().getOrDefault("zone_id", "");
  }

  private Problem noZone() {
    return new Problem(
        places.get(PortalColumns.STATION) < 0
            ? PortalColumns.STATION.profileName()
            : csv.header().get(places.get(PortalColumns.STATION)),
        Fault.NO_ZONE,
        "Nothing says in which water zone this station lies.",
        "Give a table of stations and zones, a column zone_id, or zone_id as a constant of the"
            + " mapping.");
  }

  private String timeZone(String[] cells) {
    String code = cell(cells, PortalColumns.ZONE_OF_TIME).toUpperCase(Locale.ROOT);
    boolean timed = !cell(cells, PortalColumns.TIME).isEmpty();
    return timed ? TIME_ZONES.getOrDefault(code, "") : "";
  }

  private String cell(String[] cells, PortalColumns column) {
    int place = places.get(column);
    return place < 0 ? "" : cells[place].trim();
  }

  @Override
  public String name() {
    return csv.name();
  }

  @Override
  public List<String> notes() {
    List<String> notes = new ArrayList<>(csv.notes());
    notes.add("water sample results");
    return notes;
  }

  @Override
  public long emptyLines() {
    return csv.emptyLines();
  }

  @Override
  public long readBytes() {
    return csv.file().readBytes();
  }

  @Override
  public long totalBytes() {
    return csv.file().totalBytes();
  }

  @Override
  public void close() throws IOException {
    csv.file().close();
  }
}
