package sealspan.ingest.source;

import java.io.IOException;
import java.util.Collections;
import java.util.List;
import sealspan.event.LoggedEvent;

/**
 * Where accepted events go.
 *
 * @param <R> an event that is ready to go there
 */
public interface Appending<R> {
  /** Makes an event ready, while others may be on their way. */
  R ready(LoggedEvent event);

  /**
   * Sends events on their way. Those sent before come before them.
   *
   * @throws IOException where they could not be sent; the message is for people
   */
  Outcomes send(List<R> batch) throws IOException;

  /** Events on their way. */
  interface Outcomes {
    /**
     * Waits until they are durable.
     *
     * @return what became of each, in their order
     * @throws IOException where they could not be appended; the message is for people
     */
    List<Outcome> await() throws IOException;
  }

  /** Appends nothing, for a trial run. */
  final class TrialRun implements Appending<LoggedEvent> {
    @Override
    public LoggedEvent ready(LoggedEvent event) {
      return event;
    }

    @Override
    public Outcomes send(List<LoggedEvent> batch) {
      return () -> Collections.nCopies(batch.size(), new Outcome.NotAppended());
    }
  }

  /** What became of an event. */
  sealed interface Outcome {
    /** It is durable now. */
    record Appended() implements Outcome {}

    /** An event of the same id and content was there already. */
    record Duplicate() implements Outcome {}

    /**
     * An event of the same id and other content is there, and holds.
     *
     * @param holds that event
     */
    record Conflict(LoggedEvent holds) implements Outcome {}

    /** It was a trial run. */
    record NotAppended() implements Outcome {}
  }
}
