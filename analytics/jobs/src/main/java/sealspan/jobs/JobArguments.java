package sealspan.jobs;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.assembly.CriteriaException;

/**
 * The program arguments of a job on a cluster of the user's: {@code --name value}, in any order.
 */
final class JobArguments {
  private static final String ADDRESS = "bootstrap.servers";
  private static final Set<String> OF_EVERY_JOB =
      Set.of("kafka", "kafka-properties", "generation", "criteria", "parallelism");

  private final Map<String, String> given = new HashMap<>();

  /**
   * Reads arguments.
   *
   * @param further names that this job takes beside those of every job
   * @throws JobException when one is unknown or has no value
   */
  JobArguments(String[] arguments, Set<String> further) {
    for (int i = 0; i < arguments.length; i += 2) {
      String name = arguments[i].replaceFirst("^--", "");
      if (!OF_EVERY_JOB.contains(name) && !further.contains(name)) {
        throw new JobException("The job knows no argument " + arguments[i] + ". " + usage(further));
      }
      if (i + 1 == arguments.length) {
        throw new JobException("The argument " + arguments[i] + " needs a value.");
      }
      given.put(name, arguments[i + 1]);
    }
  }

  private static String usage(Set<String> further) {
    return "It takes --kafka HOST:PORT, --kafka-properties FILE, --generation NAME, --criteria"
        + " FILE, --parallelism N, and here "
        + List.copyOf(further).stream().sorted().map(n -> "--" + n).toList()
        + ".";
  }

  /** What the job reads and writes. */
  JobSettings settings() {
    Map<String, String> clients = clientProperties();
    String address = given.getOrDefault("kafka", clients.getOrDefault(ADDRESS, ""));
    if (address.isBlank()) {
      throw new JobException(
          "Where is the log? Give --kafka HOST:PORT, or " + ADDRESS + " in --kafka-properties.");
    }
    String generation = required("generation");
    return new JobSettings(
        address, clients, generation, generation, criteria(), number("parallelism", 1));
  }

  private Map<String, String> clientProperties() {
    Properties read = new Properties();
    if (given.containsKey("kafka-properties")) {
      Path file = Path.of(given.get("kafka-properties"));
      try (Reader in = Files.newBufferedReader(file)) {
        read.load(in);
      } catch (IOException | IllegalArgumentException e) {
        throw cannotRead(file, e);
      }
    }
    Map<String, String> all = new HashMap<>();
    read.stringPropertyNames().forEach(name -> all.put(name, read.getProperty(name)));
    return all;
  }

  private AcceptanceCriteria criteria() {
    if (!given.containsKey("criteria")) {
      return AcceptanceCriteria.shipped();
    }
    Path file = Path.of(given.get("criteria"));
    try {
      return new AcceptanceCriteria(Files.readString(file));
    } catch (IOException e) {
      throw cannotRead(file, e);
    } catch (CriteriaException e) {
      throw new JobException(file + ": " + e.getMessage(), e);
    }
  }

  private static JobException cannotRead(Path file, Exception e) {
    return new JobException(
        e instanceof NoSuchFileException
            ? "There is no file " + file + " where the job is submitted."
            : file + " cannot be read (" + e.getMessage() + ").",
        e);
  }

  String required(String name) {
    String value = given.get(name);
    if (value == null) {
      throw new JobException("The argument --" + name + " is missing.");
    }
    return value;
  }

  String or(String name, String otherwise) {
    return given.getOrDefault(name, otherwise);
  }

  /** A whole number, 1 or more. */
  int number(String name, int otherwise) {
    String value = given.getOrDefault(name, Integer.toString(otherwise));
    if (!value.matches("[1-9][0-9]{0,8}")) {
      throw new JobException("--" + name + " is a whole number from 1, not '" + value + "'.");
    }
    return Integer.parseInt(value);
  }
}
