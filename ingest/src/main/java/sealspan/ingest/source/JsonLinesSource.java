package sealspan.ingest.source;

import java.io.IOException;
import java.util.List;
import sealspan.ingest.validate.Origin;
import sealspan.ingest.validate.Problem;

/** JSON Lines: one object per line, whose members are named as our columns. */
final class JsonLinesSource implements DraftSource {
  private final TextFile file;
  private final String name;
  private final Lines lines;
  private final JsonDrafts drafts;
  private long emptyLines;

  JsonLinesSource(TextFile file, String name, Mapping mapping) {
    this.file = file;
    this.name = name;
    this.lines = new Lines(file.bytes(), file.charset());
    this.drafts = new JsonDrafts(mapping);
  }

  @Override
  public Item next() throws IOException {
    Lines.Line line = lines.next();
    while (line != null && line.text().isBlank()) {
      emptyLines++;
      line = lines.next();
    }
    if (line == null) {
      return null;
    }
    Origin origin = new Origin(name, line.number(), line.text());
    Problem problem = CsvRows.problem(line);
    return problem != null ? new Item.Broken(origin, problem) : drafts.of(origin, line.text());
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public List<String> notes() {
    return List.of("JSON Lines", "encoding " + file.charset().name());
  }

  @Override
  public long emptyLines() {
    return emptyLines;
  }

  @Override
  public long readBytes() {
    return file.readBytes();
  }

  @Override
  public long totalBytes() {
    return file.totalBytes();
  }

  @Override
  public void close() throws IOException {
    file.close();
  }
}
