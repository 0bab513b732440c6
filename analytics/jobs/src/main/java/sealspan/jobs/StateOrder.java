package sealspan.jobs;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import org.apache.flink.runtime.state.KeyGroupRangeAssignment;

/**
 * Keys in the order in which state kept in files has them: by key group, then by length, then by
 * letters. Who reads the state of many keys then goes through the files from one end to the other,
 * rather than here and there.
 */
final class StateOrder {
  private StateOrder() {}

  /** The keys in that order. */
  static List<String> of(Collection<String> keys, int keyGroups) {
    record Placed(int group, String key) {}
    List<Placed> placed = new ArrayList<>(keys.size());
    for (String key : keys) {
      placed.add(new Placed(KeyGroupRangeAssignment.assignToKeyGroup(key, keyGroups), key));
    }
    placed.sort(
        Comparator.comparingInt(Placed::group)
            .thenComparingInt(p -> p.key().length())
            .thenComparing(Placed::key));
    return placed.stream().map(Placed::key).toList();
  }
}
