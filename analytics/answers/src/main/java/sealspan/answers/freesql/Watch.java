package sealspan.answers.freesql;

import java.util.concurrent.TimeUnit;

/** Ends a process when its time is over; interrupt it once the process no longer matters. */
final class Watch extends Thread {
  private final Process process;
  private final SqlLimits limits;
  private volatile boolean timeIsOver;

  Watch(Process process, SqlLimits limits) {
    super("watch over a query");
    this.process = process;
    this.limits = limits;
    setDaemon(true);
  }

  @Override
  public void run() {
    try {
      if (!process.waitFor(limits.time().toMillis(), TimeUnit.MILLISECONDS)) {
        timeIsOver = true;
        process.destroyForcibly();
      }
    } catch (InterruptedException e) {
      // The parent has what it wants, and ends the process itself.
      return;
    }
  }

  /** Whether the process was ended because its time was over. */
  boolean timeIsOver() {
    return timeIsOver;
  }
}
