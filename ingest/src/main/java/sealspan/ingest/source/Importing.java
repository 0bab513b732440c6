package sealspan.ingest.source;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import sealspan.event.LoggedEvent;
import sealspan.ingest.validate.Origin;
import sealspan.ingest.validate.Problem;
import sealspan.ingest.validate.Validation;
import sealspan.ingest.validate.Validator;
import sealspan.table.QuarantinedRow;

/**
 * Takes a file in: rows are read, judged and made ready while the batch before is sent, and that is
 * sent while the one before it becomes durable. Stopping half way and starting again is safe,
 * because an event that is there already is a duplicate and changes nothing.
 *
 * @param <R> an event that is ready to be sent
 */
public final class Importing<R> {
  /** Twice as many cost the collector more, half as many the broker. */
  private static final int BATCH_EVENTS = 4_000;

  /** Batches that may not be durable yet when the next is sent. */
  private static final int MOST_ON_THEIR_WAY = 2;

  private static final int BATCH_COMPLAINTS = 1_000;

  /** Where rows go that are not taken. */
  public interface Setting {
    /**
     * Sets rows aside durably.
     *
     * @throws IOException where that failed; the message is for people
     */
    void aside(List<QuarantinedRow> rows) throws IOException;

    /** Sets nothing aside, for a trial run. */
    Setting NOTHING = rows -> {};
  }

  /** Hears how far an import is. */
  public interface Progress {
    /**
     * Called after each batch.
     *
     * @param rows rows read so far
     * @param bytes bytes read so far
     * @param totalBytes bytes of the file
     */
    void at(long rows, long bytes, long totalBytes);

    /** Hears nothing. */
    Progress SILENT = (rows, bytes, totalBytes) -> {};
  }

  private record Candidate<R>(Origin origin, LoggedEvent event, R ready) {}

  private record OnItsWay<R>(
      List<Candidate<R>> events, Appending.Outcomes outcomes, List<QuarantinedRow> rows) {}

  private final Validator validator;
  private final Appending<R> appending;
  private final Setting setting;
  private final Progress progress;
  private final String source;

  /**
   * An import.
   *
   * @param source name of the source, for the rows that are set aside
   */
  public Importing(
      String source,
      Validator validator,
      Appending<R> appending,
      Setting setting,
      Progress progress) {
    this.source = source;
    this.validator = validator;
    this.appending = appending;
    this.setting = setting;
    this.progress = progress;
  }

  /**
   * Takes a file in, and closes it.
   *
   * @return what became of its rows; where the thread was interrupted, of those up to then
   * @throws IOException where the file could not be read on, or events not be appended
   */
  public ImportSummary run(DraftSource file) throws IOException {
    ExecutorService appender =
        Executors.newSingleThreadExecutor(
            task -> {
              Thread thread = new Thread(task, "append");
              thread.setDaemon(true);
              return thread;
            });
    try (file) {
      Run run = new Run(file, appender);
      return run.all();
    } finally {
      appender.shutdown();
    }
  }

  /** The state of one run. */
  private final class Run {
    private final DraftSource file;
    private final ExecutorService appender;
    private final ImportSummary.Counts counts = new ImportSummary.Counts();
    private List<Candidate<R>> batch = new ArrayList<>(BATCH_EVENTS);
    private List<QuarantinedRow> complaints = new ArrayList<>();
    private final Deque<OnItsWay<R>> onTheirWay = new ArrayDeque<>();
    private List<QuarantinedRow> toSetAside = new ArrayList<>();
    private Future<?> pending;
    private boolean stopped;

    Run(DraftSource file, ExecutorService appender) {
      this.file = file;
      this.appender = appender;
    }

    ImportSummary all() throws IOException {
      for (Item item = file.next(); item != null; item = file.next()) {
        counts.row();
        take(item);
        if (batch.size() >= BATCH_EVENTS || complaints.size() >= BATCH_COMPLAINTS) {
          handOver();
          progress.at(counts.rows(), file.readBytes(), file.totalBytes());
          if (Thread.currentThread().isInterrupted()) {
            stopped = true;
            break;
          }
        }
      }
      handOver();
      await();
      // Not on this thread: it may be interrupted, and what is on its way is waited for all the
      // same.
      inBackground(
          () -> {
            settleAllBut(0);
            setAside();
          });
      await();
      progress.at(counts.rows(), file.readBytes(), file.totalBytes());
      return counts.summary(file, stopped);
    }

    private void take(Item item) {
      if (item instanceof Item.LeftOut leftOut) {
        counts.leftOut(leftOut.reason());
      } else if (item instanceof Item.Broken broken) {
        reject(broken.origin(), List.of(broken.problem()));
      } else if (item instanceof Item.Draft draft) {
        Validation validation = validator.validate(draft.draft());
        Origin origin = draft.draft().origin();
        if (validation instanceof Validation.Accepted accepted) {
          counts.accepted(accepted.events().size());
          for (LoggedEvent event : accepted.events()) {
            batch.add(new Candidate<>(origin, event, appending.ready(event)));
          }
        } else if (validation instanceof Validation.Rejected rejected) {
          reject(origin, rejected.problems());
        }
      }
    }

    private void reject(Origin origin, List<Problem> problems) {
      counts.rejected(problems);
      for (Problem problem : problems) {
        complaints.add(row(origin, problem.field(), Kind.REJECTED, problem.text()));
      }
    }

    private void handOver() throws IOException {
      await();
      List<Candidate<R>> events = batch;
      List<QuarantinedRow> rows = complaints;
      batch = new ArrayList<>(BATCH_EVENTS);
      complaints = new ArrayList<>();
      inBackground(
          () -> {
            List<R> ready = events.stream().map(Candidate::ready).toList();
            OnItsWay<R> next = new OnItsWay<>(events, appending.send(ready), rows);
            onTheirWay.add(next);
            settleAllBut(MOST_ON_THEIR_WAY);
          });
    }

    private void inBackground(Step step) {
      pending =
          appender.submit(
              () -> {
                step.run();
                return null;
              });
    }

    private void settleAllBut(int batches) throws IOException {
      while (onTheirWay.size() > batches) {
        settle();
      }
    }

    /** Waits until the batch on its way is durable, and takes note of what became of it. */
    private void settle() throws IOException {
      OnItsWay<R> onItsWay = onTheirWay.remove();
      List<QuarantinedRow> rows = onItsWay.rows();
      List<Appending.Outcome> outcomes = onItsWay.outcomes().await();
      for (int i = 0; i < outcomes.size(); i++) {
        Appending.Outcome outcome = outcomes.get(i);
        counts.outcome(outcome);
        if (outcome instanceof Appending.Outcome.Conflict conflict) {
          Candidate<R> candidate = onItsWay.events().get(i);
          String reason = ConflictWords.of(conflict.holds(), candidate.event());
          rows.add(row(candidate.origin(), null, Kind.CONFLICT, reason));
        }
      }
      toSetAside.addAll(rows);
      if (toSetAside.size() >= BATCH_COMPLAINTS) {
        setAside();
      }
    }

    private void setAside() throws IOException {
      if (!toSetAside.isEmpty()) {
        setting.aside(toSetAside);
        toSetAside = new ArrayList<>();
      }
    }

    /** Waits for the step in the background, also where the thread is interrupted. */
    private void await() throws IOException {
      boolean interrupted = false;
      while (pending != null) {
        try {
          pending.get();
          pending = null;
        } catch (InterruptedException e) {
          interrupted = true;
        } catch (ExecutionException e) {
          pending = null;
          if (e.getCause() instanceof IOException known) {
            throw known;
          }
          if (e.getCause() instanceof RuntimeException known) {
            throw known;
          }
          throw new IOException("The events could not be appended.", e.getCause());
        }
      }
      if (interrupted) {
        Thread.currentThread().interrupt();
      }
    }
  }

  /** A step in the background. */
  private interface Step {
    void run() throws IOException;
  }

  private enum Kind {
    REJECTED,
    CONFLICT
  }

  private QuarantinedRow row(Origin origin, String field, Kind kind, String reason) {
    return new QuarantinedRow(
        null,
        source,
        origin.file(),
        origin.line(),
        field,
        kind.name(),
        reason,
        origin.row(),
        null,
        null);
  }
}
