package sealspan.answers.writer;

import java.nio.charset.StandardCharsets;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.header.Header;
import sealspan.answers.AnswersException;
import sealspan.avro.EventCodec;
import sealspan.avro.SingleObjectCodec;
import sealspan.avro.TableCodec;
import sealspan.event.EventHeaders;
import sealspan.event.LoggedEvent;
import sealspan.event.Topics;
import sealspan.table.Bundle;
import sealspan.table.LedgerEntry;
import sealspan.table.QuarantinedRow;

/** What the records of the topics say. */
final class RecordReader {
  private RecordReader() {}

  /**
   * Adds a record to a batch.
   *
   * @throws AnswersException where the record is damaged, or of a newer version
   */
  static void read(ConsumerRecord<byte[], byte[]> record, Batch batch) {
    try {
      switch (record.topic()) {
        case Topics.EVENTS -> batch.add(event(record));
        case Topics.QUARANTINE ->
            batch.add(Upsert.of(TableCodec.decode(record.value(), QuarantinedRow.class)));
        case Topics.LEDGER ->
            batch.add(Upsert.of(TableCodec.decode(record.value(), LedgerEntry.class)));
        default -> batch.add(Upsert.of(TableCodec.decode(record.value(), Bundle.class)));
      }
    } catch (SingleObjectCodec.DamagedBytes | IllegalArgumentException | ClassCastException e) {
      throw new AnswersException(
          "The record at offset %d of %s-%d cannot be read: %s"
                  .formatted(record.offset(), record.topic(), record.partition(), e.getMessage())
              + " Use the version of the program that wrote it, or a newer one; results alone are"
              + " made anew by a rebuild.",
          e);
    }
    batch.read(
        new TopicPartition(record.topic(), record.partition()),
        record.offset(),
        record.serializedValueSize());
  }

  private static EventRow event(ConsumerRecord<byte[], byte[]> record) {
    LoggedEvent event =
        EventHeaders.read(
            name -> {
              Header header = record.headers().lastHeader(name);
              return header == null ? null : new String(header.value(), StandardCharsets.UTF_8);
            },
            EventCodec.decode(record.value()));
    return new EventRow(record.partition(), record.offset(), event, record.value());
  }
}
