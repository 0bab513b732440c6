package sealspan.ingest.source;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.Writer;
import java.util.Map;
import sealspan.event.LoggedEvent;

/** Writes events as JSON Lines in the documented columns, one event a line. */
public final class EventLinesWriter implements AutoCloseable {
  private final JsonGenerator json;

  /** Begins a file; closing it closes {@code out}. */
  public EventLinesWriter(Writer out) throws IOException {
    json = new JsonFactory().createGenerator(out);
    json.setRootValueSeparator(null);
  }

  /**
   * Writes an event.
   *
   * @throws IllegalArgumentException where no columns tell all of it
   */
  public void write(LoggedEvent event) throws IOException {
    Map<String, String> cells = EventFields.of(event);
    json.writeStartObject();
    for (Map.Entry<String, String> cell : cells.entrySet()) {
      json.writeStringField(cell.getKey(), cell.getValue());
    }
    json.writeEndObject();
    json.writeRaw('\n');
  }

  @Override
  public void close() throws IOException {
    json.close();
  }
}
