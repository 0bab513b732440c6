package sealspan.app.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import sealspan.app.PublishedTables;
import sealspan.app.engine.DataFolder;
import sealspan.app.engine.EngineDoor;
import sealspan.app.engine.EngineState;
import sealspan.app.engine.LogClient;
import sealspan.ingest.log.BrokerState;
import sealspan.ingest.log.Cut;

/**
 * kill -9 of the engine, of its broker and of imports, at moments of chance from a fixed seed,
 * while an invented fleet goes in piece by piece. Nothing that was acknowledged is imported again;
 * so what was lost, or counted twice, would show in the answers.
 */
@Tag("deep")
@Timeout(value = 90, unit = TimeUnit.MINUTES)
class KillsTest {
  /** Fewer, for a shorter run: {@code -Dsealspan.kills=5}. */
  private static final int KILLS_OF_EACH = Integer.getInteger("sealspan.kills", 20);

  private static final int ASSEMBLIES = 1_500;
  private static final int LATEST_MOMENT_MILLIS = 5_000;

  /**
   * Every other round engine and broker live longer, so that a slow machine gets past the start.
   */
  private static final int LONGER = 6;

  /** Forecasts that stand more than once. */
  private static final String ISSUED_TWICE =
      "select count(*) - count(distinct (assembly_id, ledger_id)) from frozen_forecast";

  private static final long SEED = 20_260_301;

  /** Who is killed. */
  private enum Victim {
    ENGINE,
    BROKER,
    IMPORT
  }

  @TempDir Path folder;
  private Path data;
  private final Set<ProcessHandle> seen = new HashSet<>();

  @AfterEach
  void stop() {
    Typed.at(folder.resolve("undisturbed"), "stop");
    Typed.at(folder.resolve("disturbed"), "stop");
  }

  @Test
  void loseNothingAndChangeNoAnswer() throws Exception {
    List<Path> pieces = pieces(3 * KILLS_OF_EACH + 2);
    Map<String, List<String>> expected = undisturbed(pieces);
    data = folder.resolve("disturbed");
    Map<Victim, Integer> killed = new TreeMap<>();
    Random random = new Random(SEED);
    int next = 0;
    for (int round = 0; killed.values().stream().mapToInt(k -> k).sum() < 3 * KILLS_OF_EACH; ) {
      Victim victim = Victim.values()[round % 3];
      Process importing = importing(pieces.get(Math.min(next, pieces.size() - 1)));
      boolean longer = round / 3 % 2 == 1 && victim != Victim.IMPORT;
      int latestMillis = longer ? LONGER * LATEST_MOMENT_MILLIS : LATEST_MOMENT_MILLIS;
      Settled.pause(Duration.ofMillis(random.nextInt(latestMillis)));
      if (kill(victim, importing)) {
        killed.merge(victim, 1, Integer::sum);
        round++;
      }
      if (wentIn(importing)) {
        next++;
      }
    }
    int failures = 0;
    while (next < pieces.size()) {
      if (wentIn(importing(pieces.get(next)))) {
        next++;
      } else { // An engine that was just about to end, for want of its broker, may have been met.
        failures++;
        assertTrue(failures <= 2, output());
      }
    }
    assertEquals(Map.of(), leftOver(), "orphans of kills have ended");
    Settled.fitted(data);
    String log = logInWords();
    Typed.at(data, "stop");
    Files.writeString(Path.of("target", "kills.txt"), killed + ", " + log + System.lineSeparator());
    Map<String, List<String>> answers = PublishedTables.withoutTheClock(data);
    assertEquals(List.of(), PublishedTables.differences(expected, answers));
    assertEquals(List.of("0"), PublishedTables.ask(data, ISSUED_TWICE));
    System.out.println(killed + ", " + log);
    assertFalse(seen.stream().anyMatch(ProcessHandle::isAlive), "stop leaves no process");
  }

  private Map<String, List<String>> undisturbed(List<Path> pieces) {
    Path whole = folder.resolve("undisturbed");
    List<String> words = new ArrayList<>(List.of("import"));
    pieces.forEach(p -> words.add(p.toString()));
    Typed typed = Typed.at(whole, words.toArray(String[]::new));
    assertEquals(ExitCode.IN_PART, typed.code(), typed.toString());
    Settled.fitted(whole);
    Typed.at(whole, "stop");
    return PublishedTables.withoutTheClock(whole);
  }

  /** The files of an invented fleet, cut up, with one that has bad rows among them. */
  private List<Path> pieces(int count) throws IOException {
    Path fleet = folder.resolve("fleet");
    Typed made =
        Typed.of(
            "practice", "--assemblies", "" + ASSEMBLIES, "--years", "4", "--out", fleet.toString());
    assertEquals(ExitCode.DONE, made.code(), made.toString());
    List<Path> pieces = new ArrayList<>();
    pieces.add(fleet.resolve("events.jsonl"));
    pieces.add(
        Path.of(System.getProperty("sealspan.home"), "sample-events", "awkward", "rejected.csv"));
    List<String> lines = Files.readAllLines(fleet.resolve("visits.csv"));
    int size = (lines.size() - 1) / (count - 2) + 1;
    for (int from = 1; from < lines.size(); from += size) {
      List<String> piece = new ArrayList<>(lines.subList(0, 1));
      piece.addAll(lines.subList(from, Math.min(lines.size(), from + size)));
      pieces.add(Files.write(folder.resolve("visits-" + from + ".csv"), piece));
    }
    return pieces;
  }

  private Process importing(Path piece) {
    return OwnProcess.start(
        data, folder.resolve("output"), "import", piece.toString(), "--no-wait");
  }

  private String output() throws IOException {
    List<String> lines = Files.readAllLines(folder.resolve("output"));
    return String.join("\n", lines.subList(Math.max(0, lines.size() - 30), lines.size()));
  }

  /**
   * Waits for an import; whether all of its file was acknowledged. One whose broker is gone waits a
   * minute for it.
   */
  private boolean wentIn(Process importing) throws InterruptedException {
    if (!importing.waitFor(300, TimeUnit.SECONDS)) {
      importing.destroyForcibly().waitFor();
    }
    return List.of(ExitCode.DONE, ExitCode.IN_PART).contains(importing.exitValue());
  }

  /** Kills as soon as the victim is there; not when the import was over before. */
  private boolean kill(Victim victim, Process importing) {
    while (true) {
      Optional<ProcessHandle> found =
          switch (victim) {
            case ENGINE -> engine();
            case BROKER -> broker();
            case IMPORT -> Optional.of(importing.toHandle());
          };
      engine().ifPresent(seen::add);
      broker().ifPresent(seen::add);
      if (found.isPresent() && found.get().isAlive()) {
        found.get().destroyForcibly();
        found.get().onExit().join();
        return true;
      }
      if (!importing.isAlive()) {
        return false;
      }
      Settled.pause(Duration.ofMillis(20));
    }
  }

  private Optional<ProcessHandle> engine() {
    DataFolder at = new DataFolder(data);
    return EngineState.read(at).flatMap(s -> s.process(at));
  }

  private Optional<ProcessHandle> broker() {
    return BrokerState.read(data).flatMap(s -> s.process(data));
  }

  /** Processes of earlier engines that still live. */
  private Map<Long, String> leftOver() {
    Map<Long, String> left = new TreeMap<>();
    seen.stream()
        .filter(ProcessHandle::isAlive)
        .filter(p -> !engine().equals(Optional.of(p)) && !broker().equals(Optional.of(p)))
        .forEach(p -> left.put(p.pid(), p.info().commandLine().orElse("")));
    return left;
  }

  private String logInWords() {
    DataFolder at = new DataFolder(data);
    EngineState engine = new EngineDoor(at).opened();
    Set<String> ids = new HashSet<>();
    try (LogClient log = LogClient.of(at, engine)) {
      Cut end = log.events().end();
      log.events().read(Cut.START, end, r -> ids.add(r.entry().id()));
      long records = end.offsets().stream().mapToLong(o -> o).sum();
      return records + " records of " + ids.size() + " events in the log";
    }
  }
}
