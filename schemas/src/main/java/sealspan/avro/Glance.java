package sealspan.avro;

import java.io.IOException;
import java.util.Set;
import org.apache.avro.JsonProperties;
import org.apache.avro.Schema;
import org.apache.avro.io.Decoder;

/**
 * Reads some fields of a record and goes past the others, which are then as if they had not been
 * recorded. What comes after the last of them is not looked at.
 */
final class Glance {
  private final RecordShape shape;
  private final Object[] absent;
  private final boolean[] wanted;
  private final int end;

  /**
   * A glance at records of a shape.
   *
   * @param names names of the fields that are read, where the record has them; what may not be
   *     absent is read too
   */
  Glance(RecordShape shape, Set<String> names) {
    this.shape = shape;
    int fields = shape.schema().getFields().size();
    absent = new Object[fields];
    wanted = new boolean[fields];
    int last = -1;
    for (Schema.Field field : shape.schema().getFields()) {
      int i = field.pos();
      Object without = shape.field(i).absent();
      absent[i] = without == JsonProperties.NULL_VALUE ? null : without;
      wanted[i] = without == null || names.contains(field.name());
      last = wanted[i] ? i : last;
    }
    end = last + 1;
  }

  /** Reads a record from a decoder of its present schema. */
  Object read(Decoder in) throws IOException {
    Object[] values = absent.clone();
    for (int i = 0; i < end; i++) {
      if (wanted[i]) {
        values[i] = shape.field(i).read(in);
      } else {
        shape.field(i).skip(in);
      }
    }
    return shape.build(values);
  }
}
