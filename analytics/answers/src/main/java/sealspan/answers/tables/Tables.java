package sealspan.answers.tables;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import sealspan.avro.FieldReader;
import sealspan.table.Bundle;
import sealspan.table.LedgerEntry;
import sealspan.table.QuarantinedRow;

/** All tables that bundles, quarantined rows and the ledger make. */
public final class Tables {
  private static final Map<Class<?>, TableDefinition> BY_ROW_CLASS = derive();

  /** How the components of each class of bundles are read. */
  private static final Map<Class<?>, List<FieldReader>> PARTS =
      Arrays.stream(Bundle.class.getPermittedSubclasses())
          .collect(
              Collectors.toMap(
                  bundle -> bundle,
                  bundle ->
                      Arrays.stream(bundle.getRecordComponents()).map(FieldReader::of).toList()));

  private Tables() {}

  private static Map<Class<?>, TableDefinition> derive() {
    Map<Class<?>, TableDefinition> tables = new LinkedHashMap<>();
    for (Class<?> bundle : Bundle.class.getPermittedSubclasses()) {
      for (Class<? extends Record> row : rowClasses(bundle)) {
        tables.put(row, TableDefinition.of(row));
      }
    }
    for (Class<? extends Record> row : List.of(QuarantinedRow.class, LedgerEntry.class)) {
      tables.put(row, TableDefinition.of(row));
    }
    return tables;
  }

  /** The tables that bundles or rows of some classes go to, each once. */
  public static Set<TableDefinition> holding(Collection<Class<?>> contents) {
    Set<TableDefinition> tables = new LinkedHashSet<>();
    for (Class<?> content : contents) {
      if (BY_ROW_CLASS.containsKey(content)) {
        tables.add(BY_ROW_CLASS.get(content));
      } else {
        rowClasses(content).forEach(row -> tables.add(BY_ROW_CLASS.get(row)));
      }
    }
    return tables;
  }

  private static List<Class<? extends Record>> rowClasses(Class<?> bundle) {
    List<Class<? extends Record>> rows = new ArrayList<>();
    for (RecordComponent component : bundle.getRecordComponents()) {
      Class<? extends Record> row = rowClass(component.getGenericType());
      if (row != null) {
        rows.add(row);
      }
    }
    return rows;
  }

  private static Class<? extends Record> rowClass(Type type) {
    Type element = type instanceof ParameterizedType list ? list.getActualTypeArguments()[0] : type;
    Class<?> candidate = (Class<?>) element;
    return candidate.isRecord() ? candidate.asSubclass(Record.class) : null;
  }

  /** Every table, in a fixed order. */
  public static List<TableDefinition> all() {
    return List.copyOf(BY_ROW_CLASS.values());
  }

  /** The table of a row record; fails with IllegalArgumentException for any other class. */
  public static TableDefinition of(Class<? extends Record> rowClass) {
    TableDefinition table = BY_ROW_CLASS.get(rowClass);
    if (table == null) {
      throw new IllegalArgumentException("No table holds " + rowClass.getName());
    }
    return table;
  }

  /** Makes all tables, empty. */
  public static void create(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      for (TableDefinition table : all()) {
        for (String sql : table.createStatements()) {
          statement.execute(sql);
        }
      }
    }
  }

  /** The rows of a bundle, whatever their tables; a part that is absent gives none. */
  static List<Record> rowsOf(Bundle bundle) {
    List<Record> rows = new ArrayList<>();
    for (FieldReader reader : PARTS.get(bundle.getClass())) {
      Object part = reader.read(bundle);
      if (part instanceof List<?> list) {
        list.forEach(row -> rows.add((Record) row));
      } else if (part instanceof Record row) {
        rows.add(row);
      }
    }
    return rows;
  }
}
