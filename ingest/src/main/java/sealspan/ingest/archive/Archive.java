package sealspan.ingest.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import sealspan.avro.ArchiveFile;
import sealspan.avro.ArchivedRecord;
import sealspan.avro.SingleObjectCodec.DamagedBytes;
import sealspan.event.Topics;
import sealspan.ingest.log.LogException;

/**
 * An export that was checked against its manifest.
 *
 * @param folder where it is
 * @param manifest what it should hold
 * @param flaws the files that are not as written
 */
public record Archive(Path folder, Manifest manifest, List<Flaw> flaws) {

  /**
   * A file that is not as it was written.
   *
   * @param file its name
   * @param what is wrong, in words
   * @param records records that it held
   */
  public record Flaw(String file, String what, long records) {
    @Override
    public String toString() {
      return file + " " + what + " (" + records + " records)";
    }
  }

  /**
   * Opens an export and reads every file of it once, to compare digests.
   *
   * @throws LogException when there is no export, or its manifest is not sound
   */
  public static Archive open(Path folder) {
    if (!Files.isDirectory(folder)) {
      throw new LogException("There is no folder " + folder + ". Name the folder of an export.");
    }
    Manifest manifest = Manifest.read(folder);
    List<Flaw> flaws = new ArrayList<>();
    for (Manifest.Topic topic : manifest.topics()) {
      for (Manifest.DataFile file : topic.files()) {
        String what = flaw(folder, file);
        if (what != null) {
          flaws.add(new Flaw(file.file(), what, file.records()));
        }
      }
    }
    return new Archive(folder, manifest, List.copyOf(flaws));
  }

  private static String flaw(Path folder, Manifest.DataFile file) {
    Path path = folder.resolve(file.file());
    if (!path.normalize().getParent().equals(folder.normalize())) {
      return "does not lie in the folder of the export";
    }
    try {
      if (Files.size(path) != file.bytes()) {
        return "is damaged: it has " + Files.size(path) + " bytes, not " + file.bytes();
      }
      return Digests.of(path).equals(file.sha256())
          ? null
          : "is damaged: its bytes do not have the digest in the manifest";
    } catch (NoSuchFileException e) {
      return "is missing";
    } catch (IOException e) {
      return "cannot be read: " + e.getMessage();
    }
  }

  /** The flaws, one a line. */
  public String flawsInWords() {
    return flaws.stream().map(f -> "  " + f).collect(Collectors.joining("\n"));
  }

  /** The files of a partition that are as written, in order. */
  List<Manifest.DataFile> sound(Manifest.Topic topic, int partition) {
    return topic.files().stream()
        .filter(f -> f.partition() == partition)
        .filter(f -> flaws.stream().noneMatch(flaw -> flaw.file().equals(f.file())))
        .toList();
  }

  /**
   * Whether every event will stand at the offset where it stood, so that places told elsewhere in
   * the log still hold.
   */
  boolean keepsPlaces() {
    for (Manifest.Topic topic : manifest.topics()) {
      for (int p = 0; topic.topic().equals(Topics.EVENTS) && p < topic.partitions(); p++) {
        long next = 0;
        int partition = p;
        for (Manifest.DataFile f : sound(topic, p)) {
          if (f.firstOffset() != next || f.lastOffset() - f.firstOffset() + 1 != f.records()) {
            return false;
          }
          next = f.lastOffset() + 1;
        }
        if (flaws.stream().anyMatch(flaw -> isOf(topic, partition, flaw))) {
          return false;
        }
      }
    }
    return true;
  }

  private static boolean isOf(Manifest.Topic topic, int partition, Flaw flaw) {
    return topic.files().stream()
        .anyMatch(f -> f.partition() == partition && f.file().equals(flaw.file()));
  }

  /** Reads a sound file. */
  void read(Manifest.DataFile file, Consumer<ArchivedRecord> each) {
    try {
      ArchiveFile.read(folder.resolve(file.file()), each);
    } catch (IOException | DamagedBytes e) {
      throw new LogException(file.file() + " cannot be read (" + e.getMessage() + ").", e);
    }
  }
}
