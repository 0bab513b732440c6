package sealspan.jobs;

import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.connector.kafka.source.reader.deserializer.KafkaRecordDeserializationSchema;
import org.apache.flink.util.Collector;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import sealspan.avro.TableCodec;
import sealspan.event.Subject;
import sealspan.study.IssuedForecast;
import sealspan.table.LedgerEntry;

/** Records of the ledger as the forecasts that they hold; others are passed over. */
final class ForecastReader implements KafkaRecordDeserializationSchema<Addressed> {
  private static final long serialVersionUID = 1L;

  @Override
  public void deserialize(ConsumerRecord<byte[], byte[]> record, Collector<Addressed> out) {
    LedgerEntry entry = TableCodec.decode(record.value(), LedgerEntry.class);
    if (!entry.kind().equals(IssuedForecast.KIND)) {
      return;
    }
    for (IssuedForecast forecast : IssuedForecast.of(entry)) {
      out.collect(
          Addressed.forecast(
              Subject.assembly(forecast.assemblyId()).key(), TableCodec.encode(forecast.alone())));
    }
  }

  /** Reads back what travels of one forecast. */
  static IssuedForecast unpack(byte[] packed) {
    return IssuedForecast.of(TableCodec.decode(packed, LedgerEntry.class)).get(0);
  }

  @Override
  public TypeInformation<Addressed> getProducedType() {
    return Addressed.TYPE;
  }
}
