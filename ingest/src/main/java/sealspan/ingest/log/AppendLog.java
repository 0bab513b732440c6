package sealspan.ingest.log;

import java.time.Duration;
import java.util.List;
import java.util.function.Consumer;

/**
 * An append-only log of one kind of entries. Nothing in it is ever changed or removed.
 *
 * <p>Any number of processes may append at once. An entry that two of them append in the same
 * instant can then stand in the log twice, or with two contents; readers keep the first of an id by
 * place within its partition, and ignore the others.
 *
 * @param <T> the kind of entries
 */
public interface AppendLog<T> extends AutoCloseable {
  /**
   * Appends what is not there yet, and returns when all of it is durable. Entries with the same key
   * keep their order. The recorded time is set here, in UTC to the millisecond, and never lies
   * before that of an entry which this log has seen, even where the clock was set back.
   *
   * @param entries any number; more at a time is faster
   * @return one receipt for each entry, in the same order
   * @throws LogException when the log cannot be reached or written. Some entries may then be in it:
   *     append all of them again, and those are found to be duplicates
   */
  default List<Receipt<T>> append(List<T> entries) {
    return send(entries.parallelStream().map(this::ready).toList()).receipts();
  }

  /** An entry that is ready to be appended. */
  interface Ready<T> {}

  /**
   * Makes an entry ready to be appended: whatever takes the processor and not the log. For any
   * thread, also while others are being appended.
   */
  Ready<T> ready(T entry);

  /**
   * Sends entries that this log made ready, to be appended as {@link #append} does, and does not
   * wait until they are durable. Those sent before and not waited for are sent first.
   *
   * @throws LogException as {@link #append} does
   */
  Sending<T> send(List<Ready<T>> entries);

  /** Entries on their way into a log. Whoever does not ask does not learn whether they came in. */
  interface Sending<T> {
    /**
     * Waits until all of them, and all that were sent before, are durable.
     *
     * @return one receipt for each entry, in the same order
     * @throws LogException when the log cannot be reached or written, as for {@link #append}
     */
    List<Receipt<T>> receipts();
  }

  /** A cut behind everything that is in the log now. */
  Cut end();

  /** A reader that begins at a cut and follows the log as it grows. */
  LogReader<T> reader(Cut from);

  /**
   * Reads every entry between two cuts, partition by partition in order, and returns when the last
   * of them was given out.
   */
  default void read(Cut from, Cut to, Consumer<Recorded<T>> each) {
    try (LogReader<T> reader = reader(from)) {
      while (!reader.position().covers(to)) {
        for (Recorded<T> r : reader.poll(Duration.ofSeconds(1))) {
          if (to.holds(r.place())) {
            each.accept(r);
          }
        }
      }
    }
  }

  @Override
  void close();
}
