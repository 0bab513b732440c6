package sealspan.bench.whole;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sealspan.answers.Published;
import sealspan.event.LoggedEvent;
import sealspan.ingest.log.EventLog;
import sealspan.ingest.log.Place;
import sealspan.ingest.log.Receipt;

/** How long a single event takes from the acknowledgement of the log to a published snapshot. */
final class LiveLatency {
  private static final int EVENTS_PER_SECOND = 50;
  private static final long PATIENCE_NANOS = 120_000_000_000L;

  private record Waiting(Place place, long acknowledgedNanos) {}

  private final EventLog log;
  private final Path dataFolder;
  private final ArrayDeque<Waiting> waiting = new ArrayDeque<>();
  private final List<Double> seconds = new ArrayList<>();
  private boolean done;

  LiveLatency(EventLog log, Path dataFolder) {
    this.log = log;
    this.dataFolder = dataFolder;
  }

  /**
   * Appends events one by one at an even pace and waits for each to be published.
   *
   * @param patterns events that are in the log; the new ones are theirs under other ids
   * @param forSeconds how long to append
   * @return the waits in seconds, ascending
   */
  List<Double> measure(List<LoggedEvent> patterns, int forSeconds) throws InterruptedException {
    Thread watcher = new Thread(this::watch, "watch");
    watcher.start();
    long begin = System.nanoTime();
    int events = forSeconds * EVENTS_PER_SECOND;
    for (int i = 0; i < events; i++) {
      long due = begin + i * (1_000_000_000L / EVENTS_PER_SECOND);
      while (System.nanoTime() < due) {
        Thread.sleep(1);
      }
      LoggedEvent pattern = patterns.get(i % patterns.size());
      LoggedEvent event =
          new LoggedEvent(
              "live-" + begin + "-" + i,
              "bench",
              pattern.event(),
              null,
              LoggedEvent.ReportedOrigin.NOT_RECORDED,
              null,
              LoggedEvent.Arrival.LIVE);
      Receipt<LoggedEvent> receipt = log.append(List.of(event)).get(0);
      if (receipt instanceof Receipt.Appended<LoggedEvent> appended) {
        synchronized (this) {
          waiting.add(new Waiting(appended.recorded().place(), System.nanoTime()));
        }
      }
    }
    synchronized (this) {
      done = true;
    }
    watcher.join();
    seconds.sort(null);
    return seconds;
  }

  private void watch() {
    long limit = Long.MAX_VALUE;
    Published seen = null;
    while (System.nanoTime() < limit) {
      long now = System.nanoTime();
      Optional<Published> newer = Published.newer(dataFolder, seen);
      seen = newer.orElse(seen);
      synchronized (this) {
        newer.ifPresent(published -> take(published, now));
        if (done && waiting.isEmpty()) {
          return;
        }
        limit = done && limit == Long.MAX_VALUE ? now + PATIENCE_NANOS : limit;
      }
      try {
        Thread.sleep(20);
      } catch (InterruptedException e) {
        return;
      }
    }
    throw new IllegalStateException(waiting.size() + " events were not published in time");
  }

  private void take(Published published, long now) {
    String[] parts = published.cut().offsets().split(",");
    long[] next = new long[parts.length];
    for (String part : published.cut().events() == 0 ? new String[0] : parts) {
      int colon = part.indexOf(':');
      next[Integer.parseInt(part.substring(0, colon))] = Long.parseLong(part.substring(colon + 1));
    }
    waiting.removeIf(
        w -> {
          boolean in = w.place().offset() < next[w.place().partition()];
          if (in) {
            seconds.add((now - w.acknowledgedNanos()) / 1e9);
          }
          return in;
        });
  }
}
