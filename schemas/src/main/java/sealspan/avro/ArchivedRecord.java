package sealspan.avro;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * A record of a topic exactly as Kafka keeps it, so that it can be put back byte for byte.
 *
 * @param partition from 0
 * @param offset its place in the partition, from 0
 * @param timestampMillis recorded time, milliseconds since 1970 in UTC
 * @param key the bytes of the key; null where there is none
 * @param value the bytes of the value; null where there is none
 * @param headers in the order in which they stand
 */
public record ArchivedRecord(
    int partition,
    long offset,
    long timestampMillis,
    byte[] key,
    byte[] value,
    List<Header> headers) {

  public ArchivedRecord {
    headers = List.copyOf(headers);
  }

  /**
   * A header of a record.
   *
   * @param name of the header
   * @param value its bytes; null where there are none
   */
  public record Header(String name, byte[] value) {
    @Override
    public boolean equals(Object other) {
      return other instanceof Header h && name.equals(h.name) && Arrays.equals(value, h.value);
    }

    @Override
    public int hashCode() {
      return Objects.hash(name, Arrays.hashCode(value));
    }
  }

  /** Whether two records are the same wherever they stand. */
  public boolean isSameContent(ArchivedRecord other) {
    return timestampMillis == other.timestampMillis
        && Arrays.equals(key, other.key)
        && Arrays.equals(value, other.value)
        && headers.equals(other.headers);
  }

  @Override
  public boolean equals(Object o) {
    return o instanceof ArchivedRecord other
        && partition == other.partition
        && offset == other.offset
        && isSameContent(other);
  }

  @Override
  public int hashCode() {
    return Objects.hash(partition, offset, timestampMillis);
  }
}
