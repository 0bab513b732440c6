package sealspan.app.engine;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sealspan.ingest.log.QuickCompiler;

/**
 * Lets what people wait for go first: an engine that works through a large record leaves the
 * processors to a question, an import or the broker as soon as they want them, and takes what is
 * left. Nothing waits for ever, and an engine alone is as fast as before.
 */
final class GivingWay {
  private static final Logger LOG = LoggerFactory.getLogger(GivingWay.class);
  private static final int NICENESS = 10;

  private GivingWay() {}

  /**
   * From here on this process gives way, but not what it has started so far, such as the broker.
   * Does nothing in an engine for a short time, which people do wait for.
   */
  static void fromNow() {
    if (QuickCompiler.options().isEmpty()) {
      giveWay(ProcessHandle.current());
    }
  }

  /** Where it cannot be done, all goes on as it was: answers only come later beside other work. */
  static void giveWay(ProcessHandle process) {
    List<String> command = new ArrayList<>(List.of("renice", "-n", "" + NICENESS, "-p"));
    try {
      command.addAll(threads(process.pid()));
      Process renice =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.to(new File("/dev/null")))
              .start();
      if (!renice.waitFor(10, TimeUnit.SECONDS) || renice.exitValue() != 0) {
        LOG.info("The engine does not give way to other work: renice did not do it.");
      }
    } catch (IOException e) {
      LOG.info("The engine does not give way to other work: {}", e.getMessage());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Linux knows niceness by thread, and a new thread has that of the one that started it. */
  private static List<String> threads(long pid) throws IOException {
    Path tasks = Path.of("/proc", "" + pid, "task");
    if (!Files.isDirectory(tasks)) {
      return List.of("" + pid);
    }
    try (Stream<Path> list = Files.list(tasks)) {
      return list.map(task -> task.getFileName().toString()).toList();
    }
  }
}
