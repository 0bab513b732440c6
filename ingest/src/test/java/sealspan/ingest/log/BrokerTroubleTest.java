package sealspan.ingest.log;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BrokerTroubleTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          java.io.IOException: No space left on device | is full
          java.nio.file.FileSystemException: /d/log: Read-only file system | may not write
          Failed to acquire lock on file .lock in /d/log | Another broker already uses
          java.net.BindException: Address already in use | port of the broker was taken
          Error: Could not find or load main class kafka.Kafka, ClassNotFoundException | A jar
          Terminating due to java.lang.OutOfMemoryError: Java heap space | out of memory
          something unheard of | stopped by itself
          """)
  void turnsWhatTheBrokerWroteIntoWordsAndShowsIt(String line, String words) {
    String text = BrokerTrouble.explain(List.of(line), Path.of("/d"), Path.of("/d/broker"));
    assertTrue(text.contains(words), text);
    assertTrue(text.contains(line), text);
    assertTrue(text.contains("/d/broker"), text);
  }

  @org.junit.jupiter.api.Test
  void saysWhenItWroteNothing() {
    String text = BrokerTrouble.explain(List.of(), Path.of("/d"), Path.of("/d/broker"));
    assertTrue(text.contains("It wrote nothing"), text);
  }
}
