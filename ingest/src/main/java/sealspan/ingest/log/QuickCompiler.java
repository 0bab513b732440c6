package sealspan.ingest.log;

import java.util.List;

/**
 * Whether the programs started in the background are for a small record or a short time, as in the
 * demonstration and in tests. Then they leave out the compiler that pays in the long run only, and
 * which takes half of all work of their first half minute.
 */
public final class QuickCompiler {
  /** Environment variable: {@code yes} where it is so. */
  public static final String SHORT_LIVED = "SEALSPAN_SHORT_LIVED";

  private QuickCompiler() {}

  /**
   * The options of Java that say so; none where programs are to run for long. With that compiler
   * alone there is room for a fifth of the usual code; tests of the jobs filled it in four minutes,
   * and from then on nothing was compiled.
   */
  public static List<String> options() {
    return "yes".equals(System.getenv(SHORT_LIVED))
        ? List.of("-XX:TieredStopAtLevel=1", "-XX:ReservedCodeCacheSize=240m")
        : List.of();
  }
}
