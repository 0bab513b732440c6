package sealspan.app.cli;

import java.nio.file.Path;
import picocli.CommandLine.Option;
import sealspan.app.engine.DataFolder;
import sealspan.app.engine.KafkaChoice;

/** Where a data folder that is begun keeps its log. */
final class KafkaOptions {
  @Option(
      names = "--kafka",
      paramLabel = "HOST:PORT",
      description =
          "use this Kafka cluster for the log instead of a broker of our own; remembered by the"
              + " data folder. The word 'local' goes back to a broker of our own")
  private String address;

  @Option(
      names = {"--kafka-properties", "--kafka-config"},
      paramLabel = "FILE",
      description =
          "settings of Kafka's clients for that cluster, such as TLS and SASL, as a properties file;"
              + " every client of the program gets them")
  private Path settings;

  /** Writes down what was given. */
  void remember(DataFolder folder) {
    if (address != null || settings != null) {
      KafkaChoice.remember(folder, address, settings);
    }
  }
}
