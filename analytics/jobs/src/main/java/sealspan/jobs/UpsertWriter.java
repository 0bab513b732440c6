package sealspan.jobs;

import org.apache.flink.connector.kafka.sink.KafkaRecordSerializationSchema;
import org.apache.kafka.clients.producer.ProducerRecord;

/**
 * Bundles as records. The stream's own timestamps are left out: results at the end of a bounded job
 * carry one that Kafka refuses.
 */
final class UpsertWriter implements KafkaRecordSerializationSchema<Upsert> {
  private static final long serialVersionUID = 1L;

  private final String topic;

  UpsertWriter(String topic) {
    this.topic = topic;
  }

  @Override
  public ProducerRecord<byte[], byte[]> serialize(
      Upsert upsert, KafkaSinkContext context, Long timestamp) {
    return new ProducerRecord<>(topic, upsert.key, upsert.value);
  }
}
