package sealspan.answers.freesql;

import java.time.Duration;

/**
 * What a user's query may use.
 *
 * @param time how long it may run, start of its process included
 * @param memoryMegabytes memory of DuckDB; the process around it gets a fixed allowance more
 * @param rows rows that are handed on; the others are cut off, and the answer says so
 * @param resultMegabytes size of the rows that are handed on
 */
public record SqlLimits(Duration time, int memoryMegabytes, long rows, int resultMegabytes) {
  /** 20 seconds, 512 MB, 10 000 rows, 64 MB of result. */
  public static final SqlLimits USUAL = new SqlLimits(Duration.ofSeconds(20), 512, 10_000, 64);

  public SqlLimits {
    if (time.isNegative() || time.isZero() || memoryMegabytes < 32 || rows < 1) {
      throw new IllegalArgumentException("Limits leave something to run with.");
    }
  }

  /** What a query is told that needs more memory. */
  static String tooMuchMemory(String megabytes) {
    return "The query was stopped: it needed more than the "
        + megabytes
        + " MB of memory that it may use. Ask for less, or narrow it down.";
  }
}
