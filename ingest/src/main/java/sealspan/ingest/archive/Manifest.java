package sealspan.ingest.archive;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import sealspan.ingest.log.LogException;

/**
 * What an export holds. It is written last, so an export without it is not whole; a file beside it
 * has its own digest, in the form that {@code sha256sum --check} reads.
 *
 * @param format always {@link #FORMAT}
 * @param formatVersion version of the layout of an export
 * @param program version of the program that wrote it
 * @param codeStamp the build that wrote it; other builds may work out other answers
 * @param exportedAt when, UTC in ISO 8601
 * @param topics one for each topic that is kept for ever
 */
public record Manifest(
    String format,
    int formatVersion,
    String program,
    String codeStamp,
    String exportedAt,
    List<Topic> topics) {
  static final String FORMAT = "sealspan-export";
  static final int FORMAT_VERSION = 1;
  static final String FILE = "manifest.json";
  private static final String DIGEST_FILE = FILE + ".sha256";

  private static final ObjectMapper JSON =
      new ObjectMapper()
          .enable(SerializationFeature.INDENT_OUTPUT)
          .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES);

  /**
   * A topic.
   *
   * @param topic its name
   * @param partitions how many it has
   * @param files in order of partition and offset
   */
  public record Topic(String topic, int partitions, List<DataFile> files) {}

  /**
   * A container file.
   *
   * @param file its name
   * @param partition from 0
   * @param firstOffset of its first record
   * @param lastOffset of its last record
   * @param records how many it holds
   * @param bytes its size
   * @param sha256 of its bytes, in hex
   */
  public record DataFile(
      String file,
      int partition,
      long firstOffset,
      long lastOffset,
      long records,
      long bytes,
      String sha256) {}

  /** Number of records in all files. */
  public long records() {
    return topics.stream().flatMap(t -> t.files().stream()).mapToLong(DataFile::records).sum();
  }

  void write(Path folder) throws IOException {
    byte[] text = (JSON.writeValueAsString(this) + "\n").getBytes(StandardCharsets.UTF_8);
    String digest = Digests.of(text) + "  " + FILE + "\n";
    Files.writeString(folder.resolve(DIGEST_FILE), digest);
    Files.write(folder.resolve(FILE), text);
  }

  /**
   * Reads the manifest of an export.
   *
   * @throws LogException when it is missing, damaged, or of a newer layout
   */
  static Manifest read(Path folder) {
    Path file = folder.resolve(FILE);
    if (!Files.exists(file)) {
      throw new LogException(
          folder
              + " is no whole export: it has no "
              + FILE
              + ", which is written last. Take another copy, or export again.");
    }
    try {
      byte[] text = Files.readAllBytes(file);
      Path digest = folder.resolve(DIGEST_FILE);
      if (!Files.exists(digest) || !Files.readString(digest).startsWith(Digests.of(text) + " ")) {
        throw damaged(file, "it does not agree with " + DIGEST_FILE, null);
      }
      Manifest manifest = JSON.readValue(text, Manifest.class);
      if (!FORMAT.equals(manifest.format)) {
        throw damaged(file, "it is not one of an export", null);
      }
      if (manifest.formatVersion > FORMAT_VERSION) {
        throw new LogException(
            folder
                + " was exported by a newer version of the program ("
                + manifest.program
                + "). Use that version or a later one.");
      }
      return manifest;
    } catch (JsonProcessingException e) {
      throw damaged(file, "it is no JSON", e);
    } catch (IOException e) {
      throw new LogException(file + " cannot be read (" + e.getMessage() + ").", e);
    }
  }

  private static LogException damaged(Path file, String how, Exception e) {
    return new LogException(
        file
            + " is damaged: "
            + how
            + ". Without it nothing tells what is sound; take it from another copy.",
        e);
  }
}
