package sealspan.ingest.source;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sealspan.ingest.validate.Columns;
import sealspan.ingest.validate.HeaderException;
import sealspan.ingest.validate.Origin;
import sealspan.ingest.validate.Problem;
import sealspan.ingest.validate.Problem.Fault;
import sealspan.ingest.validate.RowDraft;

/** Drafts from JSON objects whose members are our columns, or mapped to them. */
final class JsonDrafts {
  private static final int MOST_HEADERS = 1000;

  private final Mapping mapping;
  private final Map<List<String>, MappedHeader> headers = new LinkedHashMap<>();

  JsonDrafts(Mapping mapping) {
    this.mapping = mapping;
  }

  /** The draft of an object, or why it is none. */
  Item of(Origin origin, String text) throws IOException {
    try {
      JsonRow row = JsonRow.of(text);
      MappedHeader header = header(row.names());
      for (String name : header.plan().unused()) {
        if (mapping.ourName(name) != null) {
          return new Item.Broken(origin, unknown(name));
        }
      }
      return new Item.Draft(
          new RowDraft(origin, header.plan(), header.cells(row.cells()), mapping.notation()));
    } catch (JsonProcessingException e) {
      long column = e.getLocation() == null ? 0 : e.getLocation().getColumnNr();
      return new Item.Broken(
          origin,
          new Problem(
              null,
              Fault.NOT_JSON,
              "This is not a JSON object: "
                  + e.getOriginalMessage()
                  + " (at character "
                  + column
                  + ").",
              "Write one object, from { to }."));
    } catch (HeaderException e) {
      return new Item.Broken(origin, new Problem(null, Fault.MISSING, e.getMessage(), ""));
    }
  }

  private MappedHeader header(List<String> names) throws HeaderException {
    MappedHeader known = headers.get(names);
    if (known == null) {
      known = MappedHeader.of(names, mapping);
      if (headers.size() < MOST_HEADERS) {
        headers.put(List.copyOf(names), known);
      }
    }
    return known;
  }

  private static Problem unknown(String name) {
    String near = Columns.nearest(name);
    return new Problem(
        name,
        Fault.UNKNOWN_FIELD,
        "There is no field '" + name + "'.",
        near == null ? "See the list of columns." : "Did you mean " + near + "?");
  }
}
