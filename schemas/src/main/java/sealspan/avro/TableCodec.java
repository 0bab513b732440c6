package sealspan.avro;

import java.util.List;
import java.util.Set;
import org.apache.avro.Schema;
import sealspan.table.AssemblyRows;
import sealspan.table.Bundle;
import sealspan.table.FitRows;
import sealspan.table.FoulingRows;
import sealspan.table.LedgerEntry;
import sealspan.table.QuarantinedRow;
import sealspan.table.WatchRows;
import sealspan.table.ZoneRows;

/**
 * Result rows, quarantined rows and ledger entries to and from bytes. Results are disposable; the
 * quarantine and the ledger are kept for ever, so the past schemas of those two are kept too.
 */
public final class TableCodec {
  /** What travels on result, quarantine and ledger topics. */
  public static final List<Class<? extends Record>> TYPES =
      List.of(
          AssemblyRows.class,
          ZoneRows.class,
          FitRows.class,
          FoulingRows.class,
          WatchRows.class,
          QuarantinedRow.class,
          LedgerEntry.class);

  /** What a glance at a bundle reads: what its key is made of. The revision is never absent. */
  private static final Set<String> KEYS = Set.of("assemblyId", "zoneId", "stratum", "scope");

  static final SingleObjectCodec CODEC =
      new SingleObjectCodec(TYPES, PastSchemas.of("table"), KEYS);

  private TableCodec() {}

  /** The bytes of a bundle, in Avro single-object encoding. */
  public static byte[] encode(Bundle bundle) {
    return CODEC.encode(bundle);
  }

  /** The bytes of a quarantined row. */
  public static byte[] encode(QuarantinedRow row) {
    return CODEC.encode(row);
  }

  /** The bytes of a ledger entry. */
  public static byte[] encode(LedgerEntry entry) {
    return CODEC.encode(entry);
  }

  /** Reads what one of the encoders wrote. */
  public static <T> T decode(byte[] bytes, Class<T> type) {
    return type.cast(CODEC.decode(bytes));
  }

  /** The schema of a table's row or of a bundle. */
  public static Schema schemaOf(Class<? extends Record> type) {
    return RecordShape.of(type).schema();
  }
}
