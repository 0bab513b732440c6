package sealspan.ingest.source;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import sealspan.ingest.validate.HeaderException;
import sealspan.ingest.validate.Origin;
import sealspan.ingest.validate.RowDraft;

/** A CSV table with one row per event or one row per visit, in our columns or mapped to them. */
final class TableSource implements DraftSource {
  private final CsvFile csv;
  private final Mapping mapping;
  private final MappedHeader header;

  private TableSource(CsvFile csv, Mapping mapping, MappedHeader header) {
    this.csv = csv;
    this.mapping = mapping;
    this.header = header;
  }

  static TableSource of(CsvFile csv, Mapping mapping) throws SourceException {
    try {
      return new TableSource(csv, mapping, MappedHeader.of(csv.header(), mapping));
    } catch (HeaderException e) {
      throw new SourceException(
          csv.name() + ", line " + csv.headerLine() + ": " + e.getMessage(), e);
    }
  }

  @Override
  public Item next() throws IOException {
    CsvRows.Row row = csv.next();
    if (row == null) {
      return null;
    }
    Origin origin = new Origin(csv.name(), row.line(), row.text());
    return row.problem() != null
        ? new Item.Broken(origin, row.problem())
        : new Item.Draft(
            new RowDraft(origin, header.plan(), header.cells(row.cells()), mapping.notation()));
  }

  @Override
  public String name() {
    return csv.name();
  }

  @Override
  public List<String> notes() {
    List<String> notes = new ArrayList<>(csv.notes());
    notes.add("one row per " + header.plan().form().name().toLowerCase(java.util.Locale.ROOT));
    List<String> unused = header.plan().unused().stream().filter(name -> !name.isBlank()).toList();
    if (!unused.isEmpty()) {
      notes.add("columns not used: " + String.join(", ", unused));
    }
    List<String> absent = mapping.absent(csv.header());
    if (!absent.isEmpty()) {
      notes.add("columns of the mapping that the file does not have: " + String.join(", ", absent));
    }
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
