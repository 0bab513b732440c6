package sealspan.app.engine;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Optional;
import java.util.Properties;
import sealspan.app.Problem;

/** Whether a data folder keeps its log on a broker of ours or on the user's own cluster. */
public final class KafkaChoice {
  private static final String ADDRESS = "bootstrap.servers";
  private static final String LOCAL = "local";

  /** Client settings may hold a password. */
  private static final FileAttribute<?> FOR_ITS_OWNER_ONLY =
      PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"));

  private KafkaChoice() {}

  /**
   * Writes the choice down in the data folder.
   *
   * @param address {@code HOST:PORT}, several with commas; {@code local} for a broker of ours; null
   *     to take it from the settings
   * @param settings client settings; null for none
   * @throws Problem when the settings cannot be read, or name no address
   */
  public static void remember(DataFolder folder, String address, Path settings) {
    try {
      if (LOCAL.equals(address)) {
        Files.deleteIfExists(folder.kafkaSettings());
        return;
      }
      Properties p = settings == null ? new Properties() : load(settings);
      if (address != null) {
        p.setProperty(ADDRESS, address);
      }
      if (p.getProperty(ADDRESS, "").isBlank()) {
        throw new Problem(
            settings + " names no " + ADDRESS + ". Add it, or give --kafka HOST:PORT.");
      }
      for (String one : p.getProperty(ADDRESS).split(",")) {
        if (!one.strip().matches("\\S+:\\d{1,5}")) {
          throw new Problem("'" + one.strip() + "' is no address of a Kafka broker: HOST:PORT.");
        }
      }
      Files.createDirectories(folder.root());
      Files.deleteIfExists(folder.kafkaSettings());
      Files.createFile(folder.kafkaSettings(), FOR_ITS_OWNER_ONLY);
      try (Writer out = Files.newBufferedWriter(folder.kafkaSettings())) {
        p.store(out, "The Kafka cluster that keeps the log of this data folder.");
      }
    } catch (IOException e) {
      throw new Problem(
          "The choice of Kafka could not be written to "
              + folder.kafkaSettings()
              + " ("
              + e.getMessage()
              + ").",
          e);
    }
  }

  static String address(Properties settings) {
    return settings.getProperty(ADDRESS);
  }

  /** The settings of the user's cluster, with its address; empty for a broker of ours. */
  public static Optional<Properties> of(DataFolder folder) {
    return Files.exists(folder.kafkaSettings())
        ? Optional.of(load(folder.kafkaSettings()))
        : Optional.empty();
  }

  private static Properties load(Path file) {
    Properties p = new Properties();
    try (Reader in = Files.newBufferedReader(file)) {
      p.load(in);
      return p;
    } catch (NoSuchFileException e) {
      throw new Problem("There is no file " + file + ".", e);
    } catch (IOException | IllegalArgumentException e) {
      throw new Problem(file + " cannot be read as a properties file (" + e.getMessage() + ").", e);
    }
  }
}
