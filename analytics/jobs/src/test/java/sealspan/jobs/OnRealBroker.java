package sealspan.jobs;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import sealspan.assembly.AcceptanceCriteria;

/** What tests of jobs share: one real broker for a class, whose log is empty before each test. */
abstract class OnRealBroker {
  static final AcceptanceCriteria CRITERIA = AcceptanceCriteria.shipped();

  @TempDir static Path brokerFolder;
  static LogUnderTest log;

  @TempDir Path folder;

  @BeforeAll
  static void startBroker() {
    log = new LogUnderTest(brokerFolder);
  }

  @AfterAll
  static void stopBroker() {
    log.close();
  }

  @BeforeEach
  void beginAnew() {
    log.beginAnew();
  }
}
