package sealspan.jobs;

import org.apache.flink.api.common.typeinfo.PrimitiveArrayTypeInfo;
import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.connector.kafka.source.reader.deserializer.KafkaRecordDeserializationSchema;
import org.apache.flink.util.Collector;
import org.apache.kafka.clients.consumer.ConsumerRecord;

/** Records of the topic of fits, as they are. */
final class FitReader implements KafkaRecordDeserializationSchema<byte[]> {
  private static final long serialVersionUID = 1L;

  @Override
  public void deserialize(ConsumerRecord<byte[], byte[]> record, Collector<byte[]> out) {
    out.collect(record.value());
  }

  @Override
  public TypeInformation<byte[]> getProducedType() {
    return PrimitiveArrayTypeInfo.BYTE_PRIMITIVE_ARRAY_TYPE_INFO;
  }
}
