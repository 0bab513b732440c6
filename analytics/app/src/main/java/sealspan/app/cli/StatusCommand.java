package sealspan.app.cli;

import java.io.PrintWriter;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import sealspan.answers.Published;
import sealspan.app.engine.CatchingUp;
import sealspan.app.engine.Cuts;
import sealspan.app.engine.DataFolder;
import sealspan.app.engine.EngineDoor;
import sealspan.app.engine.EngineState;
import sealspan.app.engine.FolderTrouble;
import sealspan.app.engine.LogClient;

@Command(
    name = "status",
    mixinStandardHelpOptions = true,
    description = {
      "Says whether the engine runs, how much is in the log, and how far behind the answers and the"
          + " estimates are.",
      "Exit code 3 when no engine runs."
    })
final class StatusCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private DataOption data;

  @Override
  public Integer call() {
    DataFolder folder = data.folder();
    EngineDoor door = new EngineDoor(folder);
    Optional<EngineState> engine = door.running();
    Optional<Published> published = Published.newest(folder.root());
    line("data folder", folder.root());
    FolderTrouble.ofRoom(folder).ifPresent(words -> line("disk", words));
    if (engine.isPresent()) {
      ofEngine(engine.get());
      ofLog(folder, engine.get(), published);
    } else {
      line("engine", "does not run");
      EngineState.read(folder)
          .map(EngineState::lastError)
          .filter(e -> !e.isEmpty())
          .or(door::wantOfMemory)
          .ifPresent(e -> line("last error", e));
      line("in the answers", published.map(p -> p.cut().events()).orElse(0L) + " events");
    }
    ofFit(published);
    spec.commandLine().getOut().flush();
    return engine.isPresent() ? ExitCode.DONE : ExitCode.IN_PART;
  }

  private void ofEngine(EngineState engine) {
    line(
        "engine",
        "process "
            + engine.pid()
            + ", "
            + engine.phase().name().toLowerCase(java.util.Locale.ROOT)
            + " since "
            + engine.startTime().truncatedTo(ChronoUnit.SECONDS));
    line("log at", engine.kafka().isEmpty() ? "not known yet" : engine.kafka());
    line("results", "generation " + engine.generation() + ", made by build " + engine.codeStamp());
    if (!engine.lastError().isEmpty()) {
      line("trouble", engine.lastError());
    }
  }

  private void ofLog(DataFolder folder, EngineState engine, Optional<Published> published) {
    if (engine.phase() != EngineState.Phase.RUNNING) {
      return;
    }
    try (LogClient log = LogClient.of(folder, engine)) {
      long events = Cuts.events(log.events().end());
      long inAnswers = published.map(p -> Cuts.events(Cuts.parse(p.cut().offsets()))).orElse(0L);
      line("in the log", events + " events");
      line(
          "in the answers",
          inAnswers
              + " events"
              + (inAnswers < events ? ", " + (events - inAnswers) + " behind" : ", up to date"));
      CatchingUp.read(folder).ifPresent(words -> line("catching up", words));
      if (published.filter(p -> !p.cut().codeVersion().equals(engine.codeStamp())).isPresent()) {
        line("", "made by another build; the engine is making its own beside them");
      }
    }
  }

  private void ofFit(Optional<Published> published) {
    LocalDateTime newest = published.map(Published::fitNewestRecordedAt).orElse(null);
    if (newest == null) {
      line("last fit", "none yet");
      return;
    }
    Instant at = newest.toInstant(ZoneOffset.UTC).truncatedTo(ChronoUnit.SECONDS);
    long events = Cuts.events(Cuts.parse(published.orElseThrow().fitOffsets()));
    line(
        "last fit",
        "of " + events + " events, the newest recorded " + at + " (" + ago(at) + " ago)");
  }

  private static String ago(Instant at) {
    Duration age = Duration.between(at, Instant.now());
    if (age.toDays() > 1) {
      return age.toDays() + " days";
    }
    return age.toHours() > 1 ? age.toHours() + " hours" : Math.max(0, age.toMinutes()) + " minutes";
  }

  private void line(String name, Object value) {
    PrintWriter out = spec.commandLine().getOut();
    out.println(String.format("%-16s %s", name, value));
  }
}
