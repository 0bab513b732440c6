package sealspan.app.engine;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import sealspan.app.Problem;

/** The right to be the engine of a data folder. The operating system frees it when we die. */
final class EngineLock implements AutoCloseable {
  private static final int ATTEMPTS = 10;

  private final FileChannel channel;

  private EngineLock(FileChannel channel) {
    this.channel = channel;
  }

  /**
   * Makes the folder and takes the lock.
   *
   * @throws Problem when another engine has it, or the folder cannot be written
   */
  static EngineLock take(DataFolder folder) {
    try {
      Files.createDirectories(folder.engine());
      FileChannel channel =
          FileChannel.open(file(folder), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      if (!lockedSoon(channel)) {
        channel.close();
        throw new Problem(
            "An engine already runs on "
                + folder.root()
                + (EngineState.read(folder).map(s -> " (process " + s.pid() + ")").orElse(""))
                + ". Any number of commands can use it; to run a second engine choose another"
                + " folder with --data.");
      }
      return new EngineLock(channel);
    } catch (AccessDeniedException e) {
      throw new Problem(
          "You may not write to "
              + folder.root()
              + ". Change its permissions, or choose another folder with --data.",
          e);
    } catch (IOException e) {
      throw new Problem(
          "The data folder "
              + folder.root()
              + " cannot be made or written ("
              + e.getMessage()
              + "). Choose another folder with --data.",
          e);
    }
  }

  /**
   * Whether an engine has the folder. A process table may still list an engine that was killed; the
   * lock does not lie.
   */
  static boolean isHeld(DataFolder folder) {
    try (FileChannel channel = FileChannel.open(file(folder), StandardOpenOption.WRITE)) {
      return !locked(channel);
    } catch (NoSuchFileException e) {
      return false;
    } catch (IOException e) {
      throw new Problem(
          "The data folder " + folder.root() + " cannot be read (" + e.getMessage() + ").", e);
    }
  }

  private static Path file(DataFolder folder) {
    return folder.engine().resolve("lock");
  }

  /** Tries for a moment, because a command that looks whether the lock is held has it shortly. */
  private static boolean lockedSoon(FileChannel channel) throws IOException {
    for (int attempt = 1; !locked(channel); attempt++) {
      if (attempt == ATTEMPTS) {
        return false;
      }
      EngineDoor.pause(Duration.ofMillis(50));
    }
    return true;
  }

  private static boolean locked(FileChannel channel) throws IOException {
    try {
      FileLock lock = channel.tryLock();
      return lock != null;
    } catch (OverlappingFileLockException e) {
      return false;
    }
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
