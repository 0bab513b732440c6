package sealspan.stats.scan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Replicates in groups of lanes, and which replicate is in which lane. */
final class LaneGroups {
  private final int places;
  private final int stretches;
  private final int words;
  private final List<LaneGroup> groups = new ArrayList<>();

  /** By lane, over all groups. */
  private int[] replicate = new int[0];

  /** For some number of places, stretches between cuts, and words of a group. */
  LaneGroups(int places, int stretches, int words) {
    this.places = places;
    this.stretches = stretches;
    this.words = words;
  }

  /** Lanes of a full group. */
  private int lanes() {
    return words * LaneGroup.LANES;
  }

  /** Begins anew with replicates from one to before another, without cases. */
  void clear(int first, int end) {
    replicate = IntStream.range(first, end).toArray();
    for (int begin = 0; begin < replicate.length; begin += lanes()) {
      if (begin / lanes() == groups.size()) {
        groups.add(new LaneGroup(places, stretches, words));
      }
      groups.get(begin / lanes()).clear(Math.min(lanes(), replicate.length - begin));
    }
  }

  /** The groups in use. */
  List<LaneGroup> inUse() {
    return groups.subList(0, (replicate.length + lanes() - 1) / lanes());
  }

  /** Enters the largest scores by number of the replicate. */
  void enterLargest(double[] all) {
    for (int i = 0; i < replicate.length; i++) {
      all[replicate[i]] = largest(i);
    }
  }

  private double largest(int i) {
    return groups.get(i / lanes()).largest(i % lanes());
  }

  /** Sorts the replicates by their largest scores, so that those of a group have about the same. */
  void sort() {
    int n = replicate.length;
    int[] from =
        IntStream.range(0, n)
            .boxed()
            .sorted(Comparator.comparingDouble(this::largest))
            .mapToInt(Integer::intValue)
            .toArray();
    double[] largest = Arrays.stream(from).mapToDouble(this::largest).toArray();
    int[] was = replicate;
    replicate = Arrays.stream(from).map(i -> was[i]).toArray();
    for (int i = 0; i < n; i++) {
      groups.get(i / lanes()).setLargest(i % lanes(), largest[i]);
    }
    long[] old = new long[inUse().size() * words];
    long[] sorted = new long[old.length];
    for (int place = 0; place < places; place++) {
      for (int stretch = 0; stretch < stretches; stretch++) {
        sort(place, stretch * words, from, old, sorted);
      }
    }
  }

  private void sort(int place, int at, int[] from, long[] old, long[] sorted) {
    for (int g = 0; g < inUse().size(); g++) {
      System.arraycopy(groups.get(g).row(place), at, old, g * words, words);
    }
    Arrays.fill(sorted, 0);
    for (int i = 0; i < from.length; i++) {
      long count = LaneGroup.count(old[from[i] / LaneGroup.LANES], from[i]);
      sorted[i / LaneGroup.LANES] |= count << LaneGroup.shift(i);
    }
    for (int g = 0; g < inUse().size(); g++) {
      System.arraycopy(sorted, g * words, groups.get(g).row(place), at, words);
    }
  }
}
