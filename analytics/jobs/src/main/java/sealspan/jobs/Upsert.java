package sealspan.jobs;

import static java.nio.charset.StandardCharsets.UTF_8;

import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.api.common.typeinfo.Types;
import sealspan.avro.TableCodec;
import sealspan.table.Bundle;

/** A bundle of rows on its way to a topic. */
public final class Upsert {
  static final TypeInformation<Upsert> TYPE = Types.POJO(Upsert.class);

  /** {@link Bundle#key()} in UTF-8. */
  public byte[] key;

  /** The bundle, by {@link TableCodec}. */
  public byte[] value;

  /** For Flink. */
  public Upsert() {}

  Upsert(Bundle bundle) {
    this.key = bundle.key().getBytes(UTF_8);
    this.value = TableCodec.encode(bundle);
  }
}
