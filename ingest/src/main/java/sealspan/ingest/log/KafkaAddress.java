package sealspan.ingest.log;

import java.util.HashMap;
import java.util.Map;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;

/**
 * Where a Kafka cluster is.
 *
 * @param bootstrapServers {@code HOST:PORT}, several with commas
 * @param clientProperties further properties of Kafka's clients, such as those of its security
 */
public record KafkaAddress(String bootstrapServers, Map<String, String> clientProperties) {
  public KafkaAddress {
    if (bootstrapServers.isBlank()) {
      throw new LogException("No address of a Kafka broker was given: write HOST:PORT.");
    }
    clientProperties = Map.copyOf(clientProperties);
  }

  /** A cluster that asks for no security. */
  public KafkaAddress(String bootstrapServers) {
    this(bootstrapServers, Map.of());
  }

  /** The properties of a client; ours win, because the promises of the log rest on them. */
  Map<String, Object> clientProperties(Map<String, Object> ours) {
    Map<String, Object> all = new HashMap<>(clientProperties);
    all.putAll(ours);
    all.put("bootstrap.servers", bootstrapServers);
    return all;
  }

  /** A reader that starts where it is told to and leaves no mark of how far it came. */
  KafkaConsumer<byte[], byte[]> reader() {
    Map<String, Object> ours =
        Map.of(
            "enable.auto.commit",
            false,
            "auto.offset.reset",
            "none",
            "max.poll.records",
            5_000,
            "max.partition.fetch.bytes",
            4 << 20,
            "default.api.timeout.ms",
            30_000);
    return new KafkaConsumer<>(
        clientProperties(ours), new ByteArrayDeserializer(), new ByteArrayDeserializer());
  }
}
