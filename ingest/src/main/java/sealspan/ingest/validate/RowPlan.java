package sealspan.ingest.validate;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import sealspan.event.Unit;

/** What the cells of each row of a table are, read once from the table's header. */
public final class RowPlan {
  /** What one row tells of. */
  public enum Form {
    /** A whole visit: as-found test, repair and as-left test side by side. */
    VISIT,
    /** One event, named by the column {@code event}. */
    EVENT
  }

  private static final Column EVENT = Columns.named("event");
  private static final Column ASSEMBLY_ID = Columns.named("assembly_id");
  private static final Column DATE = Columns.named("date");
  private static final Column INSTALL_DATE = Columns.named("install_date");
  private static final Column KNOWN_SINCE = Columns.named("known_since");

  private final Form form;
  private final List<String> fileNames;
  private final Unit[] units;
  private final List<String> unused = new ArrayList<>();
  private final BlockPlan row = new BlockPlan();
  private final BlockPlan found = new BlockPlan();
  private final BlockPlan repair = new BlockPlan();
  private final BlockPlan left = new BlockPlan();
  private final List<Integer> siteCells = new ArrayList<>();
  private final List<Integer> assemblyCells = new ArrayList<>();
  private final List<Integer> jobCells = new ArrayList<>();

  private RowPlan(Form form, List<String> fileNames) {
    this.form = form;
    this.fileNames = List.copyOf(fileNames);
    this.units = new Unit[fileNames.size()];
  }

  /**
   * Reads a header.
   *
   * @param names the documented name of each cell; what is no such name is left unused
   * @param fileNames the names that the file itself gives, for messages; as many
   * @throws HeaderException where required columns are missing, or a name is there twice or can
   *     mean two things
   */
  public static RowPlan of(List<String> names, List<String> fileNames) throws HeaderException {
    List<HeaderCell> heads = new ArrayList<>();
    Form form = Form.VISIT;
    for (String name : names) {
      HeaderCell head = name == null ? null : HeaderCell.of(CodeList.plain(name));
      heads.add(head);
      if (head != null && head.column() == EVENT) {
        form = Form.EVENT;
      }
    }
    RowPlan plan = new RowPlan(form, fileNames);
    List<String> wrong = new ArrayList<>();
    for (int cell = 0; cell < heads.size(); cell++) {
      plan.place(heads.get(cell), cell, wrong);
    }
    plan.require(wrong);
    if (!wrong.isEmpty()) {
      throw new HeaderException(String.join(" ", wrong));
    }
    return plan;
  }

  private void place(HeaderCell head, int cell, List<String> wrong) {
    String name = fileNames.get(cell);
    if (head == null) {
      unused.add(name);
      return;
    }
    units[cell] = head.unit();
    String complaint = form == Form.EVENT ? placeInEvent(head, cell) : placeInVisit(head, cell);
    if (complaint != null) {
      wrong.add("Column '" + name + "' " + complaint);
    }
  }

  private String placeInEvent(HeaderCell head, int cell) {
    if (head.block() != HeaderCell.Block.NONE) {
      return "belongs to tables with one row per visit, and this one has a column 'event'."
          + " Leave out one of the two.";
    }
    return row.addOwn(head, cell) ? null : TWICE;
  }

  private static final String TWICE =
      "is there twice, or the same column under two names. Leave one out or rename it.";

  private String placeInVisit(HeaderCell head, int cell) {
    Column column = head.column();
    boolean free =
        switch (head.block()) {
          case FOUND -> found.addOwn(head, cell);
          case REPAIR -> repair.addOwn(head, cell);
          case LEFT -> left.addOwn(head, cell);
          case NONE ->
              switch (column.plain()) {
                case ALL -> {
                  listByBlock(column, cell);
                  found.addShared(head, cell);
                  repair.addShared(head, cell);
                  left.addShared(head, cell);
                  yield row.addOwn(head, cell);
                }
                case FOUND -> found.addShared(head, cell);
                case NO, EVENT -> true;
              };
        };
    if (head.block() == HeaderCell.Block.NONE && column.plain() == Column.Plain.NO) {
      String rest = fileNames.get(cell);
      return column.block().equals("repair")
          ? "needs its block in a table with one row per visit: repair_" + rest + "."
          : "needs its block in a table with one row per visit: found_"
              + rest
              + " or left_"
              + rest
              + ".";
    }
    if (head.block() == HeaderCell.Block.NONE && column.plain() == Column.Plain.EVENT) {
      return "is for tables with one row per event, which need a column 'event'.";
    }
    return free ? null : TWICE;
  }

  private void listByBlock(Column column, int cell) {
    switch (column.block()) {
      case "site" -> siteCells.add(cell);
      case "assembly" -> assemblyCells.add(cell);
      case "job" -> jobCells.add(cell);
      default -> {
        // The cells of other blocks do not decide whether an event is told of.
      }
    }
  }

  private void require(List<String> wrong) {
    if (form == Form.EVENT) {
      return;
    }
    boolean dated =
        found.has(DATE)
            || repair.has(DATE)
            || left.has(DATE)
            || row.has(INSTALL_DATE)
            || row.has(KNOWN_SINCE);
    if (!row.has(ASSEMBLY_ID)) {
      wrong.add(missing("assembly_id"));
    }
    if (!dated) {
      wrong.add(missing("date"));
    }
  }

  private String missing(String column) {
    Set<String> names = new TreeSet<>();
    unused.forEach(name -> names.add(CodeList.plain(name)));
    String near = NearMiss.nearest(column, names);
    return "The header has no column '"
        + column
        + "'"
        + (near == null ? "" : " (is it '" + near + "'?)")
        + "; it has: "
        + String.join(", ", fileNames)
        + ". Rename the column, or give a mapping.";
  }

  /** What one row tells of. */
  public Form form() {
    return form;
  }

  /** Names of columns that are none of ours, as the file has them. */
  public List<String> unused() {
    return List.copyOf(unused);
  }

  /** How many cells a row has. */
  public int cellCount() {
    return fileNames.size();
  }

  String fileName(int cell) {
    return fileNames.get(cell);
  }

  Unit unit(int cell) {
    return units[cell];
  }

  BlockPlan row() {
    return row;
  }

  BlockPlan found() {
    return found;
  }

  BlockPlan repair() {
    return repair;
  }

  BlockPlan left() {
    return left;
  }

  boolean tellsOfSite(String[] cells) {
    return anyFilled(siteCells, cells);
  }

  boolean tellsOfAssembly(String[] cells) {
    return anyFilled(assemblyCells, cells);
  }

  boolean tellsOfJob(String[] cells) {
    return anyFilled(jobCells, cells);
  }

  private static boolean anyFilled(List<Integer> which, String[] cells) {
    for (int cell : which) {
      if (Fields.isFilled(cells[cell])) {
        return true;
      }
    }
    return false;
  }
}
