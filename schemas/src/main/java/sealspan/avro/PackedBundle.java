package sealspan.avro;

import org.apache.avro.io.Decoder;
import sealspan.table.Bundle;

/**
 * A bundle of which only the key and the revision were read. Its rows are still as they travelled:
 * whoever hands all of them on, value by value, needs no records of them.
 */
public final class PackedBundle {
  private final Bundle head;
  private final byte[] bytes;

  /**
   * Looks at what {@link TableCodec#encode(Bundle)} gave.
   *
   * @throws SingleObjectCodec.DamagedBytes where that is no bundle as far as it was looked at
   * @throws ClassCastException where it is a row that travels alone
   */
  public PackedBundle(byte[] bytes) {
    this.head = (Bundle) TableCodec.CODEC.glance(bytes);
    this.bytes = bytes;
  }

  /** Key of the bundle. */
  public String key() {
    return head.key();
  }

  /** Revision of the bundle. */
  public long revision() {
    return head.revision();
  }

  /** Class of the bundle. */
  public Class<? extends Bundle> type() {
    return head.getClass();
  }

  /**
   * The values of the bundle from the first on, in the order of its record and as {@link
   * TableCodec#schemaOf} says.
   *
   * @throws SingleObjectCodec.DamagedBytes where they are in another order, as an earlier version
   *     wrote them
   */
  public Decoder values() {
    return TableCodec.CODEC.values(bytes);
  }
}
