package sealspan.avro;

/**
 * Limits of what Avro's decoders take a damaged length for: without them a few changed bytes ask
 * for gigabytes. No record of ours comes near.
 */
final class ReadLimits {
  private static final String LARGEST = Integer.toString(64 << 20);

  private ReadLimits() {}

  /** Has to be called before Avro reads its first byte; limits that a user set stay. */
  static void hold() {
    for (String of : new String[] {"bytes", "string", "collectionItems"}) {
      String name = "org.apache.avro.limits." + of + ".maxLength";
      if (System.getProperty(name) == null) {
        System.setProperty(name, LARGEST);
      }
    }
  }
}
