package sealspan.app.engine;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import java.util.stream.IntStream;
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
  /**
   * State of a new generation is kept in files, whatever the size of the log: a checkpoint then
   * writes what has changed. On the heap every checkpoint wrote all, every second; and a log that
   * is empty today may be a state-wide record tomorrow.
   */
  static final StateKept STATE_KEPT = StateKept.ROCKSDB;

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

  /**
   * Takes a number that no generation had before, not even one that was never finished: what such a
   * one left in the log must not be taken for ours.
   */
  static int takeNumber(DataFolder folder) {
    int number = Math.max(lastTaken(folder), read(folder).map(Generation::number).orElse(0)) + 1;
    try {
      Files.writeString(folder.engine().resolve("last-generation"), Integer.toString(number));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return number;
  }

  /**
   * This generation, and those that this folder began after it and that never came into use.
   * Numbers between that it did not begin may be another folder's on the same log.
   */
  List<Generation> upTo(Generation next, DataFolder folder) {
    return IntStream.range(number, next.number)
        .filter(other -> other == number || Files.isDirectory(folder.checkpoints(other)))
        .mapToObj(other -> new Generation(other, codeStamp, criteriaDigest, stateKept))
        .toList();
  }

  private static int lastTaken(DataFolder folder) {
    try {
      return Integer.parseInt(Files.readString(folder.engine().resolve("last-generation")).strip());
    } catch (NoSuchFileException | NumberFormatException e) {
      return 0;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Path file(DataFolder folder) {
    return folder.engine().resolve("generation");
  }
}
