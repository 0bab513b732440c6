package sealspan.app.engine;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import sealspan.ingest.log.EventLog;
import sealspan.ingest.log.KafkaAddress;
import sealspan.ingest.log.KafkaEventLog;
import sealspan.ingest.log.KafkaLedger;
import sealspan.ingest.log.KafkaQuarantine;
import sealspan.ingest.log.Quarantine;
import sealspan.study.watch.RaisedAlarm;
import sealspan.table.LedgerEntry;

/** The log of a data folder as commands use it, while its engine runs. */
public final class LogClient implements AutoCloseable {
  private final DataFolder folder;
  private final KafkaAddress address;
  private EventLog events;
  private Quarantine quarantine;

  private LogClient(DataFolder folder, KafkaAddress address) {
    this.folder = folder;
    this.address = address;
  }

  /** The log of the running engine. */
  public static LogClient of(DataFolder folder, EngineState engine) {
    ProgramLog.into(folder);
    return new LogClient(folder, new KafkaAddress(engine.kafka(), settings(folder)));
  }

  /** Settings of the user's cluster; none for a broker of ours. */
  static Map<String, String> settings(DataFolder folder) {
    Map<String, String> settings = new HashMap<>();
    Optional<Properties> cluster = KafkaChoice.of(folder);
    cluster.ifPresent(
        p -> p.stringPropertyNames().forEach(name -> settings.put(name, p.getProperty(name))));
    return settings;
  }

  /** The log of events; opened at its first use. */
  public synchronized EventLog events() {
    if (events == null) {
      events = new KafkaEventLog(address, folder.index());
    }
    return events;
  }

  /** The rows set aside; opened at its first use. */
  public synchronized Quarantine quarantine() {
    if (quarantine == null) {
      quarantine = new KafkaQuarantine(address, folder.index());
    }
    return quarantine;
  }

  /**
   * Notes in the ledger that an alarm is closed.
   *
   * @param alarmId its id
   * @param why why, in words
   * @param by id of who decided it
   */
  public void closeAlarm(String alarmId, String why, String by) {
    try (KafkaLedger ledger = new KafkaLedger(address, folder.index())) {
      String content = RaisedAlarm.closed(alarmId, why);
      ledger.append(
          List.of(new LedgerEntry(null, RaisedAlarm.CLOSED_KIND, content, Instant.now(), by)));
    }
  }

  @Override
  public synchronized void close() {
    if (events != null) {
      events.close();
    }
    if (quarantine != null) {
      quarantine.close();
    }
  }
}
