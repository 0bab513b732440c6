package sealspan.app.engine;

import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.function.Consumer;
import sealspan.ingest.log.BrokerSettings;
import sealspan.ingest.log.KafkaAddress;
import sealspan.ingest.log.LocalBroker;

/** Where the log of a data folder is kept: a broker of ours that we run, or the user's cluster. */
final class LogHome implements AutoCloseable {
  private final LocalBroker broker;
  private final String address;
  private final Map<String, String> clientSettings;

  private LogHome(LocalBroker broker, String address, Map<String, String> clientSettings) {
    this.broker = broker;
    this.address = address;
    this.clientSettings = clientSettings;
  }

  /** Starts the broker, or notes the address of the user's cluster. */
  static LogHome open(DataFolder folder) {
    Optional<Properties> cluster = KafkaChoice.of(folder);
    if (cluster.isPresent()) {
      return new LogHome(null, KafkaChoice.address(cluster.get()), LogClient.settings(folder));
    }
    LocalBroker broker =
        LocalBroker.start(new BrokerSettings(folder.root(), Installation.brokerJars()));
    return new LogHome(broker, broker.bootstrapServers(), Map.of());
  }

  /** {@code HOST:PORT}, several with commas. */
  String address() {
    return address;
  }

  /** Where clients find it. */
  KafkaAddress kafka() {
    return new KafkaAddress(address, clientSettings);
  }

  /** Further settings of Kafka clients, such as those of security. */
  Map<String, String> clientSettings() {
    return clientSettings;
  }

  /** Why the broker of ours has gone away; empty while it runs, and with the user's cluster. */
  Optional<String> trouble() {
    return broker == null ? Optional.empty() : broker.trouble();
  }

  /** Tells at once when the broker of ours goes away by itself; never with the user's cluster. */
  void whenGone(Consumer<String> told) {
    if (broker != null) {
      broker.whenGone(told);
    }
  }

  @Override
  public void close() {
    if (broker != null) {
      broker.close();
    }
  }
}
