package sealspan.answers.freesql;

import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import sealspan.answers.Answer;
import sealspan.answers.AnswersException;
import sealspan.answers.AnswersFolder;
import sealspan.answers.ResultTable;
import sealspan.answers.ResultTable.ResultColumn;

/**
 * Answers a query that a user wrote. Limits inside DuckDB do not hold against every query, so it
 * runs in a process of its own, which is ended when its time is over.
 */
public final class FreeSql {
  private static final int LONGEST_SQL = 100_000;

  private FreeSql() {}

  /**
   * Answers one SELECT from the newest snapshot of a data folder.
   *
   * @throws AnswersException where the query is refused, fails or breaks a limit
   */
  public static Answer ask(Path dataFolder, String sql, SqlLimits limits) {
    if (sql.length() > LONGEST_SQL) {
      throw new AnswersException(
          "The query is refused: it has more than " + LONGEST_SQL + " characters.");
    }
    Path snapshot = new AnswersFolder(dataFolder).newestSnapshot();
    Path folder = null;
    Process process = null;
    try {
      folder = Files.createTempDirectory("sealspan-query");
      process = QueryCommand.of(folder, snapshot, limits).start();
      return read(process, sql, limits);
    } catch (IOException e) {
      throw new AnswersException("The query could not be run: " + e.getMessage() + ".", e);
    } finally {
      end(process);
      remove(folder);
    }
  }

  private static Answer read(Process process, String sql, SqlLimits limits) throws IOException {
    Watch watch = new Watch(process, limits);
    watch.start();
    try (DataInputStream in =
        new DataInputStream(
            new BufferedInputStream(
                new CountedInput(process.getInputStream(), limits.resultMegabytes()), 1 << 16))) {
      send(process, sql);
      return readFrames(in, sql, limits);
    } catch (EOFException e) {
      throw new AnswersException(
          watch.timeIsOver()
              ? "The query was stopped: it ran for more than "
                  + limits.time().toSeconds()
                  + " seconds. Ask for less, or narrow it down."
              : SqlLimits.tooMuchMemory(Integer.toString(limits.memoryMegabytes())),
          e);
    } finally {
      watch.interrupt();
    }
  }

  private static void send(Process process, String sql) throws IOException {
    try (OutputStream query = process.getOutputStream()) {
      query.write(sql.getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw (EOFException)
          new EOFException("the process ended before it took the query").initCause(e);
    }
  }

  private static Answer readFrames(DataInputStream in, String sql, SqlLimits limits)
      throws IOException {
    String asOf = "";
    List<ResultColumn> columns = List.of();
    List<List<Object>> rows = new ArrayList<>();
    while (true) {
      switch (frame(in)) {
        case HEAD -> {
          asOf = ResultFrames.readText(in);
          columns = ResultFrames.readColumns(in);
        }
        case ROW -> rows.add(row(in, columns.size()));
        case TROUBLE -> throw new AnswersException(ResultFrames.readText(in));
        case END -> {
          String note =
              in.readBoolean()
                  ? "Only the first " + limits.rows() + " rows are shown; there are more."
                  : "n = " + rows.size() + " rows";
          ResultTable table = new ResultTable(columns, rows);
          return new Answer("sql", sql.strip(), asOf, table, List.of(note));
        }
      }
    }
  }

  private static List<Object> row(DataInputStream in, int columns) throws IOException {
    List<Object> row = new ArrayList<>(columns);
    for (int i = 0; i < columns; i++) {
      row.add(ResultFrames.readValue(in));
    }
    return row;
  }

  private static ResultFrames.Frame frame(DataInputStream in) throws IOException {
    int code = in.readByte();
    ResultFrames.Frame[] frames = ResultFrames.Frame.values();
    if (code < 0 || code >= frames.length) {
      throw new EOFException("the process ended with something else than a result");
    }
    return frames[code];
  }

  private static void end(Process process) {
    if (process != null) {
      process.destroyForcibly();
      try {
        process.waitFor(10, TimeUnit.SECONDS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }

  private static void remove(Path folder) {
    if (folder == null) {
      return;
    }
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(file);
      }
    } catch (IOException e) {
      throw new AnswersException("The folder " + folder + " cannot be removed; remove it.", e);
    }
  }
}
