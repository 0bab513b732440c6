package sealspan.ingest.log;

import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.testcontainers.kafka.KafkaContainer;

/** The log on a broker that this program did not start, in a container. */
@BrokerImage.Needed
class ContainerLogTest extends KafkaLogContract {
  private static KafkaContainer kafka;

  @BeforeAll
  static void start() {
    kafka = BrokerImage.container();
    kafka.start();
  }

  @AfterAll
  static void stop() {
    kafka.stop();
  }

  @Override
  String bootstrapServers() {
    return kafka.getBootstrapServers();
  }
}
