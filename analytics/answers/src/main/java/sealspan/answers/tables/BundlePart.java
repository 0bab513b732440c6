package sealspan.answers.tables;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.List;
import org.apache.avro.Schema;
import sealspan.avro.FieldReader;
import sealspan.avro.TableCodec;

/**
 * A component of a bundle.
 *
 * @param rowClass record class of the rows that it holds; null where it is no row
 * @param list whether it is a list of rows, rather than one that may be absent
 * @param schema how it is packed
 * @param reader reads it from a bundle
 */
record BundlePart(
    Class<? extends Record> rowClass, boolean list, Schema schema, FieldReader reader) {

  /** The parts of a class of bundles, in the order in which they are packed. */
  static List<BundlePart> of(Class<?> bundle) {
    List<Schema.Field> fields = TableCodec.schemaOf(bundle.asSubclass(Record.class)).getFields();
    RecordComponent[] components = bundle.getRecordComponents();
    List<BundlePart> parts = new ArrayList<>();
    for (int i = 0; i < components.length; i++) {
      Type type = components[i].getGenericType();
      boolean list = type instanceof ParameterizedType;
      Class<?> element =
          (Class<?>) (list ? ((ParameterizedType) type).getActualTypeArguments()[0] : type);
      parts.add(
          new BundlePart(
              element.isRecord() ? element.asSubclass(Record.class) : null,
              list,
              fields.get(i).schema(),
              FieldReader.of(components[i])));
    }
    return List.copyOf(parts);
  }
}
