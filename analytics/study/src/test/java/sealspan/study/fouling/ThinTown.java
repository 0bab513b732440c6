package sealspan.study.fouling;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import sealspan.table.AssemblyRows;

/**
 * An invented town for long, thin clusters, in open sea: {@value #ROWS} streets from west to east,
 * 300 m apart, each with {@value #COLUMNS} sites 300 m apart that are tested once a year for four
 * years. In the third year eleven sites in a row of the middle street are fouled; one visit in
 * thirteen finds fouling anywhere, at any time. Each street has its main, and all mains begin at
 * one that runs along the west.
 */
final class ThinTown {
  static final int ROWS = 7;
  static final int COLUMNS = 15;
  static final double SOUTH = 37;
  static final double WEST = -140;

  /** 300 m north, in degrees of latitude of 111.19 km. */
  static final double NORTH_STEP = 0.3 / 111.195;

  /** 300 m east at 37 degrees north. */
  static final double EAST_STEP = NORTH_STEP / StrictMath.cos(StrictMath.toRadians(SOUTH));

  private static final int YEARS = 4;

  private ThinTown() {}

  static String site(int row, int column) {
    return "S%02d-%02d".formatted(row, column);
  }

  /** The eleven sites that were fouled together. */
  static Set<String> thin() {
    Set<String> sites = new TreeSet<>();
    for (int column = 2; column < 13; column++) {
      sites.add(site(3, column));
    }
    return sites;
  }

  static List<AssemblyRows> rows() {
    List<AssemblyRows> rows = new ArrayList<>();
    for (int row = 0; row < ROWS; row++) {
      for (int column = 0; column < COLUMNS; column++) {
        String site = site(row, column);
        MadeRows made =
            new MadeRows(
                "A" + site, site, SOUTH + row * NORTH_STEP, WEST + column * EAST_STEP, "DC");
        for (int year = 0; year < YEARS; year++) {
          boolean together = year == 2 && thin().contains(site);
          boolean alone = (row * COLUMNS + column + 11 * year) % 13 == 0;
          made.round(day(row, column, year).toString(), 365, together || alone ? "FOULING" : null);
        }
        rows.add(made.rows());
      }
    }
    return rows;
  }

  /** Tests are spread over the year, so that no street has a month of its own. */
  private static LocalDate day(int row, int column, int year) {
    return LocalDate.of(2020 + year, 1 + (row * 5 + column * 7) % 12, 10);
  }

  /** Mains: one along the west, and from it one along each street. Longitude before latitude. */
  static List<double[][]> mains() {
    List<double[][]> mains = new ArrayList<>();
    double west = WEST - EAST_STEP;
    double[][] along = new double[ROWS][];
    for (int row = 0; row < ROWS; row++) {
      double latitude = SOUTH + row * NORTH_STEP + 0.0001;
      along[row] = new double[] {west, latitude};
      mains.add(new double[][] {{west, latitude}, {WEST + COLUMNS * EAST_STEP, latitude}});
    }
    mains.add(along);
    return mains;
  }
}
