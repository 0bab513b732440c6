package sealspan.stats;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * Asks an installed R for the same figures, as an outside check on random data. A test class that
 * uses it is annotated {@link Needed}; without R and its packages it is skipped by name.
 *
 * <pre>{@code
 * Map<String, double[]> r =
 *     LiveR.given("time", days).and("status", ended).ask(
 *         "f <- survfit(Surv(time, status) ~ 1); answer <- list(time = f$time, surv = f$surv)");
 * }</pre>
 *
 * <p>The vectors given are numeric variables of the script (NaN arrives as NA, infinite as Inf);
 * the script puts numeric vectors into the list {@code answer}. The packages survival and MASS are
 * loaded.
 */
public final class LiveR {
  private static final long MOST_SECONDS = 120;

  private final Map<String, double[]> variables = new LinkedHashMap<>();

  private LiveR() {}

  /** Starts a question with a first variable. */
  public static LiveR given(String name, double[] values) {
    return new LiveR().and(name, values);
  }

  /** A further variable. */
  public LiveR and(String name, double[] values) {
    variables.put(name, values.clone());
    return this;
  }

  /** A further variable, of whole numbers. */
  public LiveR and(String name, int[] values) {
    return and(name, Arrays.stream(values).asDoubleStream().toArray());
  }

  /** Runs the script and reads the vectors of its list {@code answer}; fails with R's own words. */
  public Map<String, double[]> ask(String script) {
    try {
      Path folder = Files.createTempDirectory("live-r");
      try {
        return run(folder, script);
      } finally {
        try (var files = Files.list(folder)) {
          for (Path file : files.toList()) {
            Files.delete(file);
          }
        }
        Files.delete(folder);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Map<String, double[]> run(Path folder, String script) throws IOException {
    List<String> lines = new ArrayList<>();
    lines.add("suppressPackageStartupMessages({library(survival); library(MASS)})");
    for (Map.Entry<String, double[]> variable : variables.entrySet()) {
      Path file = folder.resolve(variable.getKey());
      Files.write(file, Arrays.stream(variable.getValue()).mapToObj(LiveR::text).toList());
      lines.add(
          variable.getKey() + " <- scan('" + file + "', what = double(), quiet = TRUE, na = 'NA')");
    }
    lines.add(script);
    lines.add("for (name in names(answer)) cat(name, sprintf('%.17g', answer[[name]]), '\\n')");
    Path program = Files.write(folder.resolve("program.R"), lines);
    Path printed = folder.resolve("printed");
    Path said = folder.resolve("said");
    Process process =
        new ProcessBuilder("Rscript", "--vanilla", program.toString())
            .redirectOutput(printed.toFile())
            .redirectError(said.toFile())
            .start();
    wait(process);
    if (process.exitValue() != 0) {
      throw new IllegalStateException("R failed: " + Files.readString(said));
    }
    Map<String, double[]> answer = new LinkedHashMap<>();
    for (String line : Files.readAllLines(printed)) {
      String[] words = line.strip().split(" +");
      answer.put(words[0], Arrays.stream(words).skip(1).mapToDouble(LiveR::number).toArray());
    }
    return answer;
  }

  private static void wait(Process process) {
    try {
      if (!process.waitFor(MOST_SECONDS, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new IllegalStateException("R took more than " + MOST_SECONDS + " s");
      }
    } catch (InterruptedException e) {
      process.destroyForcibly();
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while R ran", e);
    }
  }

  private static String text(double value) {
    if (Double.isNaN(value)) {
      return "NA";
    }
    return Double.isInfinite(value) ? value > 0 ? "Inf" : "-Inf" : Double.toString(value);
  }

  private static double number(String word) {
    return switch (word) {
      case "NA", "NaN" -> Double.NaN;
      case "Inf" -> Double.POSITIVE_INFINITY;
      case "-Inf" -> Double.NEGATIVE_INFINITY;
      default -> Double.parseDouble(word);
    };
  }

  /** Skips a test, and says why, on a machine without R and its packages survival and MASS. */
  @Retention(RetentionPolicy.RUNTIME)
  @ExtendWith(Installed.class)
  public @interface Needed {}

  /** What {@link Needed} asks. */
  static final class Installed implements ExecutionCondition {
    private static final boolean THERE = answers();

    @Override
    public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
      return THERE
          ? ConditionEvaluationResult.enabled("R is there")
          : ConditionEvaluationResult.disabled(
              "R is not there; Debian has it as r-base-core, r-cran-survival, r-cran-mass and"
                  + " r-cran-npsurv");
    }

    private static boolean answers() {
      try {
        return LiveR.given("x", new double[] {1}).ask("answer <- list(x = x)").containsKey("x");
      } catch (UncheckedIOException | IllegalStateException e) {
        return false;
      }
    }
  }
}
