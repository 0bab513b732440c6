package sealspan.answers.writer;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.ConsumerRecords;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.header.Header;
import sealspan.answers.AnswersException;
import sealspan.avro.EventCodec;
import sealspan.avro.PackedBundle;
import sealspan.avro.SingleObjectCodec;
import sealspan.avro.TableCodec;
import sealspan.event.EventHeaders;
import sealspan.event.LoggedEvent;
import sealspan.event.Topics;
import sealspan.table.LedgerEntry;
import sealspan.table.QuarantinedRow;

/** What the records of the topics say. */
final class RecordReader {
  private RecordReader() {}

  /**
   * Adds records to a batch, in their order. Of bundles and events only what tells where they
   * belong is read, side by side.
   *
   * @throws AnswersException where that is damaged, or of a newer version
   */
  static void read(ConsumerRecords<byte[], byte[]> records, Batch batch) {
    List<ConsumerRecord<byte[], byte[]>> all = new ArrayList<>(records.count());
    records.forEach(all::add);
    List<Consumer<Batch>> unpacked = all.parallelStream().map(RecordReader::unpack).toList();
    unpacked.forEach(content -> content.accept(batch));
    for (ConsumerRecord<byte[], byte[]> record : all) {
      batch.read(
          new TopicPartition(record.topic(), record.partition()),
          record.offset(),
          record.serializedValueSize());
    }
  }

  private static Consumer<Batch> unpack(ConsumerRecord<byte[], byte[]> record) {
    try {
      if (record.topic().equals(Topics.EVENTS)) {
        EventRow event = event(record);
        return batch -> batch.add(event);
      }
      Upsert upsert =
          switch (record.topic()) {
            case Topics.QUARANTINE ->
                Upsert.of(TableCodec.decode(record.value(), QuarantinedRow.class));
            case Topics.LEDGER -> Upsert.of(TableCodec.decode(record.value(), LedgerEntry.class));
            default -> Upsert.of(new PackedBundle(record.value()));
          };
      return batch -> batch.add(upsert);
    } catch (SingleObjectCodec.DamagedBytes | IllegalArgumentException | ClassCastException e) {
      throw new AnswersException(
          "The record at offset %d of %s-%d cannot be read: %s"
                  .formatted(record.offset(), record.topic(), record.partition(), e.getMessage())
              + " Use the version of the program that wrote it, or a newer one; results alone are"
              + " made anew by a rebuild.",
          e);
    }
  }

  private static EventRow event(ConsumerRecord<byte[], byte[]> record) {
    LoggedEvent event =
        EventHeaders.read(
            name -> {
              Header header = record.headers().lastHeader(name);
              return header == null ? null : new String(header.value(), StandardCharsets.UTF_8);
            },
            EventCodec.glance(record.value()));
    return new EventRow(record.partition(), record.offset(), event, record.value());
  }
}
