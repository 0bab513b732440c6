package sealspan.answers.writer;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import sealspan.answers.tables.Attached;
import sealspan.answers.tables.Layers;
import sealspan.answers.tables.OneValue;

/**
 * The file of a layer.
 *
 * @param folder folder of the layers of a generation, beside the snapshots
 * @param number number of the layer, from 1
 */
record LayerFile(Path folder, int number) {
  Path path() {
    return folder.resolve("layer-%06d.duckdb".formatted(number));
  }

  /** As a model lists it. */
  String name() {
    return folder.getFileName() + "/" + path().getFileName();
  }

  /** Name of the database while the layer is being read. */
  String database() {
    return Layers.database(number);
  }

  /** Makes a snapshot the layer: its tables of bundles are, the rest of it is of no account. */
  void of(Path snapshot) throws IOException {
    Files.createDirectories(folder);
    try {
      Files.createLink(path(), snapshot);
    } catch (UnsupportedOperationException | FileSystemException e) {
      // Not every file system has links.
      Files.copy(snapshot, part(), StandardCopyOption.REPLACE_EXISTING);
      CompleteFile.put(part(), path());
    }
  }

  private Path part() {
    return folder.resolve("part-%06d.duckdb".formatted(number));
  }

  /**
   * Writes the layer; it is complete and on disk before its name appears.
   *
   * @param statement on a connection that is between transactions
   * @param rows the query for the rows of each of its tables
   * @param bundles the query for its bundles: key and revision
   * @return number of bundles
   */
  long write(Statement statement, Map<String, String> rows, String bundles) throws SQLException {
    Path part = part();
    String writing = "writing_" + number;
    try {
      Files.createDirectories(folder);
      Files.deleteIfExists(part);
      Attached.writable(statement, part, writing);
      statement.execute("create schema %s.own".formatted(writing));
      statement.execute("create table %s.own.bundle as %s".formatted(writing, bundles));
      for (Map.Entry<String, String> table : rows.entrySet()) {
        statement.execute(
            "create table %s.main.\"%s\" as %s"
                .formatted(writing, table.getKey(), table.getValue()));
      }
      long count = OneValue.number(statement, "select count(*) from " + writing + ".own.bundle");
      statement.execute("checkpoint " + writing);
      statement.execute("detach " + writing);
      CompleteFile.put(part, path());
      return count;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
