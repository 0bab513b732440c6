package sealspan.answers.tables;

import org.apache.avro.LogicalTypes;
import org.apache.avro.Schema;

/** What the values of a column are, and their type in DuckDB. */
public enum ColumnType {
  TEXT("VARCHAR"),
  /** A text out of a fixed list. */
  NAME("VARCHAR"),
  INT("INTEGER"),
  LONG("BIGINT"),
  DOUBLE("DOUBLE"),
  FLAG("BOOLEAN"),
  DAY("DATE"),
  /** In UTC. */
  INSTANT("TIMESTAMP");

  private final String sqlType;

  ColumnType(String sqlType) {
    this.sqlType = sqlType;
  }

  String sqlType() {
    return sqlType;
  }

  /** The type of values that are there; fails with IllegalArgumentException where there is none. */
  static ColumnType of(Schema value) {
    if (value.getLogicalType() instanceof LogicalTypes.Date) {
      return DAY;
    }
    if (value.getLogicalType() instanceof LogicalTypes.TimestampMillis) {
      return INSTANT;
    }
    return switch (value.getType()) {
      case STRING -> TEXT;
      case ENUM -> NAME;
      case INT -> INT;
      case LONG -> LONG;
      case DOUBLE -> DOUBLE;
      case BOOLEAN -> FLAG;
      default -> throw new IllegalArgumentException("A column cannot hold a " + value.getType());
    };
  }
}
