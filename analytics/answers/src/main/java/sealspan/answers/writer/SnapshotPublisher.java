package sealspan.answers.writer;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.stream.Stream;
import sealspan.answers.AnswersException;
import sealspan.answers.AnswersFolder;
import sealspan.answers.PublishedQuestions;
import sealspan.answers.tables.Publication;

/**
 * Publishes copies of the private file. A copy is complete and on disk before its name appears, and
 * the pointer to it is changed by one rename, so that a reader finds the old or the new, never half
 * of one.
 */
final class SnapshotPublisher {
  /** Snapshots that stay: the newest, and those that a reader may be about to open. */
  private static final int KEPT = 3;

  private static final Properties READ_ONLY = new Properties();

  static {
    READ_ONLY.setProperty("duckdb.read_only", "true");
  }

  private final AnswersFolder folder;

  SnapshotPublisher(AnswersFolder folder) {
    this.folder = folder;
  }

  /**
   * Publishes a checkpointed file.
   *
   * @return the new snapshot
   */
  Path publish(Path privateFile, String generation, String codeVersion)
      throws IOException, SQLException {
    long number = numbers().stream().mapToLong(n -> n).max().orElse(0) + 1;
    Path part = folder.folder().resolve("publishing.duckdb");
    removeParts();
    Files.copy(privateFile, part);
    complete(part, generation, codeVersion);
    Path snapshot = folder.snapshot(number);
    try (FileChannel written = FileChannel.open(part, StandardOpenOption.WRITE)) {
      written.force(true);
    }
    Files.move(part, snapshot, StandardCopyOption.ATOMIC_MOVE);
    point(snapshot);
    removeOld();
    return snapshot;
  }

  /** Removes what a killed writer was about to publish. */
  void removeParts() throws IOException {
    for (String name : List.of("publishing.duckdb", "publishing.duckdb.wal", "current.part")) {
      Files.deleteIfExists(folder.folder().resolve(name));
    }
  }

  /** Generation of the newest snapshot; empty where there is none that can be read. */
  Optional<String> currentGeneration() {
    try (Connection connection =
            DriverManager.getConnection("jdbc:duckdb:" + folder.newestSnapshot(), READ_ONLY);
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("select generation from publication")) {
      return row.next() ? Optional.of(row.getString(1)) : Optional.empty();
    } catch (SQLException | AnswersException e) {
      return Optional.empty();
    }
  }

  /** Removes files of generations that are neither being made nor published. */
  void removeOtherGenerations(String generation) throws IOException {
    Set<String> kept = new HashSet<>();
    for (String g : List.of(generation, currentGeneration().orElse(generation))) {
      kept.add(folder.privateFile(g).getFileName().toString());
      kept.add(folder.privateFile(g).getFileName() + ".wal");
      kept.add(folder.segments(g).getFileName().toString());
    }
    List<Path> others;
    try (Stream<Path> files = Files.list(folder.folder())) {
      others =
          files
              .filter(f -> f.getFileName().toString().matches("(model|events)-.*"))
              .filter(f -> !kept.contains(f.getFileName().toString()))
              .toList();
    }
    for (Path other : others) {
      removeTree(other);
    }
  }

  private static void removeTree(Path root) throws IOException {
    try (Stream<Path> files = Files.walk(root)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(file);
      }
    }
  }

  private static void complete(Path file, String generation, String codeVersion)
      throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:duckdb:" + file);
        Statement statement = connection.createStatement()) {
      statement.execute("set threads = 2");
      new Publication(generation, codeVersion, Instant.now()).addTo(connection);
      PublishedQuestions.addTo(connection);
      statement.execute("checkpoint");
    }
  }

  private void point(Path snapshot) throws IOException {
    Path part = folder.folder().resolve("current.part");
    try (FileChannel out =
        FileChannel.open(
            part,
            StandardOpenOption.CREATE,
            StandardOpenOption.TRUNCATE_EXISTING,
            StandardOpenOption.WRITE)) {
      out.write(ByteBuffer.wrap((snapshot.getFileName() + "\n").getBytes(StandardCharsets.UTF_8)));
      out.force(true);
    }
    Files.move(
        part,
        folder.currentFile(),
        StandardCopyOption.ATOMIC_MOVE,
        StandardCopyOption.REPLACE_EXISTING);
  }

  private void removeOld() throws IOException {
    List<Long> newestFirst = numbers().stream().sorted(Comparator.reverseOrder()).toList();
    for (Long number :
        newestFirst.subList(Math.min(KEPT, newestFirst.size()), newestFirst.size())) {
      Files.deleteIfExists(folder.snapshot(number));
    }
  }

  private List<Long> numbers() throws IOException {
    try (Stream<Path> files = Files.list(folder.folder())) {
      return files.map(AnswersFolder::numberOf).filter(n -> n > 0).toList();
    }
  }
}
