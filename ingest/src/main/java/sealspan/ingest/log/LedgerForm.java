package sealspan.ingest.log;

import java.time.Instant;
import java.util.function.UnaryOperator;
import sealspan.avro.TableCodec;
import sealspan.event.Topics;
import sealspan.table.LedgerEntry;

/** Ledger entries: the id follows from kind and content; one partition, so one order. */
final class LedgerForm extends ContentNamedForm<LedgerEntry> {
  @Override
  public String topic() {
    return Topics.LEDGER;
  }

  @Override
  public int partitions() {
    return 1;
  }

  @Override
  public LedgerEntry stored(LedgerEntry e, Instant recordedAt) {
    String id = ContentId.of(e.kind(), e.content());
    return new LedgerEntry(id, e.kind(), e.content(), e.decidedAt(), e.by());
  }

  @Override
  public String id(LedgerEntry e) {
    return e.id();
  }

  @Override
  public byte[] value(LedgerEntry e) {
    return TableCodec.encode(e);
  }

  @Override
  public LedgerEntry read(byte[] value, UnaryOperator<String> header) {
    return TableCodec.decode(value, LedgerEntry.class);
  }
}
