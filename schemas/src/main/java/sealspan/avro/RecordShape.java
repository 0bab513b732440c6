package sealspan.avro;

import java.io.IOException;
import java.lang.invoke.MethodHandle;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;
import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.avro.Schema;
import org.apache.avro.io.Decoder;
import org.apache.avro.io.Encoder;
import org.apache.avro.io.ResolvingDecoder;
import sealspan.event.Means;

/**
 * How a Java record is written as an Avro record: field by field, in order, under the same names. A
 * reference may be absent ({@code null}); a primitive and a list may not.
 */
public final class RecordShape implements ValueShape {
  private static final Map<Class<?>, RecordShape> KNOWN = new ConcurrentHashMap<>();

  private final Schema schema;
  private final List<ValueShape> fields = new ArrayList<>();
  private final List<FieldReader> accessors = new ArrayList<>();
  private final List<String> labels = new ArrayList<>();
  private final MethodHandle constructor;

  /** The shape of a record class; classes are looked at once. */
  public static RecordShape of(Class<?> type) {
    RecordShape known = KNOWN.get(type);
    if (known == null) {
      known = new RecordShape(type);
      KNOWN.put(type, known);
    }
    return known;
  }

  private RecordShape(Class<?> type) {
    if (!type.isRecord()) {
      throw new IllegalArgumentException(type.getName() + " is not a record.");
    }
    RecordComponent[] components = type.getRecordComponents();
    List<Schema.Field> schemaFields = new ArrayList<>();
    try {
      MethodHandles.Lookup lookup = MethodHandles.lookup();
      Class<?>[] types =
          Arrays.stream(components).map(RecordComponent::getType).toArray(Class[]::new);
      Constructor<?> canonical = type.getDeclaredConstructor(types);
      constructor =
          lookup
              .unreflectConstructor(canonical)
              .asSpreader(Object[].class, components.length)
              .asType(MethodType.methodType(Object.class, Object[].class));
      for (RecordComponent component : components) {
        ValueShape shape = ValueShape.of(component.getGenericType());
        fields.add(shape);
        accessors.add(FieldReader.of(component));
        labels.add(component.getName() + "=");
        schemaFields.add(field(component, shape));
      }
    } catch (ReflectiveOperationException e) {
      throw new IllegalArgumentException(type.getName() + " cannot be read as a record.", e);
    }
    schema = Schema.createRecord(nameOf(type), null, type.getPackageName(), false, schemaFields);
  }

  private static Schema.Field field(RecordComponent component, ValueShape shape) {
    Means means = component.getAnnotation(Means.class);
    return new Schema.Field(
        component.getName(), shape.schema(), means == null ? null : means.value(), shape.absent());
  }

  /** The Avro name of a class: that of its enclosing class before its own. */
  static String nameOf(Class<?> type) {
    Class<?> outer = type.getEnclosingClass();
    return outer == null ? type.getSimpleName() : nameOf(outer) + type.getSimpleName();
  }

  @Override
  public Schema schema() {
    return schema;
  }

  @Override
  public Object absent() {
    return null;
  }

  @Override
  public void write(Object record, Encoder out) throws IOException {
    for (int i = 0; i < fields.size(); i++) {
      fields.get(i).write(accessors.get(i).read(record), out);
    }
  }

  @Override
  public Object read(Decoder in) throws IOException {
    Object[] values = new Object[fields.size()];
    if (in instanceof ResolvingDecoder resolving) {
      for (Schema.Field field : resolving.readFieldOrder()) {
        values[field.pos()] = fields.get(field.pos()).read(in);
      }
    } else {
      for (int i = 0; i < values.length; i++) {
        values[i] = fields.get(i).read(in);
      }
    }
    return build(values);
  }

  @Override
  public void skip(Decoder in) throws IOException {
    for (ValueShape field : fields) {
      field.skip(in);
    }
  }

  /** The shape of a field. */
  ValueShape field(int place) {
    return fields.get(place);
  }

  @Override
  public void text(Object record, StringBuilder out) {
    out.append(schema.getName()).append('{');
    for (int i = 0; i < fields.size(); i++) {
      Object value = accessors.get(i).read(record);
      if (value != null && !(value instanceof List<?> list && list.isEmpty())) {
        out.append(labels.get(i));
        fields.get(i).text(value, out);
        out.append(';');
      }
    }
    out.append('}');
  }

  /** A record of the values of all fields, in order. */
  Object build(Object[] values) {
    try {
      return (Object) constructor.invokeExact(values);
    } catch (RuntimeException | Error e) {
      throw e;
    } catch (Throwable e) {
      throw new IllegalStateException("A record's own code failed.", e);
    }
  }
}
