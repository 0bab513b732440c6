package sealspan.ingest.log;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * The jars of the broker's own JVM.
 *
 * @param entries jar files (or class folders), in class path order; never empty, and one of them is
 *     the Apache Kafka broker
 */
public record BrokerClassPath(List<Path> entries) {
  private static final String BROKER_JAR = "kafka_2.13-";

  /**
   * @throws LogException when no entry is the broker's jar
   */
  public BrokerClassPath {
    entries = List.copyOf(entries);
    if (entries.stream().noneMatch(BrokerClassPath::isBroker)) {
      throw new LogException(missing("the class path given, " + entries.size() + " entries"));
    }
  }

  /**
   * Every jar of a folder, by name.
   *
   * @throws LogException when the folder is missing, cannot be read or lacks the broker's jar
   */
  public static BrokerClassPath ofFolder(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      List<Path> jars =
          files
              .filter(f -> f.toString().endsWith(".jar"))
              .map(Path::toAbsolutePath)
              .sorted()
              .toList();
      if (jars.stream().noneMatch(BrokerClassPath::isBroker)) {
        throw new LogException(missing(folder.toString()));
      }
      return new BrokerClassPath(jars);
    } catch (IOException e) {
      throw new LogException(missing(folder.toString()), e);
    }
  }

  /** Whether a broker has laid the classes ready, so that the next ones start faster. */
  public boolean areReady() {
    return ReadyClasses.of(this).exist();
  }

  /** The class path in the form that {@code java -cp} takes. */
  String joined() {
    return String.join(File.pathSeparator, entries.stream().map(Path::toString).toList());
  }

  private static boolean isBroker(Path jar) {
    return jar.getFileName() != null && jar.getFileName().toString().startsWith(BROKER_JAR);
  }

  private static String missing(String where) {
    return "The jars of the Kafka broker are missing: no "
        + BROKER_JAR
        + "*.jar in "
        + where
        + ". Build the project again (mvn package), or use a broker of your own by its address.";
  }
}
