package sealspan.ingest.log;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.tools.attach.VirtualMachine;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import javax.management.JMException;
import javax.management.MBeanServerConnection;
import javax.management.ObjectName;
import javax.management.remote.JMXConnector;
import javax.management.remote.JMXConnectorFactory;
import javax.management.remote.JMXServiceURL;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A killed process loses nothing of what it wrote, because the operating system keeps it; a machine
 * that loses power does. So that an append is on the disk is shown by the broker's own count of
 * flushes.
 */
@Timeout(value = 2, unit = TimeUnit.MINUTES)
class FlushTest {
  private static final int APPENDS = 200;

  @TempDir Path folder;

  @Test
  void everyAcknowledgedAppendWasFlushed() throws Exception {
    try (LocalBroker broker =
            LocalBroker.start(new BrokerSettings(folder.resolve("data"), LocalBrokerTest.JARS));
        EventLog log =
            new KafkaEventLog(
                new KafkaAddress(broker.bootstrapServers()), folder.resolve("index"))) {
      log.append(SampleEvents.rounds(0, 1));
      try (JMXConnector connector = JMXConnectorFactory.connect(beansOf(broker))) {
        MBeanServerConnection beans = connector.getMBeanServerConnection();
        long before = flushes(beans);
        long began = System.nanoTime();
        for (int i = 1; i <= APPENDS; i++) {
          log.append(SampleEvents.rounds(i, i + 1));
        }
        long took = System.nanoTime() - began;
        long flushed = flushes(beans) - before;
        TimeUnit.NANOSECONDS.sleep(took);
        long idle = flushes(beans) - before - flushed;
        String found = APPENDS + " appends, " + flushed + " flushes; " + idle + " without appends";
        assertTrue(flushed >= APPENDS, found);
        assertTrue(idle < APPENDS / 2, found);
      }
    }
  }

  private static JMXServiceURL beansOf(LocalBroker broker) throws Exception {
    VirtualMachine machine = VirtualMachine.attach(Long.toString(broker.state().pid()));
    try {
      return new JMXServiceURL(machine.startLocalManagementAgent());
    } finally {
      machine.detach();
    }
  }

  /** Kafka documents the metric kafka.log:type=LogFlushStats,name=LogFlushRateAndTimeMs. */
  private static long flushes(MBeanServerConnection beans) throws IOException, JMException {
    ObjectName name = new ObjectName("kafka.log:type=LogFlushStats,name=LogFlushRateAndTimeMs");
    return ((Number) beans.getAttribute(name, "Count")).longValue();
  }
}
