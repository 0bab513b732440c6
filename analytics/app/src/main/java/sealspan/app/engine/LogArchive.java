package sealspan.app.engine;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Function;
import sealspan.app.Problem;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.ingest.archive.Archive;
import sealspan.ingest.archive.Exporting;
import sealspan.ingest.archive.Headway;
import sealspan.ingest.archive.Manifest;
import sealspan.ingest.archive.Restoring;
import sealspan.ingest.log.KafkaAddress;
import sealspan.ingest.log.KafkaLedger;

/** Carries the log of a data folder out to files and back. */
public final class LogArchive {
  private final DataFolder folder;

  public LogArchive(DataFolder folder) {
    this.folder = folder;
  }

  /** What to do about files of an export that are not as written. */
  public enum Flawed {
    REFUSE,
    /** Restore the others. */
    LEAVE_OUT
  }

  /**
   * Writes the whole log to a folder. A running engine goes on; without one, the broker of the data
   * folder is run for as long as it takes.
   *
   * @param program version of the program
   * @throws Problem when another program has the folder
   */
  public Manifest export(Path target, String program, Headway headway) {
    requireWhole(folder);
    Function<KafkaAddress, Manifest> write =
        address -> new Exporting(address, CodeStamp.running(), headway).to(target, program);
    Optional<EngineState> engine = new EngineDoor(folder).running();
    if (engine.isPresent()) {
      KafkaAddress there = new KafkaAddress(engine.get().kafka(), LogClient.settings(folder));
      return write.apply(there);
    }
    return withoutEngine(log -> write.apply(log.kafka()));
  }

  /**
   * Puts an export into a data folder without a log.
   *
   * @throws Problem when there is a log, or a file of the export is flawed and that is refused
   */
  public Restoring.Outcome restore(Path source, Flawed flawed, Headway headway) {
    Archive archive = Archive.open(source);
    if (flawed == Flawed.REFUSE && !archive.flaws().isEmpty()) {
      throw new Problem(
          "The export "
              + source
              + " is not as it was written:\n"
              + archive.flawsInWords()
              + "\nTake those files from another copy, or restore what is sound with --sound-only.");
    }
    return withoutEngine(
        log -> {
          Restoring restoring = new Restoring(log.kafka(), headway);
          if (!Files.exists(folder.restoring())) {
            restoring.requireEmpty(archive);
            begin(source);
          }
          Restoring.Outcome outcome = restoring.from(archive);
          settle(log, archive, outcome);
          end();
          return outcome;
        });
  }

  /**
   * @throws Problem while a restore into the folder is not done
   */
  static void requireWhole(DataFolder folder) {
    if (!Files.exists(folder.restoring())) {
      return;
    }
    try {
      String source = Files.readString(folder.restoring()).strip();
      throw new Problem(
          "A restore into "
              + folder.root()
              + " is not done. If it was broken off, go on with it: sealspan restore "
              + source
              + " --data "
              + folder.root());
    } catch (IOException e) {
      throw new Problem(folder.restoring() + " cannot be read (" + e.getMessage() + ").", e);
    }
  }

  /** The criteria in force go with the log, and places told in the ledger have to hold. */
  private void settle(LogHome log, Archive archive, Restoring.Outcome outcome) {
    try (KafkaLedger ledger = new KafkaLedger(log.kafka(), folder.index())) {
      Decisions decisions = new Decisions(ledger);
      if (!outcome.keptPlaces()) {
        decisions.moved("Restored without all events of the export:\n" + archive.flawsInWords());
      }
      decisions
          .lastCriteria()
          .filter(csv -> !csv.equals(AcceptanceCriteria.shipped().csv()))
          .ifPresent(csv -> CriteriaInForce.put(folder, new AcceptanceCriteria(csv)));
    }
  }

  private <R> R withoutEngine(Function<LogHome, R> work) {
    try (EngineLock lock = EngineLock.take(folder)) {
      ProgramLog.into(folder);
      try (LogHome log = LogHome.open(folder)) {
        return work.apply(log);
      }
    } catch (IOException e) {
      throw new Problem("The data folder " + folder.root() + " cannot be used.", e);
    }
  }

  private void begin(Path source) {
    try {
      Files.writeString(folder.restoring(), source.toAbsolutePath().normalize() + "\n");
    } catch (IOException e) {
      throw new Problem(folder.root() + " cannot be written (" + e.getMessage() + ").", e);
    }
  }

  private void end() {
    try {
      Files.delete(folder.restoring());
    } catch (IOException e) {
      throw new Problem(folder.restoring() + " cannot be deleted (" + e.getMessage() + ").", e);
    }
  }
}
