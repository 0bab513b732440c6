package sealspan.app.engine;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.stream.Stream;
import sealspan.app.Problem;
import sealspan.app.engine.EngineState.Phase;
import sealspan.app.engine.Letters.Answer;
import sealspan.app.engine.Letters.Letter;
import sealspan.app.engine.Letters.Outcome;
import sealspan.app.engine.Letters.Wish;

/** How commands find, start, ask and stop the engine of a data folder. */
public final class EngineDoor {
  private static final Duration START_LIMIT = Duration.ofMinutes(3);
  private static final Duration STOP_LIMIT = Duration.ofSeconds(90);
  private static final Duration GLANCE = Duration.ofMillis(50);
  private static final int LINES_SHOWN = 8;

  private final DataFolder folder;
  private final Letters letters;

  public EngineDoor(DataFolder folder) {
    this.folder = folder;
    this.letters = new Letters(folder);
  }

  /** Whether a command had to start the engine. */
  public enum Found {
    RUNNING,
    STARTED
  }

  /** The engine that runs on the folder; empty when none does. */
  public Optional<EngineState> running() {
    return EngineState.read(folder)
        .filter(s -> s.phase() != Phase.FAILED)
        .filter(s -> s.process(folder).isPresent() && EngineLock.isHeld(folder));
  }

  /**
   * Starts the engine unless it runs, and waits until it takes events.
   *
   * @throws Problem when it cannot start; the message says why
   */
  public Found open() {
    Optional<EngineState> before = running();
    if (before.isPresent() && before.get().phase() == Phase.RUNNING) {
      return Found.RUNNING;
    }
    if (before.isPresent() && before.get().phase() == Phase.STOPPING) {
      before.get().process(folder).ifPresent(p -> awaitEnd(p, STOP_LIMIT));
    }
    ProcessHandle process =
        running().flatMap(s -> s.process(folder)).orElseGet(() -> launch().toHandle());
    awaitRunning(process);
    return Found.STARTED;
  }

  /** The running engine, which takes events; starts it first if need be. */
  public EngineState opened() {
    open();
    return running().orElseThrow(() -> new Problem("The engine ended at once. " + lastWords()));
  }

  /**
   * Stops the engine in an orderly way, and by force if it does not end.
   *
   * @return whether one was running
   */
  public boolean stop() {
    Optional<ProcessHandle> process = running().flatMap(s -> s.process(folder));
    process.ifPresent(
        p -> {
          letters.send(Wish.STOP);
          if (!awaitEnd(p, STOP_LIMIT)) {
            p.destroy();
            if (!awaitEnd(p, Duration.ofSeconds(15))) {
              p.destroyForcibly();
              awaitEnd(p, Duration.ofSeconds(15));
            }
          }
        });
    return process.isPresent();
  }

  /**
   * Asks something of the running engine and waits for its answer.
   *
   * @param meanwhile hears now and then how far the engine is, in words, where it says so
   * @throws Problem when the engine ends or refuses
   */
  public String ask(Wish wish, Consumer<String> meanwhile) {
    ProcessHandle process =
        running().flatMap(s -> s.process(folder)).orElseThrow(() -> new Problem(notRunning()));
    Letter letter = letters.send(wish);
    while (true) {
      boolean alive = process.isAlive();
      Optional<Answer> answer = letters.answer(letter);
      if (answer.isPresent()) {
        if (answer.get().outcome() == Outcome.REFUSED) {
          throw new Problem(answer.get().words());
        }
        return answer.get().words();
      }
      if (!alive) {
        throw new Problem("The engine ended before it was done. " + lastWords());
      }
      CatchingUp.read(folder).ifPresent(meanwhile);
      pause(GLANCE);
    }
  }

  /** What to say when an engine is needed and none runs. */
  public String notRunning() {
    return "No engine runs on "
        + folder.root()
        + ". Start one with: sealspan start"
        + wantOfMemory().map(words -> "\n" + words).orElse("");
  }

  /** What to say where the last engine ended for want of memory; empty where it did not. */
  public Optional<String> wantOfMemory() {
    try (Stream<String> lines = Files.lines(output())) {
      return lines.anyMatch(line -> line.contains("OutOfMemoryError"))
          ? Optional.of(
              "The engine ended because the record needs more memory than it was given. Nothing"
                  + " that was acknowledged is lost. Give it more, for example: "
                  + EngineCommand.HEAP
                  + "=6g sealspan start --data "
                  + folder.root())
          : Optional.empty();
    } catch (IOException | UncheckedIOException noWords) {
      return Optional.empty();
    }
  }

  private Process launch() {
    LogArchive.requireWhole(folder);
    try {
      Files.createDirectories(folder.engine());
      Files.createDirectories(folder.logs());
      Files.deleteIfExists(output());
      return EngineCommand.of(folder).start();
    } catch (IOException e) {
      throw new Problem(
          "The engine could not be started on "
              + folder.root()
              + " ("
              + e.getMessage()
              + "). May you write to that folder? Choose another with --data.",
          e);
    }
  }

  /** Waits for the engine that was launched, or for one that another command launched before it. */
  private void awaitRunning(ProcessHandle launched) {
    ProcessHandle process = launched;
    long deadline = System.nanoTime() + START_LIMIT.toNanos();
    while (System.nanoTime() < deadline) {
      boolean alive = process.isAlive();
      long pid = process.pid();
      Optional<EngineState> state = EngineState.read(folder).filter(s -> s.pid() == pid);
      if (state.isPresent() && state.get().phase() == Phase.RUNNING) {
        return;
      }
      if (!alive && EngineLock.isHeld(folder)) {
        process = running().flatMap(s -> s.process(folder)).orElse(process);
      } else if (!alive) {
        throw new Problem(
            state
                .map(EngineState::lastError)
                .filter(e -> !e.isEmpty())
                .orElseGet(() -> "The engine could not start. " + lastWords()));
      }
      pause(GLANCE);
    }
    process.destroy();
    throw new Problem("The engine did not start in time. " + lastWords());
  }

  private Path output() {
    return folder.logs().resolve("engine.out");
  }

  private String lastWords() {
    if (wantOfMemory().isPresent()) {
      return wantOfMemory().get();
    }
    try {
      List<String> lines =
          Files.readAllLines(output()).stream().filter(line -> !line.startsWith("\tat ")).toList();
      if (lines.isEmpty()) {
        return "More may be in " + folder.logs().resolve("engine.log") + ".";
      }
      return "Its last words:\n  "
          + String.join(
              "\n  ", lines.subList(Math.max(0, lines.size() - LINES_SHOWN), lines.size()))
          + "\nMore may be in "
          + folder.logs().resolve("engine.log")
          + ".";
    } catch (IOException e) {
      return "It left no words in " + output() + ".";
    }
  }

  private static boolean awaitEnd(ProcessHandle process, Duration limit) {
    long deadline = System.nanoTime() + limit.toNanos();
    while (process.isAlive()) {
      if (System.nanoTime() > deadline) {
        return false;
      }
      pause(GLANCE);
    }
    return true;
  }

  static void pause(Duration d) {
    try {
      TimeUnit.MILLISECONDS.sleep(d.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new Problem("Interrupted.", e);
    }
  }
}
