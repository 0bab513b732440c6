package sealspan.answers.tables;

import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import org.apache.avro.Schema;
import org.apache.avro.io.Decoder;
import org.duckdb.DuckDBAppender;
import sealspan.avro.FieldReader;

/**
 * A column of a table.
 *
 * @param name name in snake case, such as {@code assembly_id}
 * @param type what its values are
 * @param names the texts that a {@link ColumnType#NAME} may be, in order; else none
 * @param optional whether it may hold null, which means "not recorded" or as the meaning says
 * @param meaning what it holds, in words; null where the record does not say
 * @param reader reads the value from a row
 */
public record Column(
    String name,
    ColumnType type,
    List<String> names,
    boolean optional,
    String meaning,
    FieldReader reader) {

  static Column of(RecordComponent component, Schema.Field field) {
    boolean optional = field.schema().isUnion();
    Schema value = optional ? field.schema().getTypes().get(1) : field.schema();
    ColumnType type = ColumnType.of(value);
    return new Column(
        snakeCase(field.name()),
        type,
        type == ColumnType.NAME ? value.getEnumSymbols() : List.of(),
        optional,
        field.doc(),
        FieldReader.of(component));
  }

  /** {@code exposureDays} to {@code exposure_days}. */
  static String snakeCase(String name) {
    return name.replaceAll("([a-z0-9])([A-Z])", "$1_$2").toLowerCase(Locale.ROOT);
  }

  /** The column as it stands in {@code create table}. */
  String definition() {
    return '"' + name + "\" " + type.sqlType() + (optional ? "" : " NOT NULL");
  }

  /**
   * Appends this column's value where it comes next in packed rows. A text is handed on as the
   * bytes that it came as.
   *
   * @throws IOException where the bytes are damaged, or a RuntimeException
   */
  void append(Decoder packed, DuckDBAppender out) throws IOException, SQLException {
    if (optional && packed.readIndex() == 0) {
      out.appendNull();
      return;
    }
    switch (type) {
      case TEXT -> out.append(packed.readString(null).getBytes());
      case NAME -> out.append(names.get(packed.readEnum()));
      case INT -> out.append(packed.readInt());
      case LONG -> out.append(packed.readLong());
      case DOUBLE -> out.append(packed.readDouble());
      case FLAG -> out.append(packed.readBoolean());
      case DAY -> out.appendEpochDays(packed.readInt());
      case INSTANT -> out.appendEpochMicros(Math.multiplyExact(packed.readLong(), 1_000L));
    }
  }

  /** Appends this column's value of a record. */
  void append(Record row, DuckDBAppender out) throws SQLException {
    Object value = reader.read(row);
    if (value == null) {
      out.appendNull();
    } else if (value instanceof String text) {
      out.append(text);
    } else if (value instanceof Integer number) {
      out.append(number.intValue());
    } else if (value instanceof Long number) {
      out.append(number.longValue());
    } else if (value instanceof Double number) {
      out.append(number.doubleValue());
    } else if (value instanceof Boolean flag) {
      out.append(flag.booleanValue());
    } else if (value instanceof LocalDate day) {
      out.appendEpochDays(Math.toIntExact(day.toEpochDay()));
    } else if (value instanceof Instant instant) {
      out.appendEpochMicros(ChronoUnit.MICROS.between(Instant.EPOCH, instant));
    } else {
      out.append(value.toString());
    }
  }
}
