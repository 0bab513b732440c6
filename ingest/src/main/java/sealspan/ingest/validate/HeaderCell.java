package sealspan.ingest.validate;

import sealspan.event.ComponentAt;
import sealspan.event.Unit;

/**
 * What the name of a column says.
 *
 * @param line mainline or bypass
 * @param lineNumber number of the mainline, from 1
 * @param block part of the visit that the prefix names
 * @param column the documented column
 * @param unit unit that the suffix names; null for none
 * @param rest for an open column such as {@code condition_...}, what follows
 */
record HeaderCell(
    ComponentAt.Line line, int lineNumber, Block block, Column column, Unit unit, String rest) {

  /** Parts of a visit that a prefix names. */
  enum Block {
    NONE,
    FOUND,
    REPAIR,
    LEFT
  }

  /** Reads a name; null where it is none of ours. */
  static HeaderCell of(String name) {
    HeaderCell exact = ofPlain(name, ComponentAt.Line.MAIN, 1, Block.NONE);
    if (exact != null) {
      return exact;
    }
    ComponentAt.Line line = ComponentAt.Line.MAIN;
    int number = 1;
    String rest = name;
    if (name.startsWith("bypass_")) {
      line = ComponentAt.Line.BYPASS;
      rest = name.substring(7);
    } else if (name.length() > 6
        && name.startsWith("main")
        && name.charAt(4) >= '1'
        && name.charAt(4) <= '9'
        && name.charAt(5) == '_') {
      number = name.charAt(4) - '0';
      rest = name.substring(6);
    }
    boolean ofLine = rest.length() < name.length();
    Block block = Block.NONE;
    for (Block each : Block.values()) {
      String prefix = each.name().toLowerCase(java.util.Locale.ROOT) + "_";
      if (each != Block.NONE && rest.startsWith(prefix)) {
        block = each;
        rest = rest.substring(prefix.length());
        break;
      }
    }
    HeaderCell cell = ofPlain(rest, line, number, block);
    return cell == null || ofLine && !cell.column().lines() || !takes(block, cell.column())
        ? null
        : cell;
  }

  private static boolean takes(Block block, Column column) {
    return switch (block) {
      case NONE -> true;
      case FOUND, LEFT -> column.block().equals("act") || column.block().equals("round");
      case REPAIR -> column.block().equals("act") || column.block().equals("repair");
    };
  }

  private static HeaderCell ofPlain(String name, ComponentAt.Line line, int number, Block block) {
    Column column = Columns.ofBase(name);
    if (column != null) {
      String rest = column.open() ? name.substring(name.indexOf('_') + 1) : null;
      return new HeaderCell(line, number, block, column, null, rest);
    }
    Suffix suffix = Suffix.of(name);
    column = suffix == null ? null : Columns.ofBase(suffix.base());
    return column == null || column.dimension() != suffix.dimension()
        ? null
        : new HeaderCell(line, number, block, column, suffix.unit(), null);
  }
}
