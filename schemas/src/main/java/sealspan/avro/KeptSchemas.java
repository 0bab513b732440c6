package sealspan.avro;

import java.util.Map;
import java.util.TreeMap;
import org.apache.avro.Schema;
import org.apache.avro.SchemaNormalization;
import sealspan.event.AssemblyEvent;
import sealspan.table.LedgerEntry;
import sealspan.table.QuarantinedRow;

/** Every schema that a record of a topic kept for ever may be written with. */
public final class KeptSchemas {
  private KeptSchemas() {}

  /** The schemas as JSON, by a name that ends in the CRC-64-AVRO fingerprint in hex. */
  public static Map<String, String> all() {
    Map<String, String> all = new TreeMap<>();
    for (Class<?> event : AssemblyEvent.class.getPermittedSubclasses()) {
      add(all, EventCodec.schemaOf(event.asSubclass(AssemblyEvent.class)));
    }
    add(all, TableCodec.schemaOf(QuarantinedRow.class));
    add(all, TableCodec.schemaOf(LedgerEntry.class));
    PastSchemas.of("event").forEach(schema -> add(all, schema));
    PastSchemas.of("table").forEach(schema -> add(all, schema));
    return all;
  }

  private static void add(Map<String, String> all, Schema schema) {
    String fingerprint = "%016x".formatted(SchemaNormalization.parsingFingerprint64(schema));
    all.put(schema.getName() + "-" + fingerprint, schema.toString(true));
  }
}
