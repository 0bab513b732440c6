package sealspan.answers.writer;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Objects;
import sealspan.table.ResultTopics;

/**
 * What the writer reads and where it publishes.
 *
 * @param dataFolder data folder; the answers lie in it
 * @param bootstrapServers address of the log, {@code HOST:PORT}
 * @param generation name of the build of results: letters, digits, dots, dashes and underscores;
 *     its rows are the topic {@code sealspan.rows.GENERATION}, its progress the consumer group
 *     {@code sealspan.histories.GENERATION}
 * @param codeVersion version of the program, published with every snapshot
 * @param publishInterval shortest time between two snapshots
 * @param clientProperties further properties of the Kafka clients, such as those of TLS
 */
public record WriterSettings(
    Path dataFolder,
    String bootstrapServers,
    String generation,
    String codeVersion,
    Duration publishInterval,
    Map<String, String> clientProperties) {

  public WriterSettings {
    Objects.requireNonNull(dataFolder, "dataFolder");
    Objects.requireNonNull(bootstrapServers, "bootstrapServers");
    Objects.requireNonNull(codeVersion, "codeVersion");
    if (!generation.matches("[A-Za-z0-9._-]{1,100}")) {
      throw new IllegalArgumentException(
          "A generation is named by letters, digits, dots, dashes and underscores, not "
              + generation);
    }
    clientProperties = Map.copyOf(clientProperties);
  }

  /** At most one snapshot a second, plain clients. */
  public WriterSettings(
      Path dataFolder, String bootstrapServers, String generation, String codeVersion) {
    this(dataFolder, bootstrapServers, generation, codeVersion, Duration.ofSeconds(1), Map.of());
  }

  String rowsTopic() {
    return ResultTopics.rows(generation);
  }

  String historiesGroup() {
    return ResultTopics.historiesGroup(generation);
  }
}
