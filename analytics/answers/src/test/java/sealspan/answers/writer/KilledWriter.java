package sealspan.answers.writer;

import java.io.BufferedReader;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;

/** A writer in a process of its own, to be killed. */
final class KilledWriter {
  private KilledWriter() {}

  static Process start(Path folder, String bootstrapServers, String generation) throws Exception {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Djava.io.tmpdir=" + folder,
            "-cp",
            System.getProperty("java.class.path"),
            KilledWriter.class.getName(),
            folder.toString(),
            bootstrapServers,
            generation)
        .redirectErrorStream(true)
        .start();
  }

  /** Waits until the process has published a number of snapshots. */
  static void awaitSnapshots(Process process, int count) throws Exception {
    BufferedReader out = process.inputReader();
    StringBuilder said = new StringBuilder();
    for (int seen = 0; seen < count; ) {
      String line = out.readLine();
      if (line == null) {
        throw new AssertionError("The writer ended by itself: " + said);
      }
      said.append(line).append('\n');
      seen += line.startsWith("published ") ? 1 : 0;
    }
  }

  public static void main(String[] args) {
    new ReadModelWriter(
            new WriterSettings(
                Path.of(args[0]), args[1], args[2], "test", Duration.ofMillis(20), Map.of()),
            snapshot -> System.out.println("published " + snapshot))
        .run();
  }
}
