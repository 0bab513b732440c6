package sealspan.answers.freesql;

import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import sealspan.answers.AnswersException;
import sealspan.answers.Cut;
import sealspan.answers.OpenSnapshot;
import sealspan.answers.ResultTable.ResultColumn;

/**
 * The process in which one query of a user runs. Arguments: snapshot, megabytes of memory, rows at
 * most; the query comes by standard input, the rows go by standard output.
 */
final class QueryProcess {
  /** Settings after which the connection can neither read nor write any file, nor be set free. */
  private static final List<String> LOCKS =
      List.of(
          "set temp_directory = ''",
          "set enable_external_access = false",
          "set autoinstall_known_extensions = false",
          "set autoload_known_extensions = false",
          "set allow_community_extensions = false",
          "set allow_persistent_secrets = false",
          "set threads = 1",
          "set enable_logging = false",
          "set disabled_filesystems = 'LocalFileSystem'");

  private QueryProcess() {}

  public static void main(String[] args) throws IOException {
    String sql = new String(System.in.readAllBytes(), StandardCharsets.UTF_8);
    try (DataOutputStream out =
        new DataOutputStream(
            new BufferedOutputStream(new FileOutputStream(FileDescriptor.out), 1 << 16))) {
      try {
        answer(args[0], Integer.parseInt(args[1]), Long.parseLong(args[2]), sql, out);
      } catch (AnswersException e) {
        ResultFrames.writeTrouble(out, e.getMessage());
      } catch (SQLException e) {
        String said =
            e.getMessage().replaceFirst("^Invalid Input Error: Attempting.*\\R?Error: ", "");
        ResultFrames.writeTrouble(
            out,
            said.startsWith("Out of Memory Error")
                ? SqlLimits.tooMuchMemory(args[1])
                : "The query cannot be answered: " + said);
      }
    }
  }

  private static void answer(
      String snapshot, int megabytes, long rows, String sql, DataOutputStream out)
      throws SQLException, IOException {
    Properties streamed = new Properties();
    streamed.setProperty("jdbc_stream_results", "true");
    try (Connection connection = OpenSnapshot.readOnly(Path.of(snapshot), streamed);
        Statement statement = connection.createStatement()) {
      String asOf = Cut.of(connection).words();
      Set<String> tables = tables(statement);
      lock(statement, megabytes);
      new SqlGate(tables).check(connection, sql);
      try (PreparedStatement query = connection.prepareStatement(sql);
          ResultSet result = query.executeQuery()) {
        write(asOf, result, rows, out);
      }
    }
  }

  /** Takes away what the connection could do beside reading its snapshot. */
  static void lock(Statement statement, int megabytes) throws SQLException {
    for (String lock : LOCKS) {
      statement.execute(lock);
    }
    statement.execute("set memory_limit = '" + megabytes + "MB'");
    statement.execute("set lock_configuration = true");
  }

  /** Names of the tables that may be asked, in lower case. */
  static Set<String> tables(Statement statement) throws SQLException {
    Set<String> tables = new HashSet<>();
    try (ResultSet rows =
        statement.executeQuery(
            "select table_name from duckdb_tables()"
                + " where schema_name = 'main' and database_name = current_database()")) {
      while (rows.next()) {
        tables.add(rows.getString(1).toLowerCase(Locale.ROOT));
      }
    }
    return tables;
  }

  private static void write(String asOf, ResultSet result, long rows, DataOutputStream out)
      throws SQLException, IOException {
    ResultSetMetaData meta = result.getMetaData();
    List<ResultColumn> columns = new ArrayList<>();
    for (int i = 1; i <= meta.getColumnCount(); i++) {
      columns.add(new ResultColumn(meta.getColumnLabel(i), meta.getColumnTypeName(i)));
    }
    ResultFrames.writeHead(out, asOf, columns);
    boolean more = result.next();
    for (long written = 0; more && written < rows; written++) {
      out.writeByte(ResultFrames.Frame.ROW.ordinal());
      for (int i = 1; i <= columns.size(); i++) {
        boolean time = columns.get(i - 1).sqlType().equals("TIMESTAMP");
        ResultFrames.writeValue(
            out, time ? result.getObject(i, LocalDateTime.class) : result.getObject(i));
      }
      more = result.next();
    }
    out.writeByte(ResultFrames.Frame.END.ordinal());
    out.writeBoolean(more);
  }
}
