package sealspan.stats.scan;

import java.util.Arrays;

/** Ids sorted by distance, then id; grows as needed and is used again and again. */
final class NearestFirst {
  private double[] distance = new double[64];
  private int[] id = new int[64];
  private int size;

  void clear() {
    size = 0;
  }

  int size() {
    return size;
  }

  double distance(int at) {
    return distance[at];
  }

  int id(int at) {
    return id[at];
  }

  void add(int newId, double newDistance) {
    if (size == id.length) {
      distance = Arrays.copyOf(distance, 2 * size);
      id = Arrays.copyOf(id, 2 * size);
    }
    distance[size] = newDistance;
    id[size++] = newId;
  }

  void sort() {
    for (int root = size / 2 - 1; root >= 0; root--) {
      sink(root, size);
    }
    for (int end = size - 1; end > 0; end--) {
      swap(0, end);
      sink(0, end);
    }
  }

  /**
   * The zones about a centre from what was added: sorted, cut at the limits and at the last
   * complete zone. Null where not even the first zone is within the limits.
   *
   * @param weight expected cases of each place
   * @param mostWeight the most expected cases of a zone ({@link ZoneLimits#mostWeight})
   * @param mostPlaces the most places of a zone
   * @param known whether every place was added; if not, the farthest tie may be cut
   * @param penalty penalty of the shape
   */
  ZoneOrder order(
      double[] weight, double mostWeight, int mostPlaces, boolean known, double penalty) {
    sort();
    double sum = 0;
    int end = 0;
    int reached = 0;
    while (reached < size && reached < mostPlaces) {
      sum += weight[id[reached]];
      if (sum > mostWeight) {
        break;
      }
      reached++;
      if (completeAt(reached, known)) {
        end = reached;
      }
    }
    if (end == 0) {
      return null;
    }
    boolean[] complete = new boolean[end];
    for (int i = 0; i < end; i++) {
      complete[i] = completeAt(i + 1, known);
    }
    return new ZoneOrder(Arrays.copyOf(id, end), complete, penalty);
  }

  private boolean completeAt(int count, boolean known) {
    return count == size ? known : distance[count] > distance[count - 1];
  }

  private void sink(int from, int end) {
    int root = from;
    while (true) {
      int child = 2 * root + 1;
      if (child >= end) {
        return;
      }
      if (child + 1 < end && before(child, child + 1)) {
        child++;
      }
      if (!before(root, child)) {
        return;
      }
      swap(root, child);
      root = child;
    }
  }

  private boolean before(int a, int b) {
    return distance[a] < distance[b] || distance[a] == distance[b] && id[a] < id[b];
  }

  private void swap(int a, int b) {
    double d = distance[a];
    distance[a] = distance[b];
    distance[b] = d;
    int i = id[a];
    id[a] = id[b];
    id[b] = i;
  }
}
