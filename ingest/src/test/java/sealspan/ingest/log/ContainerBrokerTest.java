package sealspan.ingest.log;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.apache.kafka.clients.admin.Admin;
import org.junit.jupiter.api.Test;
import org.testcontainers.kafka.KafkaContainer;

@BrokerImage.Needed
class ContainerBrokerTest {
  @Test
  void answers() throws Exception {
    try (KafkaContainer kafka = BrokerImage.container()) {
      kafka.start();
      try (Admin admin =
          Admin.create(Map.of("bootstrap.servers", (Object) kafka.getBootstrapServers()))) {
        assertEquals(1, admin.describeCluster().nodes().get().size());
      }
    }
  }
}
