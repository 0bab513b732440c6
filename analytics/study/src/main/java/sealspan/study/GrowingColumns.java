package sealspan.study;

import java.util.Arrays;

/** Rows of numbers that are collected one by one and read column by column. */
final class GrowingColumns {
  private final double[][] columns;
  private int rows;

  GrowingColumns(int count) {
    columns = new double[count][16];
  }

  void add(double... row) {
    if (rows == columns[0].length) {
      for (int j = 0; j < columns.length; j++) {
        columns[j] = Arrays.copyOf(columns[j], 2 * rows);
      }
    }
    for (int j = 0; j < columns.length; j++) {
      columns[j][rows] = row[j];
    }
    rows++;
  }

  int rows() {
    return rows;
  }

  double[] column(int index) {
    return Arrays.copyOf(columns[index], rows);
  }
}
