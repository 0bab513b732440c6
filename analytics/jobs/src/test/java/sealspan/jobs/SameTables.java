package sealspan.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.Collection;
import java.util.HexFormat;
import java.util.Map;
import java.util.TreeMap;
import sealspan.avro.TableCodec;
import sealspan.table.Bundle;

/** Holds bundles equal byte for byte; only their revisions tell of how they came about. */
final class SameTables {
  private SameTables() {}

  static void assertSame(Collection<Bundle> expected, Map<String, Bundle> actual) {
    Map<String, Bundle> byKey = new TreeMap<>();
    expected.forEach(b -> byKey.put(b.key(), b));
    assertEquals(byKey.keySet(), actual.keySet());
    byKey.forEach(
        (key, bundle) ->
            assertEquals(withoutRevision(bundle), withoutRevision(actual.get(key)), key));
    assertEquals(bytes(byKey.values()), bytes(actual.values()));
  }

  /** The bytes of each bundle, by key. */
  static Map<String, String> bytes(Collection<Bundle> bundles) {
    Map<String, String> bytes = new TreeMap<>();
    for (Bundle b : bundles) {
      bytes.put(b.key(), HexFormat.of().formatHex(TableCodec.encode(withoutRevision(b))));
    }
    return bytes;
  }

  /** Rows of histories count their revisions as they come; those of a fit are its cut's. */
  private static Bundle withoutRevision(Bundle bundle) {
    if (bundle.key().startsWith("fit/")) {
      return bundle;
    }
    try {
      RecordComponent[] components = bundle.getClass().getRecordComponents();
      Object[] values = new Object[components.length];
      for (int i = 0; i < components.length; i++) {
        values[i] =
            components[i].getName().equals("revision")
                ? (Object) 0L
                : components[i].getAccessor().invoke(bundle);
      }
      Class<?>[] types =
          Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
      return (Bundle) bundle.getClass().getDeclaredConstructor(types).newInstance(values);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }
}
