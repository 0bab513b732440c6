package sealspan.app.engine;

import java.nio.file.Files;
import java.nio.file.Path;
import sealspan.app.Problem;
import sealspan.ingest.log.BrokerClassPath;
import sealspan.ingest.log.BrokerSettings;
import sealspan.ingest.log.LocalBroker;

/** Where the program itself lies; its launcher says so. */
public final class Installation {
  /** System property: the top folder of the project. */
  public static final String HOME = "sealspan.home";

  /** System property: the folder of the broker's jars. */
  public static final String BROKER_JARS = "sealspan.broker.lib";

  private Installation() {}

  /**
   * A file or folder of the project.
   *
   * @throws Problem when it is not there
   */
  public static Path file(String name) {
    Path file = Path.of(System.getProperty(HOME, ".")).resolve(name);
    if (!Files.exists(file)) {
      throw new Problem(
          file.toAbsolutePath().normalize()
              + " is missing. Run the program by its launcher, analytics/sealspan.");
    }
    return file;
  }

  /** Starts and stops a broker in a folder of its own, if none has stopped since the build. */
  public static void layBrokerReady(Path folder) {
    if (!brokerJars().areReady()) {
      LocalBroker.start(new BrokerSettings(folder, brokerJars())).close();
    }
  }

  static BrokerClassPath brokerJars() {
    return BrokerClassPath.ofFolder(
        Path.of(System.getProperty(BROKER_JARS, "ingest/broker/target/lib")));
  }
}
