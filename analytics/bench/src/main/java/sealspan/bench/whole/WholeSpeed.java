package sealspan.bench.whole;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sealspan.answers.AnswersFolder;
import sealspan.answers.Filter;
import sealspan.answers.FilterUse;
import sealspan.answers.OpenSnapshot;
import sealspan.answers.Question;
import sealspan.answers.Questions;
import sealspan.app.engine.Coverage;
import sealspan.app.engine.DataFolder;
import sealspan.app.engine.EngineDoor;
import sealspan.app.engine.LogClient;
import sealspan.event.LoggedEvent;
import sealspan.event.TestPerformed;
import sealspan.ingest.log.Cut;

/**
 * The whole program on an invented fleet: import, rebuild, one live event, every question, and in
 * the same run the limits that nothing can beat. Prints rows of a Markdown table.
 *
 * <p>Arguments: the launcher, a scratch folder, assemblies, years, seconds of live events, and
 * which parts of it, all where none is named. A large fleet takes hours: what one run has imported
 * the next one finds in the scratch folder.
 */
public final class WholeSpeed {
  private static final int PATTERNS = 5_000;
  private static final Duration GLANCE = Duration.ofSeconds(5);
  private static final Coverage.Listener SILENT = (published, goal, meanwhile) -> {};

  /** What can be asked for by itself. */
  private enum Part {
    IMPORT,
    RAW,
    REBUILD,
    LIVE,
    QUESTIONS
  }

  private final Path launcher;
  private final Path scratch;
  private final Path data;
  private final String assemblies;

  private WholeSpeed(Path launcher, Path scratch, String assemblies) {
    this.launcher = launcher;
    this.scratch = scratch;
    this.assemblies = assemblies;
    this.data = scratch.resolve("data-" + assemblies);
  }

  /** Runs the benchmark. */
  public static void main(String[] args) throws Exception {
    if (args.length < 5) {
      System.err.println(
          "Arguments: LAUNCHER SCRATCH-FOLDER ASSEMBLIES YEARS LIVE-SECONDS "
              + Arrays.toString(Part.values()));
      System.exit(2);
    }
    Set<Part> parts = args.length == 5 ? EnumSet.allOf(Part.class) : EnumSet.noneOf(Part.class);
    for (String part : List.of(args).subList(5, args.length)) {
      parts.add(Part.valueOf(part.toUpperCase(Locale.ROOT)));
    }
    new WholeSpeed(Path.of(args[0]).toAbsolutePath(), Path.of(args[1]).toAbsolutePath(), args[2])
        .run(args[3], Integer.parseInt(args[4]), parts);
  }

  private void run(String years, int liveSeconds, Set<Part> parts) throws Exception {
    System.out.println("| assemblies | what | figure |\n|---|---|---|");
    DataFolder folder = new DataFolder(data);
    if (new EngineDoor(folder).running().isEmpty()) {
      sealspan("start", "--data", "" + data);
    }
    try (MemoryWatch memory = new MemoryWatch(data);
        LogClient log = LogClient.of(folder, new EngineDoor(folder).opened())) {
      if (parts.contains(Part.IMPORT)) {
        importing(years, log, memory);
      }
      if (parts.contains(Part.RAW)) {
        untilQuiet(folder);
        rawRead(log);
      }
      if (parts.contains(Part.REBUILD)) {
        untilQuiet(folder);
        memory.peakGb();
        double took = sealspan("rebuild", "--data", "" + data);
        rate("rebuild: log to published answers", events(log.events().end()), took, memory);
      }
      if (parts.contains(Part.LIVE)) {
        live(log, liveSeconds, memory);
      }
      if (parts.contains(Part.QUESTIONS)) {
        untilQuiet(folder);
        parquet();
        questions();
      }
    } finally {
      sealspan("stop", "--data", "" + data);
    }
  }

  private void importing(String years, LogClient log, MemoryWatch memory)
      throws IOException, InterruptedException {
    Path fleet = scratch.resolve("fleet-" + assemblies);
    double made =
        sealspan("practice", "--assemblies", assemblies, "--years", years, "--out", "" + fleet);
    row("practice fleet written", "%.1f s", made);
    long begin = System.nanoTime();
    double took =
        sealspan(
            "import",
            "--no-wait",
            "--source",
            "practice",
            "--data",
            "" + data,
            "" + fleet.resolve("events.jsonl"),
            "" + fleet.resolve("visits.csv"));
    Cut end = log.events().end();
    rate("import", events(end), took, memory);
    Coverage coverage = new Coverage(new DataFolder(data));
    coverage.await(end, SILENT);
    rate("import begun to published answers", events(end), seconds(begin), memory);
    coverage.awaitFit(end, SILENT);
    rate("import begun to all scored with a fit of it", events(end), seconds(begin), memory);
  }

  private static long events(Cut end) {
    return end.offsets().stream().mapToLong(Long::longValue).sum();
  }

  private void rate(String what, long events, double seconds, MemoryWatch memory) {
    row(
        what,
        "%,d events, %.1f s, %,.0f events/s, peak %.2f GB",
        events,
        seconds,
        events / seconds,
        memory.peakGb());
  }

  /** Waits until the engine has had little to do for a while; idle it takes a tenth of a core. */
  private static void untilQuiet(DataFolder folder) throws InterruptedException {
    ProcessHandle engine = ProcessHandle.of(new EngineDoor(folder).opened().pid()).orElseThrow();
    Duration before = Duration.ZERO;
    for (int quiet = 0; quiet < 2; ) {
      Thread.sleep(GLANCE.toMillis());
      Duration used = engine.info().totalCpuDuration().orElse(Duration.ZERO);
      quiet = used.minus(before).multipliedBy(4).compareTo(GLANCE) < 0 ? quiet + 1 : 0;
      before = used;
    }
  }

  /** The limit: every event read and decoded. */
  private void rawRead(LogClient log) {
    Cut end = log.events().end();
    long[] tests = {0};
    long begin = System.nanoTime();
    log.events()
        .read(
            Cut.START,
            end,
            r -> {
              if (r.entry().event() instanceof TestPerformed) {
                tests[0]++;
              }
            });
    row(
        "raw read of the topic with decoding",
        "%,.0f events/s (%,d tests)",
        events(end) / seconds(begin),
        tests[0]);
  }

  private void live(LogClient log, int liveSeconds, MemoryWatch memory)
      throws InterruptedException {
    memory.peakGb();
    List<LoggedEvent> patterns = new ArrayList<>();
    Cut end = log.events().end();
    Cut lastOnes = new Cut(end.offsets().stream().map(o -> Math.max(0, o - PATTERNS)).toList());
    log.events()
        .read(
            lastOnes,
            end,
            r -> {
              if (r.entry().event() instanceof TestPerformed) {
                patterns.add(r.entry());
              }
            });
    if (patterns.isEmpty()) {
      throw new IllegalStateException("There is no test among the newest events to go by.");
    }
    List<Double> waits = new LiveLatency(log.events(), data).measure(patterns, liveSeconds);
    row(
        "live event to answer, 50 a second for %d s",
        "median %.2f s, 99 %% %.2f s, most %.2f s; peak %.2f GB",
        liveSeconds,
        at(waits, .5),
        at(waits, .99),
        at(waits, 1),
        memory.peakGb());
  }

  /** The limit: failures and exposure of each assembly by DuckDB over Parquet. */
  private void parquet() throws SQLException, IOException {
    Path file = scratch.resolve("exposure-" + assemblies + ".parquet");
    Path snapshot = new AnswersFolder(data).newestSnapshot();
    try (Connection connection = OpenSnapshot.readOnly(snapshot);
        Statement sql = connection.createStatement()) {
      sql.execute("copy exposure to '" + file + "' (format parquet)");
      long begin = System.nanoTime();
      sql.execute(
          "create temp table t as select assembly_id, count(*) as tests, sum(exposure_days) as days,"
              + " count(*) filter (failed) as failures from '"
              + file
              + "' where component = 'whole' group by assembly_id");
      row("the same sums by DuckDB over Parquet", "%.2f s", seconds(begin));
    }
    Files.delete(file);
  }

  private void questions() throws IOException, InterruptedException, SQLException {
    Map<Filter, String> values = new EnumMap<>(Filter.class);
    Path snapshot = new AnswersFolder(data).newestSnapshot();
    try (Connection connection = OpenSnapshot.readOnly(snapshot);
        Statement sql = connection.createStatement()) {
      try (ResultSet first =
          sql.executeQuery("select assembly_id, site_id from assembly order by 1 limit 1")) {
        first.next();
        values.put(Filter.ASSEMBLY, first.getString(1));
        values.put(Filter.SITE, first.getString(2));
      }
    }
    List<String> all = new ArrayList<>();
    double most = 0;
    for (Question question : Questions.all()) {
      double took = median(question, values);
      most = Math.max(most, took);
      all.add(String.format(Locale.ROOT, "%s %.2f", question.name(), took));
    }
    row(
        "questions, process start included, median of 3",
        "most %.2f s (%s)",
        most,
        String.join(", ", all));
  }

  private double median(Question question, Map<Filter, String> values)
      throws IOException, InterruptedException {
    List<String> words = new ArrayList<>(List.of("ask", question.name(), "--data", "" + data));
    words.addAll(List.of("--format", "csv", "--out", "" + scratch.resolve("answer.csv")));
    for (FilterUse use : question.filters()) {
      if (use.need() == FilterUse.Need.REQUIRED) {
        words.addAll(
            List.of(
                "--" + use.filter().name().toLowerCase(Locale.ROOT),
                values.getOrDefault(use.filter(), "1")));
      }
    }
    double[] took = new double[3];
    for (int i = 0; i < took.length; i++) {
      took[i] = sealspan(words.toArray(String[]::new));
    }
    Arrays.sort(took);
    return took[1];
  }

  private double sealspan(String... words) throws IOException, InterruptedException {
    List<String> command = Stream.concat(Stream.of("" + launcher), Stream.of(words)).toList();
    Path said = scratch.resolve("said.txt");
    Files.createDirectories(scratch);
    long begin = System.nanoTime();
    int code =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(said.toFile())
            .start()
            .waitFor();
    double took = seconds(begin);
    if (code != 0 && code != 3) {
      throw new IllegalStateException(
          command + " ended with " + code + ": " + Files.readString(said));
    }
    return took;
  }

  private static double seconds(long beginNanos) {
    return (System.nanoTime() - beginNanos) / 1e9;
  }

  private static double at(List<Double> ascending, double share) {
    return ascending.get(
        (int) Math.min(ascending.size() - 1, Math.floor(share * ascending.size())));
  }

  private void row(String what, String figure, Object... values) {
    int inWhat = (int) IntStream.range(0, what.length()).filter(i -> what.charAt(i) == '%').count();
    System.out.printf(
        Locale.ROOT,
        "| %s | %s | %s |%n",
        assemblies,
        String.format(Locale.ROOT, what, Arrays.copyOf(values, inWhat)),
        String.format(Locale.ROOT, figure, Arrays.copyOfRange(values, inWhat, values.length)));
  }
}
