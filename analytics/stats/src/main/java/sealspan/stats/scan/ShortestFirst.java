package sealspan.stats.scan;

import java.util.Arrays;

/** Nodes to be visited, by distance, then number: a binary heap that may hold a node twice. */
final class ShortestFirst {
  private double[] distance = new double[64];
  private int[] node = new int[64];
  private int size;

  void clear() {
    size = 0;
  }

  boolean isEmpty() {
    return size == 0;
  }

  double nextDistance() {
    return distance[0];
  }

  int nextNode() {
    return node[0];
  }

  void add(int newNode, double newDistance) {
    if (size == node.length) {
      distance = Arrays.copyOf(distance, 2 * size);
      node = Arrays.copyOf(node, 2 * size);
    }
    int at = size++;
    while (at > 0) {
      int parent = (at - 1) / 2;
      if (!before(newDistance, newNode, parent)) {
        break;
      }
      distance[at] = distance[parent];
      node[at] = node[parent];
      at = parent;
    }
    distance[at] = newDistance;
    node[at] = newNode;
  }

  /** Takes the next one away. */
  void removeNext() {
    double lastDistance = distance[--size];
    int lastNode = node[size];
    int at = 0;
    while (2 * at + 1 < size) {
      int child = 2 * at + 1;
      if (child + 1 < size && before(distance[child + 1], node[child + 1], child)) {
        child++;
      }
      if (before(lastDistance, lastNode, child)) {
        break;
      }
      distance[at] = distance[child];
      node[at] = node[child];
      at = child;
    }
    distance[at] = lastDistance;
    node[at] = lastNode;
  }

  private boolean before(double aDistance, int aNode, int b) {
    return aDistance < distance[b] || aDistance == distance[b] && aNode < node[b];
  }
}
