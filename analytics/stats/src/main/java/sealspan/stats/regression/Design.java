package sealspan.stats.regression;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** The columns of a regression, by name; immutable. */
public final class Design {
  /** Name of the column of ones. */
  public static final String CONSTANT = "constant";

  private final int rows;
  private final List<String> names;
  private final List<double[]> columns;

  private Design(int rows, List<String> names, List<double[]> columns) {
    this.rows = rows;
    this.names = List.copyOf(names);
    this.columns = List.copyOf(columns);
  }

  /** A design without columns. */
  public static Design ofRows(int rows) {
    return new Design(rows, List.of(), List.of());
  }

  /** With a column of ones, {@link #CONSTANT}. */
  public Design constant() {
    double[] ones = new double[rows];
    java.util.Arrays.fill(ones, 1);
    return column(CONSTANT, ones);
  }

  /** With one more column of finite values; the name must be new. */
  public Design column(String name, double[] values) {
    if (values.length != rows || names.contains(name)) {
      throw new IllegalArgumentException(
          "column "
              + name
              + ": "
              + values.length
              + " values for "
              + rows
              + " rows, or named twice");
    }
    for (int i = 0; i < rows; i++) {
      if (!Double.isFinite(values[i])) {
        throw new IllegalArgumentException(
            "column " + name + ", row " + (i + 1) + ": " + values[i] + " is not a finite number");
      }
    }
    List<String> moreNames = new ArrayList<>(names);
    List<double[]> moreColumns = new ArrayList<>(columns);
    moreNames.add(name);
    moreColumns.add(values.clone());
    return new Design(rows, moreNames, moreColumns);
  }

  /**
   * With one column of zeros and ones, {@code name=level}, for each level other than the base, in
   * order of level.
   *
   * @param levels the level of each row; null is the level "not recorded"
   * @param base the level that the others are compared with
   */
  public Design factor(String name, String[] levels, String base) {
    Design design = this;
    List<String> found =
        java.util.Arrays.stream(levels).map(Design::level).distinct().sorted().toList();
    for (String level : found) {
      if (!level.equals(level(base))) {
        double[] values = new double[levels.length];
        for (int i = 0; i < values.length; i++) {
          values[i] = Objects.equals(level(levels[i]), level) ? 1 : 0;
        }
        design = design.column(name + "=" + level, values);
      }
    }
    return design;
  }

  /** Without one column. */
  public Design without(String name) {
    int at = index(name);
    List<String> fewerNames = new ArrayList<>(names);
    List<double[]> fewerColumns = new ArrayList<>(columns);
    fewerNames.remove(at);
    fewerColumns.remove(at);
    return new Design(rows, fewerNames, fewerColumns);
  }

  /** Number of rows. */
  public int rows() {
    return rows;
  }

  /** Names of the columns, in order. */
  public List<String> names() {
    return names;
  }

  /** Place of a column; fails with IllegalArgumentException for a name that it does not have. */
  public int index(String name) {
    int at = names.indexOf(name);
    if (at < 0) {
      throw new IllegalArgumentException("there is no column " + name + "; columns: " + names);
    }
    return at;
  }

  /** The values of one column; not to be changed. */
  double[] values(int column) {
    return columns.get(column);
  }

  /** All columns, in order; not to be changed. */
  double[][] columns() {
    return columns.toArray(double[][]::new);
  }

  private static String level(String level) {
    return level == null ? "not recorded" : level;
  }
}
