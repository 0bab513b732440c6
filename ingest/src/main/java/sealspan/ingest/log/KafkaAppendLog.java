package sealspan.ingest.log;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

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
  private final Deque<Batch> underWay = new ArrayDeque<>();

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
      underWay.peek().settle();
    }
    if (underWay.isEmpty()) {
      catchUp();
    }
    Batch batch = new Batch(asked, clock.next());
    batch.depart();
    underWay.add(batch);
    return () -> receipts(batch);
  }

  private synchronized List<Receipt<T>> receipts(Batch batch) {
    while (underWay.contains(batch)) {
      underWay.peek().settle();
    }
    return batch.receipts();
  }

  /** One call of send, from the look-up of the ids to the receipts. */
  private final class Batch {
    private final List<Prepared<T>> asked;
    private final Instant recordedAt;

    /** What becomes of each; null where that comes of what is sent. */
    private final List<Receipt<T>> receipts;

    /** For each without a receipt, which of those that are sent has its id. */
    private final int[] sentAs;

    private final List<Prepared<T>> toSend;

    /** Where the first of each id is among those that are sent. */
    private final IdTable ids;

    private KafkaSender<T>.Flight flight;
    private KafkaSender.Landed landed;

    Batch(List<Prepared<T>> asked, Instant recordedAt) {
      this.asked = asked;
      this.recordedAt = recordedAt;
      this.receipts = new ArrayList<>(Collections.nCopies(asked.size(), null));
      this.sentAs = new int[asked.size()];
      this.toSend = new ArrayList<>(asked.size());
      this.ids = IdTable.onHeap(asked.size());
    }

    /** Whether an id of others may be one of these. */
    boolean mayHold(List<Prepared<T>> others) {
      for (Prepared<T> other : others) {
        if (ids.holds(other.hash())) {
          return true;
        }
      }
      return false;
    }

    void depart() {
      lookUp();
      for (int i = 0; i < asked.size(); i++) {
        if (receipts.get(i) == null) {
          sentAs[i] = firstWithIdOf(asked.get(i));
          if (sentAs[i] == toSend.size()) {
            ids.put(asked.get(i).hash(), asked.get(i).digest(), sentAs[i]);
            toSend.add(asked.get(i));
          }
        }
      }
      flight = sender.send(toSend, recordedAt);
    }

    private int firstWithIdOf(Prepared<T> a) {
      if (ids.holds(a.hash())) {
        List<Long> sameHash = new ArrayList<>();
        ids.places(a.hash(), sameHash);
        for (long at : sameHash) {
          if (toSend.get((int) at).id().equals(a.id())) {
            return (int) at;
          }
        }
      }
      return toSend.size();
    }

    /** Waits for these, and takes note of them. */
    void settle() {
      landed = flight.land();
      underWay.remove();
      withIndex(() -> note(landed.places()));
    }

    List<Receipt<T>> receipts() {
      if (landed.failure() != null) {
        throw KafkaTrouble.of("appending to " + topic.name(), address, landed.failure());
      }
      int told = 0;
      for (int i = 0; i < asked.size(); i++) {
        if (receipts.get(i) == null) {
          boolean first = sentAs[i] == told;
          receipts.set(i, receipt(i, first, landed.places().get(sentAs[i])));
          told += first ? 1 : 0;
        }
      }
      return receipts;
    }

    /**
     * Looks all up. Where an id may be there with another content, only reading that entry tells.
     */
    private void lookUp() {
      Map<Integer, List<Place>> suspects = new HashMap<>();
      for (int i = 0; i < asked.size(); i++) {
        Prepared<T> a = asked.get(i);
        List<Place> places = index.places(a.hash());
        if (!places.isEmpty()) {
          Place same = index.find(a.hash(), a.digest());
          if (same == null) {
            suspects.put(i, places);
          } else {
            receipts.set(i, new Receipt.Duplicate<>(same));
          }
        }
      }
      if (!suspects.isEmpty()) {
        Map<Place, Recorded<T>> there =
            records.at(suspects.values().stream().flatMap(List::stream).toList());
        suspects.forEach((i, places) -> receipts.set(i, conflict(asked.get(i), places, there)));
      }
    }

    private Receipt<T> conflict(Prepared<T> a, List<Place> places, Map<Place, Recorded<T>> there) {
      for (Place place : places) {
        Recorded<T> other = there.get(place);
        if (form.id(other.entry()).equals(a.id())) {
          return new Receipt.Conflict<>(other);
        }
      }
      return null;
    }

    private Receipt<T> receipt(int i, boolean first, Place place) {
      Prepared<T> sent = toSend.get(sentAs[i]);
      if (!first && sent.digest() == asked.get(i).digest()) {
        return new Receipt.Duplicate<>(place);
      }
      Recorded<T> recorded =
          new Recorded<>(place, recordedAt, form.stored(sent.named(), recordedAt));
      return first ? new Receipt.Appended<>(recorded) : new Receipt.Conflict<>(recorded);
    }

    /**
     * Puts what is durable into the index, and takes it as read where nothing else came between.
     *
     * @param places null where it is not durable; those of a partition ascend
     */
    private void note(List<Place> places) throws IOException {
      for (int i = 0; i < places.size(); i++) {
        Place place = places.get(i);
        if (place != null) {
          index.add(toSend.get(i).hash(), toSend.get(i).digest(), place, recordedAt);
          if (index.covered(place.partition()) == place.offset()) {
            index.cover(place.partition(), place.offset() + 1);
          } else {
            gap = true;
          }
        }
      }
    }
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
        underWay.peek().settle();
      }
      withIndex(index::saveIfWorthwhile);
    } finally {
      sender.close();
      records.close();
    }
  }
}
