package sealspan.ingest.log;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Properties;

/**
 * What is written down about a broker that was started, so that another process can use it, and so
 * that the next start can tell a broker whose parent was killed from a stranger that got its
 * process number.
 *
 * @param pid process number of the broker's JVM
 * @param startTime when that process started, by the operating system
 * @param port where clients connect, on 127.0.0.1
 * @param controllerPort where the broker's own controller listens, on 127.0.0.1
 */
public record BrokerState(long pid, Instant startTime, int port, int controllerPort) {
  /** The operating system derives start times from the clock, which may have been set since. */
  private static final Duration START_TIME_TOLERANCE = Duration.ofSeconds(2);

  /** The state written in a data folder; empty when none is, or when it was cut short. */
  public static Optional<BrokerState> read(Path dataFolder) {
    Path file = new BrokerFolder(dataFolder).stateFile();
    Properties p = new Properties();
    try (Reader in = Files.newBufferedReader(file)) {
      p.load(in);
      return Optional.of(
          new BrokerState(
              Long.parseLong(p.getProperty("pid", "")),
              Instant.parse(p.getProperty("startTime", "")),
              Integer.parseInt(p.getProperty("port", "")),
              Integer.parseInt(p.getProperty("controllerPort", ""))));
    } catch (IOException | IllegalArgumentException | java.time.DateTimeException e) {
      return Optional.empty();
    }
  }

  /** Address for clients, {@code 127.0.0.1:PORT}. */
  public String bootstrapServers() {
    return "127.0.0.1:" + port;
  }

  /**
   * The broker's process, if it still runs: same process number and same start time; where the
   * start time is off because the clock was set, the command line must name this data folder.
   */
  public Optional<ProcessHandle> process(Path dataFolder) {
    return ProcessHandle.of(pid)
        .filter(ProcessHandle::isAlive)
        .filter(
            p -> startedAsWritten(p) || commandNames(p, new BrokerFolder(dataFolder).argsFile()));
  }

  private boolean startedAsWritten(ProcessHandle p) {
    return p.info()
        .startInstant()
        .map(t -> Duration.between(t, startTime).abs().compareTo(START_TIME_TOLERANCE) <= 0)
        .orElse(false);
  }

  private static boolean commandNames(ProcessHandle p, Path argsFile) {
    return p.info()
        .arguments()
        .map(args -> args.length > 0 && args[0].equals("@" + argsFile))
        .orElse(false);
  }

  void write(BrokerFolder folder) throws IOException {
    Properties p = new Properties();
    p.setProperty("pid", Long.toString(pid));
    p.setProperty("startTime", startTime.toString());
    p.setProperty("port", Integer.toString(port));
    p.setProperty("controllerPort", Integer.toString(controllerPort));
    Path draft = folder.stateFile().resolveSibling("state.new");
    try (Writer out = Files.newBufferedWriter(draft)) {
      p.store(out, "The broker of this data folder. Written by the program; do not edit.");
    }
    Files.move(draft, folder.stateFile(), StandardCopyOption.REPLACE_EXISTING);
  }
}
