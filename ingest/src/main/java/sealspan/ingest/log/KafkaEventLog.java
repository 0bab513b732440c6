package sealspan.ingest.log;

import java.nio.file.Path;
import java.time.InstantSource;
import sealspan.event.LoggedEvent;

/** A {@link EventLog} kept by Kafka, on this machine or anywhere. For any number of threads. */
public final class KafkaEventLog extends KafkaAppendLog<LoggedEvent> implements EventLog {
  /**
   * Opens the log of events; its topic is made when missing.
   *
   * @param indexFolder where the index of ids is kept; it may be lost, and is then made again
   * @throws LogException when Kafka cannot be reached, or the topic would not be kept for ever
   */
  public KafkaEventLog(KafkaAddress address, Path indexFolder) {
    this(address, indexFolder, InstantSource.system());
  }

  KafkaEventLog(KafkaAddress address, Path indexFolder, InstantSource clock) {
    super(address, new EventForm(), indexFolder, clock);
  }
}
