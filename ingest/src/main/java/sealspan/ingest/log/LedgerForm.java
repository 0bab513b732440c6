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
  public LedgerEntry named(LedgerEntry e) {
    String id = ContentId.of(e.kind(), e.content());
    return new LedgerEntry(id, e.kind(), e.content(), e.decidedAt(), e.by());
  }

  @Override
  public String id(LedgerEntry e) {
    return e.id();
  }

  /** When something was decided is for the entry to say. */
  @Override
  public LedgerEntry stored(LedgerEntry e, Instant recordedAt) {
    return e;
  }

  @Override
  public byte[] value(LedgerEntry e, byte[] content, Instant recordedAt) {
    return TableCodec.encode(e);
  }

  @Override
  public LedgerEntry read(byte[] value, UnaryOperator<String> header) {
    return TableCodec.decode(value, LedgerEntry.class);
  }
}
