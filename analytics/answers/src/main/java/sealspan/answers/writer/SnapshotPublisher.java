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
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import sealspan.answers.AnswersException;
import sealspan.answers.AnswersFolder;
import sealspan.answers.OpenSnapshot;

/**
 * Publishes copies of the private file. A copy is complete and on disk before its name appears, and
 * the pointer to it is changed by one rename, so that a reader finds the old or the new, never half
 * of one.
 */
final class SnapshotPublisher {
  /** Snapshots that stay: the newest, and those that a reader may be about to open. */
  private static final int KEPT = 3;

  private final AnswersFolder folder;

  /** Files of layers, each with the number of the first snapshot that does not name it. */
  private final Map<Path, Long> retired = new HashMap<>();

  SnapshotPublisher(AnswersFolder folder) {
    this.folder = folder;
  }

  /**
   * Publishes a private file that was settled, as it is.
   *
   * @return the new snapshot
   */
  Path publish(Path privateFile) throws IOException {
    Path snapshot = folder.snapshot(newestNumber() + 1);
    CompleteFile.put(copy(privateFile), snapshot);
    point(snapshot);
    removeOld();
    return snapshot;
  }

  /** A copy of a private file that was settled, which {@link #removeParts()} removes. */
  Path copy(Path privateFile) throws IOException {
    Path part = folder.folder().resolve("publishing.duckdb");
    removeParts();
    return Files.copy(privateFile, part);
  }

  /** Removes what a killed writer was about to publish. */
  void removeParts() throws IOException {
    for (String name : List.of("publishing.duckdb", "publishing.duckdb.wal", "current.part")) {
      Files.deleteIfExists(folder.folder().resolve(name));
    }
  }

  /** Generation of the newest snapshot; empty where there is none that can be read. */
  Optional<String> currentGeneration() {
    try (Connection connection = OpenSnapshot.readOnly(folder.newestSnapshot());
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("select generation from publication")) {
      return row.next() ? Optional.of(row.getString(1)) : Optional.empty();
    } catch (SQLException | AnswersException e) {
      return Optional.empty();
    }
  }

  /** Files of layers that the newest snapshot names; none where there is none that can be read. */
  Set<String> layersOfNewest() {
    Set<String> files = new HashSet<>();
    try (Connection connection = OpenSnapshot.readOnly(folder.newestSnapshot());
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("select file from own.layer")) {
      while (row.next()) {
        files.add(row.getString(1));
      }
    } catch (SQLException | AnswersException e) {
      return Set.of();
    }
    return files;
  }

  /** Removes files of layers once no snapshot names them that is kept. */
  void retire(Collection<Path> layers) throws IOException {
    long next = newestNumber() + 1;
    layers.forEach(layer -> retired.put(layer, next));
  }

  /** Removes files of generations that are neither being made nor published. */
  void removeOtherGenerations(String generation) throws IOException {
    Set<String> kept = new HashSet<>();
    for (String g : List.of(generation, currentGeneration().orElse(generation))) {
      kept.add(folder.privateFile(g).getFileName().toString());
      kept.add(folder.privateFile(g).getFileName() + ".wal");
      kept.add(folder.segments(g).getFileName().toString());
      kept.add(folder.layers(g).getFileName().toString());
    }
    List<Path> others;
    try (Stream<Path> files = Files.list(folder.folder())) {
      others =
          files
              .filter(f -> f.getFileName().toString().matches("(model|events|layers)-.*"))
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
    long oldest = newestFirst.get(Math.min(KEPT, newestFirst.size()) - 1);
    for (Path layer : List.copyOf(retired.keySet())) {
      if (retired.get(layer) <= oldest) {
        Files.deleteIfExists(layer);
        retired.remove(layer);
      }
    }
  }

  private long newestNumber() throws IOException {
    return numbers().stream().mapToLong(n -> n).max().orElse(0);
  }

  private List<Long> numbers() throws IOException {
    try (Stream<Path> files = Files.list(folder.folder())) {
      return files.map(AnswersFolder::numberOf).filter(n -> n > 0).toList();
    }
  }
}
