package sealspan.jobs;

import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.connector.kafka.source.reader.deserializer.KafkaRecordDeserializationSchema;
import org.apache.flink.util.Collector;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import sealspan.avro.TableCodec;
import sealspan.study.watch.WatchModel;
import sealspan.table.LedgerEntry;

/** Records of the ledger that hold models of the watch; others are passed over. */
final class WatchModelReader implements KafkaRecordDeserializationSchema<Watched> {
  private static final long serialVersionUID = 1L;

  @Override
  public void deserialize(ConsumerRecord<byte[], byte[]> record, Collector<Watched> out) {
    LedgerEntry entry = TableCodec.decode(record.value(), LedgerEntry.class);
    if (entry.kind().equals(WatchModel.KIND)) {
      out.collect(new Watched(entry.id(), record.value(), Watched.What.MODEL));
    }
  }

  @Override
  public TypeInformation<Watched> getProducedType() {
    return Watched.TYPE;
  }
}
