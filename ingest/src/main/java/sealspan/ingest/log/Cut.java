package sealspan.ingest.log;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A cut through a topic: for each partition the offset of the first entry that lies behind it. It
 * holds every entry of a smaller offset, and none else.
 *
 * @param offsets by partition from 0; a partition beyond the list is cut at 0
 */
public record Cut(List<Long> offsets) {
  /** Before every entry. */
  public static final Cut START = new Cut(List.of());

  public Cut {
    offsets = List.copyOf(offsets);
    if (offsets.stream().anyMatch(o -> o < 0)) {
      throw new IllegalArgumentException("An offset is not negative: " + offsets);
    }
  }

  static Cut of(long[] offsets) {
    List<Long> list = new ArrayList<>(offsets.length);
    for (long o : offsets) {
      list.add(o);
    }
    return new Cut(list);
  }

  /** Offset of the first entry of a partition that lies behind the cut. */
  public long offset(int partition) {
    return partition < offsets.size() ? offsets.get(partition) : 0;
  }

  /** Whether an entry lies before the cut. */
  public boolean holds(Place place) {
    return place.offset() < offset(place.partition());
  }

  /** Whether everything that the other cut holds is held by this one. */
  public boolean covers(Cut other) {
    for (int p = 0; p < other.offsets.size(); p++) {
      if (offset(p) < other.offset(p)) {
        return false;
      }
    }
    return true;
  }

  /** The offsets by partition, such as {@code 12,0,7}; {@link #parse} reads it back. */
  public String text() {
    return offsets.stream().map(String::valueOf).collect(Collectors.joining(","));
  }

  /**
   * @throws IllegalArgumentException when the text is not that of a cut
   */
  public static Cut parse(String text) {
    if (text.isEmpty()) {
      return START;
    }
    try {
      return new Cut(List.of(text.split(",", -1)).stream().map(Long::valueOf).toList());
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException("Not a cut, which is offsets with commas: " + text, e);
    }
  }
}
