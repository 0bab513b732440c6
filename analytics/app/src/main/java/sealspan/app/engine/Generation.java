package sealspan.app.engine;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;
import java.util.Properties;
import sealspan.jobs.StateKept;

/**
 * One build of all results from the log. Another build of the code or other criteria need another.
 *
 * @param number from 1, growing
 * @param codeStamp the build of the code that makes it
 * @param criteriaDigest the criteria that it judges by
 * @param stateKept where its continuous job keeps its state
 */
record Generation(int number, String codeStamp, String criteriaDigest, StateKept stateKept) {
  /** From so many events on, state is kept in files rather than on the heap. */
  private static final long MANY_EVENTS = 500_000;

  /** Where the state of a log of so many events is best kept. */
  static StateKept stateFor(long events) {
    return events < MANY_EVENTS ? StateKept.HEAP : StateKept.ROCKSDB;
  }

  /** Name in topics and folders. */
  String name() {
    return "g" + number;
  }

  /** Whether what this build and these criteria make is the same. */
  boolean isMadeBy(String otherCodeStamp, String otherCriteriaDigest) {
    return codeStamp.equals(otherCodeStamp) && criteriaDigest.equals(otherCriteriaDigest);
  }

  /** The generation in use; empty before the first. */
  static Optional<Generation> read(DataFolder folder) {
    Properties p = new Properties();
    try (Reader in = Files.newBufferedReader(file(folder))) {
      p.load(in);
      return Optional.of(
          new Generation(
              Integer.parseInt(p.getProperty("number")),
              p.getProperty("codeStamp"),
              p.getProperty("criteria"),
              StateKept.valueOf(p.getProperty("stateKept"))));
    } catch (NoSuchFileException e) {
      return Optional.empty();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Puts this generation in use. */
  void write(DataFolder folder) {
    Properties p = new Properties();
    p.setProperty("number", Integer.toString(number));
    p.setProperty("codeStamp", codeStamp);
    p.setProperty("criteria", criteriaDigest);
    p.setProperty("stateKept", stateKept.name());
    Path draft = file(folder).resolveSibling("generation.new");
    try {
      try (Writer out = Files.newBufferedWriter(draft)) {
        p.store(out, "The results in use. Written by the program; do not edit.");
      }
      Files.move(
          draft, file(folder), StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Path file(DataFolder folder) {
    return folder.engine().resolve("generation");
  }
}
