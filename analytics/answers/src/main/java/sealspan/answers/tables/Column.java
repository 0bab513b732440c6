package sealspan.answers.tables;

import java.lang.reflect.RecordComponent;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import org.apache.avro.LogicalTypes;
import org.apache.avro.Schema;
import org.duckdb.DuckDBAppender;
import sealspan.avro.FieldReader;

/**
 * A column of a table.
 *
 * @param name name in snake case, such as {@code assembly_id}
 * @param sqlType type in DuckDB; a timestamp is in UTC
 * @param optional whether it may hold null, which means "not recorded" or as the meaning says
 * @param meaning what it holds, in words; null where the record does not say
 * @param reader reads the value from a row
 */
public record Column(
    String name, String sqlType, boolean optional, String meaning, FieldReader reader) {

  static Column of(RecordComponent component, Schema.Field field) {
    boolean optional = field.schema().isUnion();
    Schema value = optional ? field.schema().getTypes().get(1) : field.schema();
    return new Column(
        snakeCase(field.name()), sqlType(value), optional, field.doc(), FieldReader.of(component));
  }

  /** {@code exposureDays} to {@code exposure_days}. */
  static String snakeCase(String name) {
    return name.replaceAll("([a-z0-9])([A-Z])", "$1_$2").toLowerCase(Locale.ROOT);
  }

  private static String sqlType(Schema value) {
    if (value.getLogicalType() instanceof LogicalTypes.Date) {
      return "DATE";
    }
    if (value.getLogicalType() instanceof LogicalTypes.TimestampMillis) {
      return "TIMESTAMP";
    }
    return switch (value.getType()) {
      case STRING, ENUM -> "VARCHAR";
      case INT -> "INTEGER";
      case LONG -> "BIGINT";
      case DOUBLE -> "DOUBLE";
      case BOOLEAN -> "BOOLEAN";
      default -> throw new IllegalArgumentException("A column cannot hold a " + value.getType());
    };
  }

  /** The column as it stands in {@code create table}. */
  String definition() {
    return '"' + name + "\" " + sqlType + (optional ? "" : " NOT NULL");
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
