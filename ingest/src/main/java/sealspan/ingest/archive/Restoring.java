package sealspan.ingest.archive;

import java.util.ArrayList;
import java.util.List;
import sealspan.avro.ArchivedRecord;
import sealspan.event.Topics;
import sealspan.ingest.log.KafkaAddress;
import sealspan.ingest.log.LogException;
import sealspan.ingest.log.RawTopic;

/**
 * Puts an export into a log that holds nothing yet. What was broken off half way is gone on with:
 * records go in order, so what is there has to be how the export begins.
 */
public final class Restoring {
  private static final int BATCH = 2_000;

  private final KafkaAddress address;
  private final Headway headway;
  private long done;
  private long all;

  /** A restore into the log at an address. */
  public Restoring(KafkaAddress address, Headway headway) {
    this.address = address;
    this.headway = headway;
  }

  /**
   * What was put back.
   *
   * @param records how many are in the log now
   * @param leftOut the files that were not as written
   * @param keptPlaces whether every event stands at the offset where it stood
   */
  public record Outcome(long records, List<Archive.Flaw> leftOut, boolean keptPlaces) {}

  /**
   * Puts back what is sound.
   *
   * @throws LogException when the log holds something else
   */
  public Outcome from(Archive archive) {
    for (Manifest.Topic topic : archive.manifest().topics()) {
      for (int p = 0; p < topic.partitions(); p++) {
        all += records(archive.sound(topic, p));
      }
    }
    for (Manifest.Topic topic : archive.manifest().topics()) {
      restore(archive, topic);
    }
    return new Outcome(done, archive.flaws(), archive.keepsPlaces());
  }

  /**
   * Makes sure that nothing was ever appended here.
   *
   * @throws LogException when something was
   */
  public void requireEmpty(Archive archive) {
    for (Manifest.Topic described : archive.manifest().topics()) {
      try (RawTopic topic = open(described)) {
        if (topic.end().offsets().stream().anyMatch(offset -> offset > 0)) {
          throw notEmpty(described.topic());
        }
      }
    }
  }

  private RawTopic open(Manifest.Topic described) {
    if (!RawTopic.NAMES.contains(described.topic())) {
      throw new LogException("The export holds a topic " + described.topic() + ", unknown here.");
    }
    RawTopic topic = new RawTopic(address, described.topic(), described.partitions());
    if (topic.partitions() != described.partitions()) {
      topic.close();
      throw new LogException(
          "The topic %s has %d partitions here and %d in the export. Delete it, and it is made anew."
              .formatted(described.topic(), topic.partitions(), described.partitions()));
    }
    return topic;
  }

  private static LogException notEmpty(String topic) {
    return new LogException(
        "The log here already holds something else in "
            + topic
            + ". Restore into an empty folder or cluster.");
  }

  private static long records(List<Manifest.DataFile> files) {
    return files.stream().mapToLong(Manifest.DataFile::records).sum();
  }

  private void restore(Archive archive, Manifest.Topic described) {
    try (RawTopic topic = open(described)) {
      for (int p = 0; p < described.partitions(); p++) {
        new Partition(archive, topic, described, p).restore();
      }
    }
  }

  /** One partition on its way back. */
  private final class Partition {
    private final Archive archive;
    private final RawTopic topic;
    private final Manifest.Topic described;
    private final int number;
    private final List<ArchivedRecord> batch = new ArrayList<>(BATCH);
    private long there;
    private long common;
    private long seen;

    Partition(Archive archive, RawTopic topic, Manifest.Topic described, int number) {
      this.archive = archive;
      this.topic = topic;
      this.described = described;
      this.number = number;
    }

    void restore() {
      List<Manifest.DataFile> files = archive.sound(described, number);
      there = topic.end().offset(number);
      // What is written into the ledger at the end of a restore in part stands behind the rest.
      boolean mayGoOn = described.topic().equals(Topics.LEDGER);
      if (there > records(files) && !mayGoOn) {
        throw notEmpty(described.topic());
      }
      common = Math.min(there, records(files));
      for (Manifest.DataFile file : files) {
        archive.read(file, this::take);
        headway.at(file.file(), done, all);
      }
      send();
    }

    private void take(ArchivedRecord r) {
      seen++;
      done++;
      if (seen == common) {
        requireSame(r);
      }
      if (seen > there) {
        batch.add(r);
      }
      if (batch.size() == BATCH) {
        send();
        headway.at(described.topic(), done, all);
      }
    }

    private void requireSame(ArchivedRecord r) {
      topic.read(
          number,
          common - 1,
          common,
          last -> {
            if (!last.isSameContent(r)) {
              throw notEmpty(described.topic());
            }
          });
    }

    private void send() {
      if (!batch.isEmpty()) {
        topic.append(batch);
        batch.clear();
      }
    }
  }
}
