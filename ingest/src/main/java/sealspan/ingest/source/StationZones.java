package sealspan.ingest.source;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The water zone of each sampling station, from a CSV table with the columns {@code station_id} and
 * {@code zone_id}. A station that the table does not list lies in no zone of ours.
 *
 * @param zoneOfStation zone by station
 */
public record StationZones(Map<String, String> zoneOfStation) {
  /** No station is known. */
  public static final StationZones NONE = new StationZones(Map.of());

  public StationZones {
    zoneOfStation = Map.copyOf(zoneOfStation);
  }

  /**
   * Reads the table.
   *
   * @throws SourceException where a column is missing, a row cannot be read, or a station is listed
   *     with two zones
   */
  public static StationZones read(Path path) throws SourceException {
    Map<String, String> zones = new HashMap<>();
    try (TextFile file = TextFile.open(path, null)) {
      CsvFile csv = CsvFile.open(file, path.getFileName().toString(), Mapping.NONE);
      int station = column(csv, "station_id");
      int zone = column(csv, "zone_id");
      for (CsvRows.Row row = csv.next(); row != null; row = csv.next()) {
        if (row.problem() != null) {
          throw new SourceException(
              csv.name() + ", line " + row.line() + ": " + row.problem().text());
        }
        String id = row.cells()[station].trim();
        String in = row.cells()[zone].trim();
        if (id.isEmpty() || in.isEmpty()) {
          throw new SourceException(
              csv.name() + ", line " + row.line() + ": station or zone is empty. Fill in both.");
        }
        String other = zones.put(id, in);
        if (other != null && !other.equals(in)) {
          throw new SourceException(
              csv.name()
                  + ", line "
                  + row.line()
                  + ": station "
                  + id
                  + " is listed in zone "
                  + other
                  + " and in zone "
                  + in
                  + ". Keep one.");
        }
      }
    } catch (IOException e) {
      throw new SourceException(path + " cannot be read: " + e.getMessage() + ".", e);
    }
    return new StationZones(zones);
  }

  private static int column(CsvFile csv, String name) throws SourceException {
    List<String> header = csv.header().stream().map(Mapping::key).toList();
    int column = header.indexOf(name);
    if (column < 0) {
      throw new SourceException(
          csv.name() + " has no column '" + name + "'. It needs station_id and zone_id.");
    }
    return column;
  }
}
