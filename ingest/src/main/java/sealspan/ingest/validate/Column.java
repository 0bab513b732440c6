package sealspan.ingest.validate;

import java.util.Set;

/**
 * One documented column of our own tables, as {@code columns.csv} gives it.
 *
 * @param index place among all columns, from 0
 * @param name documented name, without the prefix of a block or line
 * @param base the name without the suffix of its unit
 * @param dimension what sort of unit the suffix may name
 * @param block part of a row that it belongs to
 * @param plain what the name without a prefix means in a row that tells of a whole visit
 * @param lines whether a bypass and further mainlines have the column too
 * @param unit unit of the documented name
 * @param domain what may stand in a cell
 * @param example an example
 * @param meaning the meaning in plain words
 */
public record Column(
    int index,
    String name,
    String base,
    Dimension dimension,
    String block,
    Plain plain,
    boolean lines,
    String unit,
    String domain,
    String example,
    String meaning) {

  /** Sorts of units that a suffix of the name may tell. */
  public enum Dimension {
    /** {@code _psid}, {@code _psi}, {@code _kpa} or {@code _bar}. */
    PRESSURE,
    /** {@code _in} or {@code _mm}. */
    LENGTH,
    /** {@code _c} or {@code _f}. */
    TEMPERATURE,
    NONE
  }

  /** What a name without a prefix means in a row that tells of a whole visit. */
  public enum Plain {
    /** It holds for every block of the row. */
    ALL,
    /** It holds for the as-found test. */
    FOUND,
    /** It needs the prefix of its block. */
    NO,
    /** It belongs to files with one row per event only. */
    EVENT
  }

  private static final Set<String> PREFIXED = Set.of("act", "round", "repair");

  /** Whether the column takes a prefix such as {@code found_} in a row of a whole visit. */
  public boolean prefixed() {
    return PREFIXED.contains(block);
  }

  /** Whether other columns with any ending fit the name, such as {@code condition_...}. */
  public boolean open() {
    return name.endsWith("{name}");
  }
}
