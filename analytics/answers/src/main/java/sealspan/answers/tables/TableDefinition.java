package sealspan.answers.tables;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.avro.Schema;
import sealspan.avro.TableCodec;

/**
 * A table: its name, its columns, and the record class of its rows.
 *
 * @param name name in snake case: that of the record without its ending, {@code TestRow} to {@code
 *     test}
 * @param rowClass the record class
 * @param columns its columns, in the order of the record
 */
public record TableDefinition(String name, Class<? extends Record> rowClass, List<Column> columns) {
  /** The column that names the bundle a row came with; first in every table. */
  public static final String BUNDLE_KEY = "bundle_key";

  /** The table of a row record. */
  static TableDefinition of(Class<? extends Record> rowClass) {
    Schema schema = TableCodec.schemaOf(rowClass);
    RecordComponent[] components = rowClass.getRecordComponents();
    List<Column> columns = new ArrayList<>();
    for (int i = 0; i < components.length; i++) {
      columns.add(Column.of(components[i], schema.getFields().get(i)));
    }
    String base = rowClass.getSimpleName().replaceAll("(Row|Entry)$", "");
    return new TableDefinition(Column.snakeCase(base), rowClass, List.copyOf(columns));
  }

  /** The statements that make the table and say what its columns mean. */
  List<String> createStatements() {
    List<String> statements = new ArrayList<>();
    statements.add(
        columns.stream()
            .map(Column::definition)
            .collect(
                Collectors.joining(
                    ", ",
                    "create table \"" + name + "\" (" + BUNDLE_KEY + " VARCHAR NOT NULL, ",
                    ")")));
    for (Column column : columns) {
      if (column.meaning() != null) {
        statements.add(
            "comment on column \"%s\".\"%s\" is '%s'"
                .formatted(name, column.name(), column.meaning().replace("'", "''")));
      }
    }
    return statements;
  }
}
