package sealspan.ingest.log;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Objects;
import java.util.OptionalInt;

/**
 * How a local broker is to be started.
 *
 * @param dataFolder folder of one log; made when missing
 * @param classPath jars of the broker
 * @param port where clients connect, 1 to 65535; empty for the port that a killed broker left free,
 *     else any free port
 * @param heapMegabytes largest heap of the broker's JVM, at least 128
 * @param startLimit how long to wait until it answers
 */
public record BrokerSettings(
    Path dataFolder,
    BrokerClassPath classPath,
    OptionalInt port,
    int heapMegabytes,
    Duration startLimit) {

  public BrokerSettings {
    Objects.requireNonNull(dataFolder);
    Objects.requireNonNull(classPath);
    port.ifPresent(
        p -> {
          if (p < 1 || p > 65_535) {
            throw new LogException("Port " + p + " is not a port number: use 1 to 65535.");
          }
        });
    if (heapMegabytes < 128) {
      throw new LogException("The broker needs a heap of at least 128 MB, not " + heapMegabytes);
    }
  }

  /** Any free port, 256 MB of heap, two minutes to answer. */
  public BrokerSettings(Path dataFolder, BrokerClassPath classPath) {
    this(dataFolder, classPath, OptionalInt.empty(), 256, Duration.ofMinutes(2));
  }

  public BrokerSettings withPort(int p) {
    return new BrokerSettings(dataFolder, classPath, OptionalInt.of(p), heapMegabytes, startLimit);
  }
}
