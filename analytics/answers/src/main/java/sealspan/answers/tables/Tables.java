package sealspan.answers.tables;

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
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import sealspan.table.Bundle;
import sealspan.table.LedgerEntry;
import sealspan.table.QuarantinedRow;

/** All tables that bundles, quarantined rows and the ledger make. */
public final class Tables {
  private static final Map<Class<?>, TableDefinition> BY_ROW_CLASS = derive();

  private static final Map<Class<?>, List<BundlePart>> PARTS =
      Arrays.stream(Bundle.class.getPermittedSubclasses())
          .collect(Collectors.toMap(bundle -> bundle, BundlePart::of));

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
    return BundlePart.of(bundle).stream()
        .<Class<? extends Record>>map(BundlePart::rowClass)
        .filter(Objects::nonNull)
        .toList();
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

  /** The parts of a class of bundles, in the order in which they are packed. */
  static List<BundlePart> partsOf(Class<? extends Bundle> bundle) {
    return PARTS.get(bundle);
  }

  /** The rows of a bundle, whatever their tables; a part that is absent gives none. */
  static List<Record> rowsOf(Bundle bundle) {
    List<Record> rows = new ArrayList<>();
    for (BundlePart part : partsOf(bundle.getClass())) {
      Object value = part.rowClass() == null ? null : part.reader().read(bundle);
      if (value instanceof List<?> list) {
        list.forEach(row -> rows.add((Record) row));
      } else if (value != null) {
        rows.add((Record) value);
      }
    }
    return rows;
  }
}
