package sealspan.answers.writer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.sql.SQLException;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class HandTest {
  private static final List<Integer> MANY = IntStream.range(0, 1_001).boxed().toList();

  @Test
  void doesBothHalvesOfALongListSideBySide() throws Exception {
    ConcurrentLinkedQueue<Integer> done = new ConcurrentLinkedQueue<>();
    CountDownLatch both = new CountDownLatch(2);
    try (Hand hand = new Hand("second")) {
      hand.halve(
          MANY,
          part -> {
            both.countDown();
            try {
              both.await(); // Neither half ends before the other has begun.
            } catch (InterruptedException e) {
              throw new SQLException(e);
            }
            done.addAll(part);
          });
    }
    assertEquals(MANY, done.stream().sorted().toList());
  }

  @Test
  void doesAShortListItself() throws Exception {
    Set<Thread> threads = ConcurrentHashMap.newKeySet();
    try (Hand hand = new Hand("second")) {
      hand.halve(MANY.subList(0, 10), part -> threads.add(Thread.currentThread()));
    }
    assertEquals(Set.of(Thread.currentThread()), threads);
  }

  @Test
  void tellsWhatKeptTheSecondHalfFromBeingDone() {
    try (Hand hand = new Hand("second")) {
      SQLException told =
          assertThrows(SQLException.class, () -> hand.halve(MANY, part -> failOn(1_000, part)));
      assertEquals("no 1000", told.getMessage());
    }
  }

  @Test
  void waitsForTheSecondHalfWhereTheFirstFails() {
    CountDownLatch firstFails = new CountDownLatch(1);
    AtomicBoolean secondDone = new AtomicBoolean();
    try (Hand hand = new Hand("second")) {
      SQLException told =
          assertThrows(
              SQLException.class,
              () ->
                  hand.halve(
                      MANY,
                      part -> {
                        if (part.contains(0)) {
                          firstFails.countDown();
                          failOn(0, part);
                        }
                        try {
                          firstFails.await();
                          Thread.sleep(100);
                        } catch (InterruptedException e) {
                          throw new SQLException(e);
                        }
                        secondDone.set(true);
                      }));
      assertEquals("no 0", told.getMessage());
      assertTrue(secondDone.get());
    }
  }

  private static void failOn(int number, List<Integer> part) throws SQLException {
    if (part.contains(number)) {
      throw new SQLException("no " + number);
    }
  }
}
