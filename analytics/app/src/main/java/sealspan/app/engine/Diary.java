package sealspan.app.engine;

import java.io.IOException;
import java.time.Instant;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sealspan.app.engine.EngineState.Phase;

/** Keeps what the engine has written down about itself up to date. */
final class Diary {
  private static final Logger LOG = LoggerFactory.getLogger(Diary.class);

  private final DataFolder folder;
  private EngineState state;

  Diary(DataFolder folder) {
    this.folder = folder;
  }

  /** The engine lives; it takes nothing yet. */
  synchronized void began() {
    ProcessHandle self = ProcessHandle.current();
    state =
        new EngineState(
            self.pid(),
            self.info().startInstant().orElseGet(Instant::now),
            Phase.STARTING,
            "",
            "",
            0,
            null,
            "");
    write();
  }

  /** The engine takes events. */
  synchronized void running(String kafka) {
    set(Phase.RUNNING, kafka, state.codeStamp(), state.generation(), state.lastFit(), "");
  }

  /** Which results it keeps up. */
  synchronized void generation(int number, String codeStamp) {
    set(state.phase(), state.kafka(), codeStamp, number, state.lastFit(), state.lastError());
  }

  /** The engine is about to end: because of this, or as it was asked to, with empty words. */
  synchronized void stopping(String words) {
    set(
        Phase.STOPPING,
        state.kafka(),
        state.codeStamp(),
        state.generation(),
        state.lastFit(),
        words);
  }

  synchronized void fitted(Instant at) {
    set(state.phase(), state.kafka(), state.codeStamp(), state.generation(), at, "");
  }

  /** Something is wrong, and the engine goes on; empty words for all is well again. */
  synchronized void trouble(String words) {
    if (!words.equals(state.lastError())) {
      if (!words.isEmpty()) {
        LOG.warn("{}", words);
      }
      set(
          state.phase(),
          state.kafka(),
          state.codeStamp(),
          state.generation(),
          state.lastFit(),
          words);
    }
  }

  /** The engine ends because of this. */
  synchronized void failed(String words) {
    LOG.error("{}", words);
    set(Phase.FAILED, state.kafka(), state.codeStamp(), state.generation(), state.lastFit(), words);
  }

  private void set(
      Phase phase,
      String kafka,
      String codeStamp,
      int generation,
      Instant lastFit,
      String lastError) {
    state =
        new EngineState(
            state.pid(),
            state.startTime(),
            phase,
            kafka,
            codeStamp,
            generation,
            lastFit,
            lastError == null ? "" : lastError);
    write();
  }

  /** An engine whose disk is full goes on for as long as its broker does. */
  private void write() {
    try {
      state.write(folder);
    } catch (IOException e) {
      LOG.warn("The state of the engine could not be written down: {}", e.toString());
    }
  }
}
