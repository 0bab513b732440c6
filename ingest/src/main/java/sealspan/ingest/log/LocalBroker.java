package sealspan.ingest.log;

import java.io.IOException;
import java.nio.file.Files;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Properties;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.AdminClientConfig;

/**
 * An Apache Kafka broker of one node, run as a child process for one data folder, reachable from
 * this machine only. It acknowledges an append only when it is flushed to disk, and keeps
 * everything for ever.
 *
 * <p>One process at a time may hold a data folder. When that process was killed, its broker lives
 * on; the next start ends it, recognised by process number and start time, before starting anew.
 */
public final class LocalBroker implements AutoCloseable {
  private static final int PORT_ATTEMPTS = 3;
  private static final int LINES_SHOWN = 8;
  private static final Duration STOP_LIMIT = Duration.ofSeconds(30);

  private final BrokerFolder folder;
  private final FolderLock lock;
  private final Process process;
  private final BrokerState state;
  private final ReadyClasses ready;
  private volatile boolean stopped;

  private LocalBroker(
      BrokerFolder folder,
      FolderLock lock,
      Process process,
      BrokerState state,
      ReadyClasses ready) {
    this.folder = folder;
    this.lock = lock;
    this.process = process;
    this.state = state;
    this.ready = ready;
  }

  /**
   * Starts the broker and waits until it answers, which takes about two seconds, and two more the
   * first time.
   *
   * @throws LogException when it cannot: port taken, folder not writable or held by another
   *     process, disk full, jars missing, or the broker stopped by itself
   */
  public static LocalBroker start(BrokerSettings settings) {
    BrokerFolder folder = new BrokerFolder(settings.dataFolder());
    FolderLock lock = FolderLock.take(folder);
    try {
      Optional<BrokerState> last = BrokerState.read(folder.dataFolder());
      endOrphan(folder, last);
      OptionalInt lastPort = last.map(s -> OptionalInt.of(s.port())).orElse(OptionalInt.empty());
      for (int attempt = 1; ; attempt++) {
        int port = Ports.choose(settings.port(), attempt == 1 ? lastPort : OptionalInt.empty());
        try {
          return launch(folder, lock, settings, port);
        } catch (PortLost e) {
          if (attempt == PORT_ATTEMPTS || settings.port().isPresent()) {
            throw new LogException(e.getMessage(), e);
          }
        }
      }
    } catch (IOException e) {
      lock.release();
      throw new LogException(FolderLock.cannotWrite(folder, e), e);
    } catch (RuntimeException e) {
      lock.release();
      throw e;
    }
  }

  /** Address for clients, {@code 127.0.0.1:PORT}. */
  public String bootstrapServers() {
    return state.bootstrapServers();
  }

  public BrokerState state() {
    return state;
  }

  /** What went wrong, in words, if the broker has gone away by itself; empty while it runs. */
  public Optional<String> trouble() {
    if (stopped || process.isAlive()) {
      return Optional.empty();
    }
    return Optional.of(explain(folder));
  }

  /** Tells what went wrong, in words, when the broker goes away by itself. */
  public void whenGone(Consumer<String> told) {
    process.onExit().thenRun(() -> trouble().ifPresent(told));
  }

  /** Stops the broker in an orderly way, and by force if that takes longer than 30 seconds. */
  @Override
  public void close() {
    if (stopped) {
      return;
    }
    stopped = true;
    end(process.toHandle());
    ready.adopt();
    try {
      Files.deleteIfExists(folder.stateFile());
    } catch (IOException e) {
      throw new LogException(FolderLock.cannotWrite(folder, e), e);
    } finally {
      lock.release();
    }
  }

  private static void endOrphan(BrokerFolder folder, Optional<BrokerState> last) {
    last.flatMap(s -> s.process(folder.dataFolder())).ifPresent(LocalBroker::end);
  }

  private static void end(ProcessHandle p) {
    p.destroy();
    if (!waitFor(p, STOP_LIMIT)) {
      p.destroyForcibly();
      waitFor(p, STOP_LIMIT);
    }
  }

  private static boolean waitFor(ProcessHandle p, Duration limit) {
    try {
      p.onExit().get(limit.toMillis(), TimeUnit.MILLISECONDS);
      return true;
    } catch (TimeoutException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    } catch (ExecutionException e) {
      throw new IllegalStateException(e);
    }
  }

  private static LocalBroker launch(
      BrokerFolder folder, FolderLock lock, BrokerSettings settings, int port)
      throws IOException, PortLost {
    int controllerPort = Ports.free(port);
    folder.writeConfiguration(settings, port, controllerPort);
    long deadline = System.nanoTime() + settings.startLimit().toNanos();
    if (!folder.isFormatted()) {
      format(folder, deadline);
    }
    ReadyClasses ready = ReadyClasses.of(settings.classPath());
    Process process = BrokerCommand.serve(folder, ready).start();
    Instant startTime = process.info().startInstant().orElseGet(Instant::now);
    BrokerState state = new BrokerState(process.pid(), startTime, port, controllerPort);
    try {
      state.write(folder);
      awaitAnswer(folder, process, state, deadline);
      return new LocalBroker(folder, lock, process, state, ready);
    } catch (IOException | RuntimeException e) {
      end(process.toHandle());
      throw e;
    }
  }

  private static void format(BrokerFolder folder, long deadline) throws IOException {
    Process process = BrokerCommand.format(folder).start();
    try {
      if (!process.waitFor(deadline - System.nanoTime(), TimeUnit.NANOSECONDS)) {
        process.destroyForcibly();
        throw new LogException("The broker took too long to prepare " + folder.logFolder() + ".");
      }
    } catch (InterruptedException e) {
      process.destroyForcibly();
      throw interrupted(e);
    }
    if (process.exitValue() != 0) {
      throw new LogException(explain(folder));
    }
  }

  private static void awaitAnswer(
      BrokerFolder folder, Process process, BrokerState state, long deadline) throws PortLost {
    while (System.nanoTime() < deadline) {
      if (!process.isAlive()) {
        String why = explain(folder);
        if (why.contains("Address already in use")) {
          throw new PortLost(why);
        }
        throw new LogException(why);
      }
      if (Ports.accepts(state.port()) && answers(state)) {
        return;
      }
      pause(Duration.ofMillis(50));
    }
    throw new LogException("The broker did not answer in time. " + explain(folder));
  }

  /** Whether the broker serves clients, and is ours: a stranger on the port has another node. */
  private static boolean answers(BrokerState state) {
    Properties p = new Properties();
    p.putAll(
        Map.of(
            AdminClientConfig.BOOTSTRAP_SERVERS_CONFIG, state.bootstrapServers(),
            AdminClientConfig.REQUEST_TIMEOUT_MS_CONFIG, 2_000,
            AdminClientConfig.DEFAULT_API_TIMEOUT_MS_CONFIG, 2_000));
    try (Admin admin = Admin.create(p)) {
      return admin.describeCluster().nodes().get().stream().anyMatch(n -> n.port() == state.port());
    } catch (ExecutionException e) {
      return false;
    } catch (InterruptedException e) {
      throw interrupted(e);
    }
  }

  private static void pause(Duration d) {
    try {
      TimeUnit.MILLISECONDS.sleep(d.toMillis());
    } catch (InterruptedException e) {
      throw interrupted(e);
    }
  }

  private static LogException interrupted(InterruptedException e) {
    Thread.currentThread().interrupt();
    return new LogException("Stopped while the broker was starting.", e);
  }

  private static String explain(BrokerFolder folder) {
    return BrokerTrouble.explain(
        folder.lastLines(LINES_SHOWN), folder.dataFolder(), folder.folder());
  }

  /** Another program took the chosen port between the choice and its use. */
  private static final class PortLost extends Exception {
    private static final long serialVersionUID = 1L;

    PortLost(String message) {
      super(message);
    }
  }
}
