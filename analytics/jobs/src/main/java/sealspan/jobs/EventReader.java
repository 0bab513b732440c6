package sealspan.jobs;

import static java.nio.charset.StandardCharsets.UTF_8;

import org.apache.flink.api.common.serialization.DeserializationSchema;
import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.connector.kafka.source.reader.deserializer.KafkaRecordDeserializationSchema;
import org.apache.flink.util.Collector;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.common.header.Header;
import sealspan.assembly.References;
import sealspan.avro.EventCodec;
import sealspan.event.EventHeaders;
import sealspan.event.LoggedEvent;
import sealspan.event.Subject;

/**
 * Records of the log as events, and after each whom it refers to, unless that was said before. A
 * record that is none stops the job: the log is the only truth, and to leave something of it out
 * unseen would be a wrong answer. Only what is needed here is read; what is damaged behind it stops
 * the job where the event is unpacked.
 */
final class EventReader implements KafkaRecordDeserializationSchema<Addressed> {
  private static final long serialVersionUID = 1L;

  /** So many references are remembered in at most 64 MB; the others are said again. */
  private static final int REMEMBERED_REFERENCES = 2_000_000;

  /** Who begins again, from a checkpoint or from the first record, begins with none. */
  private transient SeenPairs said;

  @Override
  public void open(DeserializationSchema.InitializationContext context) {
    said = new SeenPairs(REMEMBERED_REFERENCES);
  }

  @Override
  public void deserialize(ConsumerRecord<byte[], byte[]> record, Collector<Addressed> out) {
    LoggedEvent event;
    try {
      event = EventHeaders.read(name -> header(record, name), EventCodec.glance(record.value()));
    } catch (RuntimeException e) {
      throw new JobException(
          "The record of topic %s, partition %d, offset %d is no event of this program. %s"
              .formatted(record.topic(), record.partition(), record.offset(), e.getMessage()),
          e);
    }
    String subject = event.event().subject().key();
    out.collect(Addressed.event(subject, EventBytes.pack(event, record.value())));
    for (Subject referred : References.of(event.event())) {
      if (said.isNew(referred.key(), subject)) {
        out.collect(Addressed.reference(referred.key(), subject));
      }
    }
  }

  private static String header(ConsumerRecord<byte[], byte[]> record, String name) {
    Header header = record.headers().lastHeader(name);
    return header == null || header.value() == null ? null : new String(header.value(), UTF_8);
  }

  @Override
  public TypeInformation<Addressed> getProducedType() {
    return Addressed.TYPE;
  }
}
