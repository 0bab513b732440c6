package sealspan.ingest.log;

import java.nio.file.Path;
import java.time.InstantSource;
import sealspan.table.QuarantinedRow;

/** A {@link Quarantine} kept by Kafka, on this machine or anywhere. For any number of threads. */
public final class KafkaQuarantine extends KafkaAppendLog<QuarantinedRow> implements Quarantine {
  /**
   * Opens the quarantine; its topic is made when missing.
   *
   * @param indexFolder where the index of ids is kept; it may be lost, and is then made again
   * @throws LogException when Kafka cannot be reached, or the topic would not be kept for ever
   */
  public KafkaQuarantine(KafkaAddress address, Path indexFolder) {
    this(address, indexFolder, InstantSource.system());
  }

  KafkaQuarantine(KafkaAddress address, Path indexFolder, InstantSource clock) {
    super(address, new QuarantineForm(), indexFolder, clock);
  }
}
