package sealspan.avro;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import sealspan.event.AssemblyEvent;
import sealspan.event.Quantity;
import sealspan.event.VisitAttempted;

/** Records of any class with seeded content, some fields not recorded. */
public final class AnyRecord {
  private final Random random;
  private final double absentShare;
  private final int distinctTexts;

  /** Every field is filled where {@code absentShare} is 0. */
  public AnyRecord(long seed, double absentShare) {
    this(seed, absentShare, 1000);
  }

  /** With few distinct texts, ids collide and records refer to one another. */
  public AnyRecord(long seed, double absentShare, int distinctTexts) {
    this.random = new Random(seed);
    this.absentShare = absentShare;
    this.distinctTexts = distinctTexts;
  }

  /** A record of a class. */
  public <T> T of(Class<T> type) {
    for (int attempt = 0; attempt < 10_000; attempt++) {
      try {
        return type.cast(build(type));
      } catch (IllegalArgumentException e) {
        continue; // A combination that the record refuses: draw again.
      }
    }
    throw new IllegalStateException("No " + type + " could be made.");
  }

  private Object build(Class<?> type) {
    RecordComponent[] components = type.getRecordComponents();
    Class<?>[] types =
        Arrays.stream(components).map(RecordComponent::getType).toArray(Class[]::new);
    Object[] values = Arrays.stream(components).map(c -> value(type, c.getGenericType())).toArray();
    try {
      var constructor = type.getDeclaredConstructor(types);
      constructor.setAccessible(true);
      return constructor.newInstance(values);
    } catch (InvocationTargetException e) {
      throw new IllegalArgumentException(e.getCause());
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }

  private Object value(Class<?> owner, Type type) {
    if (type instanceof ParameterizedType list) {
      List<Object> items = new ArrayList<>();
      for (int i = 0; i < 2; i++) {
        items.add(present(owner, (Class<?>) list.getActualTypeArguments()[0]));
      }
      return items;
    }
    Class<?> c = (Class<?>) type;
    return !c.isPrimitive() && random.nextDouble() < absentShare ? null : present(owner, c);
  }

  private Object present(Class<?> owner, Class<?> c) {
    if (c == String.class) {
      return owner == Quantity.class
          ? "1." + random.nextInt(100)
          : "Düse " + random.nextInt(distinctTexts);
    }
    if (c == int.class || c == Integer.class) {
      return random.nextInt(1440);
    }
    if (c == long.class || c == Long.class) {
      return random.nextLong();
    }
    if (c == double.class || c == Double.class) {
      return random.nextDouble();
    }
    if (c == boolean.class || c == Boolean.class) {
      return random.nextBoolean();
    }
    if (c == LocalDate.class) {
      return LocalDate.ofEpochDay(10_000 + random.nextInt(10_000));
    }
    if (c == Instant.class) {
      return Instant.ofEpochMilli(random.nextInt());
    }
    if (c == AssemblyEvent.class) {
      return of(VisitAttempted.class);
    }
    return c.isEnum() ? c.getEnumConstants()[random.nextInt(c.getEnumConstants().length)] : of(c);
  }
}
