package sealspan.bench.whole;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * Adds up, twice a second, the resident memory of all processes of a data folder (Linux only). What
 * two of them share counts twice: to divide it takes the kernel a quarter of a core.
 */
final class MemoryWatch implements AutoCloseable {
  private static final long PAUSE_MILLIS = 500;

  private final Path dataFolder;
  private final Thread thread;
  private volatile boolean ended;
  private volatile long peakBytes;

  MemoryWatch(Path dataFolder) {
    this.dataFolder = dataFolder;
    thread = new Thread(this::watch, "memory");
    thread.setDaemon(true);
    thread.start();
  }

  /** The most since the last call, GB of 10^9 bytes. */
  synchronized double peakGb() {
    double peak = peakBytes / 1e9;
    peakBytes = 0;
    return peak;
  }

  private void watch() {
    while (!ended) {
      long bytes =
          ProcessHandle.allProcesses().filter(this::isOurs).mapToLong(this::resident).sum();
      synchronized (this) {
        peakBytes = Math.max(peakBytes, bytes);
      }
      try {
        Thread.sleep(PAUSE_MILLIS);
      } catch (InterruptedException e) {
        return;
      }
    }
  }

  /** Whether the command line of a process names the data folder. */
  private boolean isOurs(ProcessHandle process) {
    try {
      String line = Files.readString(Path.of("/proc", "" + process.pid(), "cmdline"));
      return line.contains(dataFolder.toString()) && !line.contains(WholeSpeed.class.getName());
    } catch (IOException e) {
      return false; // It has ended, or is not ours to look at.
    }
  }

  private long resident(ProcessHandle process) {
    try (Stream<String> lines = Files.lines(Path.of("/proc", "" + process.pid(), "status"))) {
      List<String> set = lines.filter(line -> line.startsWith("VmRSS:")).toList();
      return set.isEmpty() ? 0 : 1024 * Long.parseLong(set.get(0).replaceAll("\\D", ""));
    } catch (IOException e) {
      return 0; // It has ended.
    }
  }

  @Override
  public void close() {
    ended = true;
    thread.interrupt();
  }
}
