package sealspan.answers.freesql;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import sealspan.answers.AnswersException;

/**
 * Lets one SELECT through whose parse tree holds only what is listed: tables of the answers,
 * harmless functions, plain clauses. What is not known is refused.
 */
final class SqlGate {
  private static final Set<String> TABLE_FUNCTIONS = Set.of("unnest", "range", "generate_series");

  private static final Set<String> CLASSES =
      Set.of(
          "BETWEEN",
          "CASE",
          "CAST",
          "COLLATE",
          "COLUMN_REF",
          "COMPARISON",
          "CONJUNCTION",
          "CONSTANT",
          "FUNCTION",
          "LAMBDA",
          "LAMBDA_REF",
          "OPERATOR",
          "POSITIONAL_REFERENCE",
          "STAR",
          "SUBQUERY",
          "WINDOW");

  private static final Set<String> CLAUSES =
      Set.of(
          "SELECT_NODE",
          "SET_OPERATION_NODE",
          "RECURSIVE_CTE_NODE",
          "CTE_NODE",
          "BASE_TABLE",
          "TABLE_FUNCTION",
          "SUBQUERY",
          "JOIN",
          "EXPRESSION_LIST",
          "EMPTY",
          "ORDER_MODIFIER",
          "LIMIT_MODIFIER",
          "LIMIT_PERCENT_MODIFIER",
          "DISTINCT_MODIFIER",
          "ORDER_DEFAULT",
          "ASCENDING",
          "DESCENDING");

  private static final Set<String> FUNCTIONS = functions();

  private final Set<String> tables;
  private final Set<String> named = new HashSet<>();

  /**
   * A gate for one query.
   *
   * @param tables names of the tables that may be asked, in lower case
   */
  SqlGate(Set<String> tables) {
    this.tables = tables;
  }

  /**
   * Lets a query through, or throws {@link AnswersException} that says what it must not do.
   *
   * @param connection any connection: the query is parsed, not run
   */
  void check(Connection connection, String sql) throws SQLException {
    JsonNode tree = parse(connection, sql);
    if (tree.path("error").asBoolean()) {
      throw refused(
          tree.path("error_type").asText().equals("parser")
              ? "it cannot be read: " + tree.path("error_message").asText()
              : "it is not a SELECT");
    }
    if (tree.path("statements").size() != 1) {
      throw refused("it has " + tree.path("statements").size() + " statements");
    }
    findNames(tree);
    walk(tree.path("statements").get(0));
  }

  private static JsonNode parse(Connection connection, String sql) throws SQLException {
    try (PreparedStatement statement =
        connection.prepareStatement("select json_serialize_sql(cast(? as varchar))")) {
      statement.setString(1, sql);
      try (ResultSet row = statement.executeQuery()) {
        row.next();
        return new ObjectMapper().readTree(row.getString(1));
      }
    } catch (JsonProcessingException e) {
      throw new AnswersException("The query is refused: it is too deeply nested.", e);
    }
  }

  /** A subquery's name must not hide a table, nor look like a file. */
  private void findNames(JsonNode node) {
    for (JsonNode entry : node.path("cte_map").path("map")) {
      String name = entry.path("key").asText().toLowerCase(Locale.ROOT);
      if (tables.contains(name)) {
        throw refused("it gives a subquery the name of the table " + name);
      }
      if (!name.matches("[a-z_][a-z0-9_]*")) {
        throw refused(
            "the name " + name + " of a subquery is not of letters, digits and underscores");
      }
      named.add(name);
    }
    node.forEach(this::findNames);
  }

  private void walk(JsonNode node) {
    if (node.has("class")) {
      checkExpression(node);
      if (node.path("class").asText().equals("CONSTANT")) {
        return;
      }
    } else if (node.path("type").isTextual()) {
      checkClause(node);
    }
    if (node.isArray()) {
      node.forEach(this::walk);
    }
    for (Map.Entry<String, JsonNode> child : node.properties()) {
      if (!child.getKey().equals("cast_type")) {
        walk(child.getValue());
      }
    }
  }

  private static void checkExpression(JsonNode node) {
    String kind = node.path("class").asText();
    if (kind.equals("PARAMETER")) {
      throw refused("it has a parameter; write the value itself");
    }
    if (!CLASSES.contains(kind)) {
      throw refused("it has an expression of kind " + kind);
    }
    if (kind.equals("FUNCTION") || kind.equals("WINDOW")) {
      requireOwn(node, "schema", "catalog");
      String name = node.path("function_name").asText().toLowerCase(Locale.ROOT);
      if (!FUNCTIONS.contains(name) && !TABLE_FUNCTIONS.contains(name)) {
        throw refused("the function " + name + " is not among those that may be used");
      }
    }
  }

  private void checkClause(JsonNode node) {
    String type = node.path("type").asText();
    if (type.equals("SHOW_REF")) {
      throw refused("it is not a SELECT; " + tableList());
    }
    if (!CLAUSES.contains(type)) {
      throw refused("it has a clause of kind " + type);
    }
    if (type.equals("BASE_TABLE")) {
      requireOwn(node, "schema_name", "catalog_name");
      String table = node.path("table_name").asText().toLowerCase(Locale.ROOT);
      if (!tables.contains(table) && !named.contains(table)) {
        throw refused("there is no table " + table + "; " + tableList());
      }
    } else if (type.equals("TABLE_FUNCTION")) {
      String name = node.path("function").path("function_name").asText().toLowerCase(Locale.ROOT);
      if (!TABLE_FUNCTIONS.contains(name)) {
        throw refused("the table function " + name + " is not among those that may be used");
      }
    }
  }

  private String tableList() {
    return "the tables are " + tables.stream().sorted().collect(Collectors.joining(", "));
  }

  private static void requireOwn(JsonNode node, String schema, String catalog) {
    String schemaName = node.path(schema).asText();
    if (!(schemaName.isEmpty() || schemaName.equalsIgnoreCase("main"))
        || !node.path(catalog).asText().isEmpty()) {
      throw refused("it names a schema or catalogue; write the plain name");
    }
  }

  private static AnswersException refused(String because) {
    return new AnswersException(
        "The query is refused: "
            + because
            + ". One SELECT on the tables of the answers may be asked.");
  }

  private static Set<String> functions() {
    String file = "/sealspan/answers/freesql/functions";
    try (InputStream in = SqlGate.class.getResourceAsStream(file)) {
      if (in == null) {
        throw new IllegalStateException("The program's own file " + file + " is missing.");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .flatMap(line -> Arrays.stream(line.strip().split("\\s+")))
          .collect(Collectors.toUnmodifiableSet());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
