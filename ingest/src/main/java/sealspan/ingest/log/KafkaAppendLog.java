package sealspan.ingest.log;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/**
 * An append-only log kept by Kafka, in the way that each of its public kinds promises. Before every
 * append it takes note of what others appended meanwhile.
 */
abstract class KafkaAppendLog<T> implements AppendLog<T> {
  private final KafkaAddress address;
  private final EntryForm<T> form;
  private final KafkaTopic topic;
  private final KafkaRecords<T> records;
  private final KafkaSender<T> sender;
  private final IdIndex index;
  private final RecordedClock clock;

  /** What is not known to be durable, the oldest first. */
  private final Deque<KafkaBatch<T>> underWay = new ArrayDeque<>();

  /** Whether others appended something between what was sent from here. */
  private boolean gap;

  KafkaAppendLog(KafkaAddress address, EntryForm<T> form, Path indexFolder, InstantSource source) {
    this.address = address;
    this.form = form;
    this.clock = new RecordedClock(source);
    this.topic = KafkaTopic.open(address, form.topic(), form.partitions());
    this.records = new KafkaRecords<>(address, topic, form);
    try {
      this.sender = new KafkaSender<>(address, form);
      String identity = topic.identity() + "/" + form.digestVersion();
      Path file = indexFolder.resolve(form.topic() + ".ids");
      this.index = opened(file, identity, records.end());
      catchUp();
    } catch (RuntimeException e) {
      records.close();
      throw e;
    }
  }

  @Override
  public Ready<T> ready(T entry) {
    return Prepared.of(entry, form);
  }

  /**
   * Where a batch is on its way already, what others append meanwhile is noticed when that batch
   * has landed, by the gap before its offsets.
   */
  @Override
  public synchronized Sending<T> send(List<Ready<T>> entries) {
    if (entries.isEmpty()) {
      return List::of;
    }
    List<Prepared<T>> asked = new ArrayList<>(entries.size());
    entries.forEach(entry -> asked.add((Prepared<T>) entry));
    while (gap && !underWay.isEmpty() || underWay.stream().anyMatch(b -> b.mayHold(asked))) {
      settleFirst();
    }
    if (underWay.isEmpty()) {
      catchUp();
    }
    KafkaBatch<T> batch = new KafkaBatch<>(asked, clock.next(), form);
    batch.depart(index, records, sender);
    underWay.add(batch);
    return () -> receipts(batch);
  }

  private synchronized List<Receipt<T>> receipts(KafkaBatch<T> batch) {
    while (underWay.contains(batch)) {
      settleFirst();
    }
    if (batch.failure() != null) {
      throw KafkaTrouble.of("appending to " + topic.name(), address, batch.failure());
    }
    return batch.receipts();
  }

  /** Waits for the batch that is first on its way, and takes note of it. */
  private void settleFirst() {
    KafkaBatch<T> first = underWay.remove();
    first.land();
    withIndex(() -> gap |= first.noteIn(index));
  }

  private void catchUp() {
    long[] end = records.end();
    long[] from = new long[end.length];
    boolean behind = false;
    for (int p = 0; p < end.length; p++) {
      from[p] = index.covered(p);
      behind |= from[p] < end[p];
    }
    if (behind) {
      records.readMarks(
          from,
          end,
          r -> {
            long hash = Prepared.hash(r.entry().id());
            withIndex(() -> index.put(hash, r.entry().digest(), r.place(), r.recordedAt()));
          });
      for (int p = 0; p < end.length; p++) {
        index.cover(p, end[p]);
      }
    }
    clock.saw(index.latest());
    gap = false;
  }

  /** Something that touches the index file. */
  private interface IndexStep {
    void run() throws IOException;
  }

  private static void withIndex(IndexStep step) {
    try {
      step.run();
    } catch (IOException e) {
      throw indexTrouble(e);
    }
  }

  private static IdIndex opened(Path file, String identity, long[] end) {
    try {
      return IdIndex.open(file, identity, end);
    } catch (IOException e) {
      throw indexTrouble(e);
    }
  }

  private static LogException indexTrouble(IOException e) {
    return new LogException(
        "The index of the log cannot be read or written: "
            + e.getMessage()
            + ". It can be made again from the log: free some space, or delete the folder of the"
            + " index.",
        e);
  }

  @Override
  public synchronized Cut end() {
    return Cut.of(records.end());
  }

  /** Breaks off what waits for an answer to where the log ends, with an error; for any thread. */
  public void giveUp() {
    records.giveUp();
  }

  @Override
  public LogReader<T> reader(Cut from) {
    KafkaRecords<T> own = new KafkaRecords<>(address, topic, form);
    own.seek(KafkaRecords.padded(from, topic.partitions()));
    return new LogReader<>() {
      @Override
      public List<Recorded<T>> poll(Duration limit) {
        return own.poll(limit);
      }

      @Override
      public Cut position() {
        return Cut.of(own.position());
      }

      @Override
      public void close() {
        own.close();
      }
    };
  }

  @Override
  public synchronized void close() {
    try {
      while (!underWay.isEmpty()) {
        settleFirst();
      }
      withIndex(index::saveIfWorthwhile);
    } finally {
      sender.close();
      records.close();
    }
  }
}
