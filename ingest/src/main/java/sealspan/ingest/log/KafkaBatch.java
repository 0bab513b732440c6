package sealspan.ingest.log;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Entries that are appended together: what is there already is found, the rest is sent, and each
 * gets its receipt once all have landed.
 */
final class KafkaBatch<T> {
  private final List<Prepared<T>> asked;
  private final Instant recordedAt;
  private final EntryForm<T> form;

  /** What becomes of each; null where that comes of what is sent. */
  private final List<Receipt<T>> receipts;

  /** For each without a receipt, which of those that are sent has its id. */
  private final int[] sentAs;

  private final List<Prepared<T>> toSend;

  /** Where the first of each id is among those that are sent. */
  private final IdTable ids;

  private KafkaSender<T>.Flight flight;
  private KafkaSender.Landed landed;

  KafkaBatch(List<Prepared<T>> asked, Instant recordedAt, EntryForm<T> form) {
    this.asked = asked;
    this.recordedAt = recordedAt;
    this.form = form;
    this.receipts = new ArrayList<>(Collections.nCopies(asked.size(), null));
    this.sentAs = new int[asked.size()];
    this.toSend = new ArrayList<>(asked.size());
    this.ids = IdTable.onHeap(asked.size());
  }

  /** Whether an id of others may be one of those that are sent. */
  boolean mayHold(List<Prepared<T>> others) {
    for (Prepared<T> other : others) {
      if (ids.holds(other.hash())) {
        return true;
      }
    }
    return false;
  }

  /** Sends what is not there yet. */
  void depart(IdIndex index, KafkaRecords<T> records, KafkaSender<T> sender) {
    lookUp(index, records);
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

  /** Looks all up. Where an id may be there with another content, only reading that entry tells. */
  private void lookUp(IdIndex index, KafkaRecords<T> records) {
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

  /** Waits until it is decided what becomes of each. */
  void land() {
    landed = flight.land();
  }

  /** Why some could not be appended, once landed; null where all were. */
  Exception failure() {
    return landed.failure();
  }

  /**
   * Puts what is durable into the index, and takes it as read where nothing else came between.
   * Places of a partition ascend.
   *
   * @return whether something of others came between
   */
  boolean noteIn(IdIndex index) throws IOException {
    boolean gap = false;
    for (int i = 0; i < toSend.size(); i++) {
      Place place = landed.places().get(i);
      if (place != null) {
        index.add(toSend.get(i).hash(), toSend.get(i).digest(), place, recordedAt);
        if (index.covered(place.partition()) == place.offset()) {
          index.cover(place.partition(), place.offset() + 1);
        } else {
          gap = true;
        }
      }
    }
    return gap;
  }

  /** A receipt for each, once all have landed. */
  List<Receipt<T>> receipts() {
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

  private Receipt<T> receipt(int i, boolean first, Place place) {
    Prepared<T> sent = toSend.get(sentAs[i]);
    if (!first && sent.digest() == asked.get(i).digest()) {
      return new Receipt.Duplicate<>(place);
    }
    Recorded<T> recorded = new Recorded<>(place, recordedAt, form.stored(sent.named(), recordedAt));
    return first ? new Receipt.Appended<>(recorded) : new Receipt.Conflict<>(recorded);
  }
}
