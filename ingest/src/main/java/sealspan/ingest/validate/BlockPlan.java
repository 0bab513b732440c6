package sealspan.ingest.validate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import sealspan.event.ComponentAt;

/** Which cells of a row tell of one block, such as the as-found test. */
final class BlockPlan {
  /** The cells of a line of the assembly, by index of column; -1 for none. */
  record LineCells(ComponentAt.Line line, int number, int[] cells) {
    ComponentAt at(sealspan.event.Component component) {
      return new ComponentAt(line, number, component);
    }
  }

  /** A column of the form's own, such as {@code condition_...}. */
  record OpenCell(String name, int cell) {}

  private final int[] own = none();
  private final int[] shared = none();
  private final List<Integer> ownCells = new ArrayList<>();
  private final List<LineCells> lines = new ArrayList<>();
  private final List<OpenCell> conditions = new ArrayList<>();

  private static int[] none() {
    int[] cells = new int[Columns.count()];
    Arrays.fill(cells, -1);
    return cells;
  }

  /** Adds a cell that speaks of this block alone; false where there is such a cell already. */
  boolean addOwn(HeaderCell head, int cell) {
    ownCells.add(cell);
    if (head.column().open()) {
      conditions.add(new OpenCell(head.rest().replace('_', ' '), cell));
      return true;
    }
    int[] cells = own;
    if (head.column().lines()) {
      cells = line(head).cells();
    }
    boolean free = cells[head.column().index()] < 0;
    cells[head.column().index()] = cell;
    return free;
  }

  /** Adds a cell that speaks of other blocks too; false where there is such a cell already. */
  boolean addShared(HeaderCell head, int cell) {
    if (head.column().open()) {
      conditions.add(new OpenCell(head.rest().replace('_', ' '), cell));
      return true;
    }
    boolean free = shared[head.column().index()] < 0;
    shared[head.column().index()] = cell;
    return free;
  }

  private LineCells line(HeaderCell head) {
    for (LineCells line : lines) {
      if (line.line() == head.line() && line.number() == head.lineNumber()) {
        return line;
      }
    }
    LineCells line = new LineCells(head.line(), head.lineNumber(), none());
    lines.add(line);
    return line;
  }

  /** Whether any cell that speaks of this block alone is filled. */
  boolean isTold(String[] cells) {
    for (int cell : ownCells) {
      if (Fields.isFilled(cells[cell])) {
        return true;
      }
    }
    return false;
  }

  boolean has(Column column) {
    return own[column.index()] >= 0 || shared[column.index()] >= 0;
  }

  int own(Column column) {
    return own[column.index()];
  }

  int shared(Column column) {
    return shared[column.index()];
  }

  List<LineCells> lines() {
    return lines;
  }

  List<OpenCell> conditions() {
    return conditions;
  }
}
