package sealspan.app.engine;

import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Properties;
import java.util.stream.Collectors;

/**
 * What an engine writes down about itself, so that commands find it and a person can see how it
 * fares.
 *
 * @param pid process number
 * @param startTime when the process started, by the operating system
 * @param phase where it is in its life
 * @param kafka address of the log, {@code HOST:PORT}; empty until known
 * @param codeStamp which build it runs
 * @param generation number of the set of results that it keeps up
 * @param lastFit when the last fit came in; null before the first
 * @param lastError the last thing that went wrong, in words; empty for nothing
 */
public record EngineState(
    long pid,
    Instant startTime,
    Phase phase,
    String kafka,
    String codeStamp,
    int generation,
    Instant lastFit,
    String lastError) {
  private static final Duration START_TIME_TOLERANCE = Duration.ofSeconds(2);

  /** What a file needs on a disk at least, whatever is in it. */
  private static final int BLOCK_BYTES = 4096;

  /** Where an engine is in its life. */
  public enum Phase {
    STARTING,
    RUNNING,
    STOPPING,
    /** It ended because of {@link EngineState#lastError()}. */
    FAILED
  }

  /** What the folder's last engine wrote; empty when none did, or it was cut short. */
  public static Optional<EngineState> read(DataFolder folder) {
    Properties p = new Properties();
    try (Reader in = Files.newBufferedReader(file(folder))) {
      p.load(in);
      String lastFit = p.getProperty("lastFit", "");
      return Optional.of(
          new EngineState(
              Long.parseLong(p.getProperty("pid", "")),
              Instant.parse(p.getProperty("startTime", "")),
              Phase.valueOf(p.getProperty("phase", "")),
              p.getProperty("kafka", ""),
              p.getProperty("codeStamp", ""),
              Integer.parseInt(p.getProperty("generation", "0")),
              lastFit.isEmpty() ? null : Instant.parse(lastFit),
              p.getProperty("lastError", "")));
    } catch (IOException | IllegalArgumentException | DateTimeException e) {
      return Optional.empty();
    }
  }

  /**
   * The engine's process if it still runs: the same process number and the same start time. The
   * operating system derives start times from the clock, which may have been set since; so a Java
   * process with the number will do while the folder's lock is held.
   */
  public Optional<ProcessHandle> process(DataFolder folder) {
    return ProcessHandle.of(pid)
        .filter(ProcessHandle::isAlive)
        .filter(p -> startedAsWritten(p) || isJava(p) && EngineLock.isHeld(folder));
  }

  private boolean startedAsWritten(ProcessHandle p) {
    return p.info()
        .startInstant()
        .map(t -> Duration.between(t, startTime).abs())
        .map(d -> d.compareTo(START_TIME_TOLERANCE) <= 0)
        .orElse(false);
  }

  private static boolean isJava(ProcessHandle p) {
    return p.info().command().map(c -> Path.of(c).endsWith("java")).orElse(false);
  }

  /** Writes it in the place of the last one: also on a full disk, but then with fewer words. */
  void write(DataFolder folder) throws IOException {
    Path draft = file(folder).resolveSibling("state.new");
    try {
      Files.write(draft, text(lastError));
      Files.move(
          draft, file(folder), StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException noRoom) {
      byte[] text = text(lastError.lines().limit(1).collect(Collectors.joining()));
      if (text.length > BLOCK_BYTES || !Files.exists(file(folder))) {
        throw noRoom;
      }
      try (FileChannel here = FileChannel.open(file(folder), StandardOpenOption.WRITE)) {
        here.write(ByteBuffer.wrap(text)); // where the last one lies there is room for this one
        here.truncate(text.length);
      }
    }
  }

  private byte[] text(String words) throws IOException {
    Properties p = new Properties();
    p.setProperty("pid", Long.toString(pid));
    p.setProperty("startTime", startTime.toString());
    p.setProperty("phase", phase.name());
    p.setProperty("kafka", kafka);
    p.setProperty("codeStamp", codeStamp);
    p.setProperty("generation", Integer.toString(generation));
    p.setProperty("lastFit", lastFit == null ? "" : lastFit.toString());
    p.setProperty("lastError", words);
    StringWriter out = new StringWriter();
    p.store(out, "The engine of this data folder. Written by the program; do not edit.");
    return out.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static Path file(DataFolder folder) {
    return folder.engine().resolve("state");
  }
}
