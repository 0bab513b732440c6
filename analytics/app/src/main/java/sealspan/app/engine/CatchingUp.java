package sealspan.app.engine;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.Optional;
import sealspan.jobs.JobProgress;

/**
 * How far an engine is with results that take it a while, in words that it writes down for whoever
 * waits for them.
 */
public final class CatchingUp {
  /** Fewer of anything than this are worked out and written before anyone has read of them. */
  private static final long FEW = 1_000;

  private final DataFolder folder;
  private String last = "";

  /** Of an engine that begins: nothing is known yet. */
  CatchingUp(DataFolder folder) throws IOException {
    this.folder = folder;
    Files.deleteIfExists(file(folder));
  }

  /** What the running engine wrote down; empty where it is up to date but for little. */
  public static Optional<String> read(DataFolder folder) {
    try {
      return Optional.of(Files.readString(file(folder)));
    } catch (IOException none) {
      return Optional.empty();
    }
  }

  /** Writes it down where it has changed. */
  void note(String words) throws IOException {
    if (words.equals(last)) {
      return;
    }
    last = words;
    if (words.isEmpty()) {
      Files.deleteIfExists(file(folder));
      return;
    }
    Path draft = file(folder).resolveSibling("catching-up.new");
    Files.writeString(draft, words);
    Files.move(
        draft, file(folder), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  /**
   * What to say; empty where little is left to do.
   *
   * @param job how far the jobs are since they began
   * @param taken bundles and rows that the writer of the answers took in since it began
   * @param eventsLeft events that it still has to take in
   */
  static String words(JobProgress job, long taken, long eventsLeft) {
    long written = Math.min(taken, job.historiesSent());
    boolean few = eventsLeft < FEW;
    if (few && job.historiesChanged() - written < FEW) {
      return "";
    }
    String words =
        String.format(
            Locale.ROOT,
            "%d events read, %d of %d histories worked out, %d written",
            job.eventsRead(),
            job.historiesSent(),
            job.historiesChanged(),
            written);
    return few ? words : words + String.format(Locale.ROOT, ", %d events left", eventsLeft);
  }

  private static Path file(DataFolder folder) {
    return folder.engine().resolve("catching-up");
  }
}
