package sealspan.ingest.source;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Opens files as streams of drafts, by what they hold. */
public final class Sources {
  /** Rows that a proposal of a mapping looks at. */
  private static final int LOOKED_AT = 200;

  private Sources() {}

  /**
   * Opens a file: JSON Lines where its name ends in .jsonl or .ndjson or its text begins with a
   * brace, water samples where its header has the columns of the Water Quality Portal, else a table
   * of events or visits.
   *
   * @param mapping how its columns and cells are to be read; {@link Mapping#NONE} for our own
   * @param zones water zones of sampling stations; {@link StationZones#NONE} where none are known
   * @throws SourceException where it cannot be read at all
   */
  public static DraftSource open(Path path, Mapping mapping, StationZones zones)
      throws SourceException {
    TextFile file = TextFile.open(path, mapping.encoding());
    try {
      return open(path, file, mapping, zones);
    } catch (SourceException | IOException e) {
      try {
        file.close();
      } catch (IOException close) {
        e.addSuppressed(close);
      }
      if (e instanceof SourceException known) {
        throw known;
      }
      throw new SourceException(path + " cannot be read: " + e.getMessage() + ".", e);
    }
  }

  private static DraftSource open(Path path, TextFile file, Mapping mapping, StationZones zones)
      throws SourceException, IOException {
    String name = path.getFileName().toString();
    String lower = name.toLowerCase(Locale.ROOT);
    if (lower.endsWith(".jsonl") || lower.endsWith(".ndjson") || file.beginsWith('{')) {
      return new JsonLinesSource(file, name, mapping);
    }
    CsvFile csv = CsvFile.open(file, name, mapping);
    return PortalColumns.areIn(csv.header())
        ? new PortalSource(csv, mapping, zones)
        : TableSource.of(csv, mapping);
  }

  /**
   * Proposes a mapping for a table from its header and its first rows.
   *
   * @param mapping separator, encoding and lines to skip, where they are known
   * @throws SourceException where the table cannot be read
   */
  public static MappingProposal propose(Path path, Mapping mapping) throws SourceException {
    try (TextFile file = TextFile.open(path, mapping.encoding())) {
      CsvFile csv = CsvFile.open(file, path.getFileName().toString(), mapping);
      List<String[]> rows = new ArrayList<>();
      for (int i = 0; i < LOOKED_AT; i++) {
        CsvRows.Row row = csv.next();
        if (row == null) {
          break;
        }
        if (row.cells() != null) {
          rows.add(row.cells());
        }
      }
      return MappingProposal.of(csv.header(), rows);
    } catch (IOException e) {
      throw new SourceException(path + " cannot be read: " + e.getMessage() + ".", e);
    }
  }
}
