package sealspan.ingest.log;

import java.time.Duration;
import java.util.List;

/**
 * Reads a log in order of offset within each partition. For one thread at a time.
 *
 * @param <T> the kind of entries
 */
public interface LogReader<T> extends AutoCloseable {
  /**
   * The next entries, as many as are at hand.
   *
   * @param limit how long to wait for the first of them
   * @return empty when none came in time
   * @throws LogException when the log cannot be read, or holds what this version cannot read
   */
  List<Recorded<T>> poll(Duration limit);

  /** A cut behind everything that was given out. */
  Cut position();

  @Override
  void close();
}
