package sealspan.jobs;

import java.util.Map;
import java.util.Objects;
import java.util.Properties;
import sealspan.assembly.AcceptanceCriteria;

/**
 * What a job reads and writes, and how.
 *
 * @param bootstrapServers address of the log, {@code HOST:PORT}, several with commas
 * @param clientProperties further properties of the Kafka clients, such as those of TLS
 * @param generation name of the build of results: letters, digits, dots, dashes and underscores
 * @param codeVersion version of the program; state of another version is not resumed from
 * @param criteria the limits in force; other limits need another generation
 * @param parallelism tasks side by side, 1 or more
 */
public record JobSettings(
    String bootstrapServers,
    Map<String, String> clientProperties,
    String generation,
    String codeVersion,
    AcceptanceCriteria criteria,
    int parallelism) {

  public JobSettings {
    Objects.requireNonNull(bootstrapServers, "bootstrapServers");
    Objects.requireNonNull(codeVersion, "codeVersion");
    Objects.requireNonNull(criteria, "criteria");
    clientProperties = Map.copyOf(clientProperties);
    if (!generation.matches("[A-Za-z0-9._-]{1,100}")) {
      throw new IllegalArgumentException(
          "A generation is named by letters, digits, dots, dashes and underscores, not "
              + generation);
    }
    if (parallelism < 1) {
      throw new IllegalArgumentException("The parallelism is 1 or more, not " + parallelism);
    }
  }

  /** The properties that every Kafka client of a job gets. */
  Properties clients() {
    Properties properties = new Properties();
    properties.putAll(clientProperties);
    properties.setProperty("bootstrap.servers", bootstrapServers);
    return properties;
  }
}
