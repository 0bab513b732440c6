package sealspan.avro;

import java.lang.invoke.LambdaMetafactory;
import java.lang.invoke.MethodHandle;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;
import java.lang.reflect.RecordComponent;
import java.util.function.Function;

/**
 * Reads one component of a record. At first by a method handle, which costs little to make; once it
 * is used often, by a small class of its own, which the compiler of the virtual machine sees
 * through: half of the time of writing rows went into the handles.
 *
 * <p>Threads may read at once: at worst two of them make the same small class.
 */
public final class FieldReader {
  private static final int OFTEN = 1_000;

  private final MethodHandle accessor;
  private final MethodHandle plain;
  private Function<Object, Object> fast;
  private int uses;

  private FieldReader(MethodHandle accessor) {
    this.accessor = accessor;
    this.plain = accessor.asType(MethodType.methodType(Object.class, Object.class));
  }

  /**
   * A reader of a component of a public record.
   *
   * @throws IllegalArgumentException when the record is not public
   */
  public static FieldReader of(RecordComponent component) {
    try {
      return new FieldReader(MethodHandles.lookup().unreflect(component.getAccessor()));
    } catch (IllegalAccessException e) {
      throw new IllegalArgumentException(
          "Not a component of a public record: " + component.getName(), e);
    }
  }

  /** The value of the component in a record of its class, boxed; null where it holds none. */
  public Object read(Object record) {
    Function<Object, Object> made = fast;
    if (made != null) {
      return made.apply(record);
    }
    try {
      if (++uses > OFTEN) {
        fast = make();
      }
      return (Object) plain.invokeExact(record);
    } catch (RuntimeException | Error e) {
      throw e;
    } catch (Throwable e) {
      throw new IllegalStateException("A record's own code failed.", e);
    }
  }

  @SuppressWarnings("unchecked")
  private Function<Object, Object> make() throws Throwable {
    return (Function<Object, Object>)
        LambdaMetafactory.metafactory(
                MethodHandles.lookup(),
                "apply",
                MethodType.methodType(Function.class),
                MethodType.methodType(Object.class, Object.class),
                accessor,
                accessor.type().wrap())
            .getTarget()
            .invokeExact();
  }
}
