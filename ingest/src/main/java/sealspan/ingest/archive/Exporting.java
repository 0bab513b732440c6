package sealspan.ingest.archive;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import sealspan.avro.ArchiveFile;
import sealspan.avro.ArchivedRecord;
import sealspan.avro.KeptSchemas;
import sealspan.ingest.log.Cut;
import sealspan.ingest.log.KafkaAddress;
import sealspan.ingest.log.LogException;
import sealspan.ingest.log.RawTopic;

/**
 * Writes the whole log to files, up to its end at the beginning. The folder appears under its name
 * when everything in it is durable; until then it has a name of its own beside.
 */
public final class Exporting {
  /** A damaged file costs no more records than this. */
  static final long RECORDS_PER_FILE = 500_000;

  private static final long REPORT_EVERY = 20_000;

  private final KafkaAddress address;
  private final String codeStamp;
  private final long recordsPerFile;
  private final Headway headway;
  private long done;
  private long all;

  /**
   * An export of the log at an address.
   *
   * @param codeStamp the build that writes it
   */
  public Exporting(KafkaAddress address, String codeStamp, Headway headway) {
    this(address, codeStamp, RECORDS_PER_FILE, headway);
  }

  Exporting(KafkaAddress address, String codeStamp, long recordsPerFile, Headway headway) {
    this.address = address;
    this.codeStamp = codeStamp;
    this.recordsPerFile = recordsPerFile;
    this.headway = headway;
  }

  /**
   * Writes it.
   *
   * @param target the folder to make; its parent has to be there
   * @param program version of the program
   * @throws LogException when it is there already or cannot be written, or the log cannot be read
   */
  public Manifest to(Path target, String program) {
    Path place = target.toAbsolutePath().normalize();
    requireFree(place);
    Path draft = null;
    try {
      draft = Files.createTempDirectory(place.getParent(), place.getFileName() + ".unfinished-");
      Manifest manifest = write(draft, program);
      move(draft, place);
      return manifest;
    } catch (IOException | UncheckedIOException e) {
      throw cannotWrite(place, e);
    } finally {
      deleteIfThere(draft);
    }
  }

  private static void requireFree(Path place) {
    if (Files.exists(place)) {
      throw new LogException(
          place + " is there already, and an export never writes over one. Name another folder.");
    }
    if (place.getParent() == null || !Files.isDirectory(place.getParent())) {
      throw new LogException("There is no folder " + place.getParent() + " to write into.");
    }
  }

  private Manifest write(Path folder, String program) throws IOException {
    Map<String, RawTopic> topics = new LinkedHashMap<>();
    try {
      Map<String, Cut> ends = new LinkedHashMap<>();
      for (String name : RawTopic.NAMES) {
        RawTopic topic = new RawTopic(address, name, 0);
        topics.put(name, topic);
        ends.put(name, topic.end());
        all += sum(topic.end()) - sum(topic.beginning());
      }
      List<Manifest.Topic> written = new ArrayList<>();
      for (Map.Entry<String, RawTopic> one : topics.entrySet()) {
        written.add(write(folder, one.getKey(), one.getValue(), ends.get(one.getKey())));
      }
      writeSchemas(folder);
      Manifest manifest =
          new Manifest(
              Manifest.FORMAT,
              Manifest.FORMAT_VERSION,
              program,
              codeStamp,
              Instant.now().truncatedTo(ChronoUnit.SECONDS).toString(),
              written);
      manifest.write(folder);
      return manifest;
    } finally {
      topics.values().forEach(RawTopic::close);
    }
  }

  private static long sum(Cut cut) {
    return cut.offsets().stream().mapToLong(Long::longValue).sum();
  }

  private Manifest.Topic write(Path folder, String name, RawTopic topic, Cut end)
      throws IOException {
    Cut beginning = topic.beginning();
    List<Manifest.DataFile> files = new ArrayList<>();
    for (int p = 0; p < topic.partitions(); p++) {
      for (long from = beginning.offset(p); from < end.offset(p); from += recordsPerFile) {
        long to = Math.min(end.offset(p), from + recordsPerFile);
        String file = "%s-%d-%012d.avro".formatted(name, p, from);
        Piece piece = new Piece(folder.resolve(file));
        try (piece) {
          topic.read(p, from, to, piece::add);
        }
        if (piece.records > 0) {
          files.add(piece.described(p));
        } else {
          Files.delete(piece.path);
        }
      }
    }
    return new Manifest.Topic(name, topic.partitions(), files);
  }

  /** A file that is being written. */
  private final class Piece implements AutoCloseable {
    private final Path path;
    private final ArchiveFile.Writer writer;
    private long records;
    private long first;
    private long last;

    Piece(Path path) throws IOException {
      this.path = path;
      this.writer = new ArchiveFile.Writer(path);
    }

    void add(ArchivedRecord r) {
      try {
        writer.append(r);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      first = records == 0 ? r.offset() : first;
      last = r.offset();
      records++;
      done++;
      if (done % REPORT_EVERY == 0) {
        headway.at(path.getFileName().toString(), done, all);
      }
    }

    Manifest.DataFile described(int partition) throws IOException {
      return new Manifest.DataFile(
          path.getFileName().toString(),
          partition,
          first,
          last,
          records,
          Files.size(path),
          Digests.of(path));
    }

    @Override
    public void close() throws IOException {
      writer.close();
    }
  }

  /** So that the values can be read without this program. */
  private static void writeSchemas(Path folder) throws IOException {
    Path schemas = Files.createDirectory(folder.resolve("schemas"));
    for (Map.Entry<String, String> schema : KeptSchemas.all().entrySet()) {
      Files.writeString(schemas.resolve(schema.getKey() + ".avsc"), schema.getValue() + "\n");
    }
  }

  private static void move(Path draft, Path place) throws IOException {
    try {
      Files.move(draft, place, StandardCopyOption.ATOMIC_MOVE);
    } catch (FileAlreadyExistsException | AtomicMoveNotSupportedException e) {
      throw new IOException("it came to be there meanwhile", e);
    }
  }

  private static LogException cannotWrite(Path place, Exception e) {
    String text = String.valueOf(e.getMessage());
    if (text.contains("No space left on device")) {
      return new LogException(
          "The disk of " + place + " is full. Free some space, or export to another disk.", e);
    }
    return new LogException(place + " cannot be written (" + text + ").", e);
  }

  private static void deleteIfThere(Path draft) {
    if (draft == null || !Files.exists(draft)) {
      return;
    }
    try (Stream<Path> tree = Files.walk(draft)) {
      for (Path path : tree.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    } catch (IOException e) {
      throw new LogException("What was begun in " + draft + " could not be deleted.", e);
    }
  }
}
