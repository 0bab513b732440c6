package sealspan.ingest.log;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.StandardOpenOption;

/** The right to run the broker of one data folder; the operating system frees it at death. */
final class FolderLock {
  private static final long LEAST_FREE_BYTES = 100L << 20;

  private final FileChannel channel;

  private FolderLock(FileChannel channel) {
    this.channel = channel;
  }

  /**
   * Makes the folders and takes the lock.
   *
   * @throws LogException when the folder cannot be written, has hardly any room left, or is held by
   *     another process
   */
  static FolderLock take(BrokerFolder folder) {
    FileChannel channel = null;
    try {
      Files.createDirectories(folder.folder());
      Files.createDirectories(folder.logFolder());
      requireRoom(folder);
      channel =
          FileChannel.open(folder.lockFile(), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      FileLock lock = tryLock(channel);
      if (lock == null) {
        channel.close();
        throw new LogException(
            "Another process already runs the broker of "
                + folder.dataFolder()
                + ". Use that one, stop it first, or choose another data folder.");
      }
      return new FolderLock(channel);
    } catch (IOException e) {
      throw new LogException(cannotWrite(folder, e), e);
    }
  }

  void release() {
    try {
      channel.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static String cannotWrite(BrokerFolder folder, IOException e) {
    String text = e.toString();
    if (text.contains("No space left on device")) {
      return full(folder);
    }
    if (text.contains("Read-only file system")) {
      return "The folder "
          + folder.dataFolder()
          + " is on a disk that may only be read. Choose another data folder.";
    }
    if (e instanceof AccessDeniedException) {
      return "You may not write to "
          + folder.dataFolder()
          + ". Change its permissions, or choose another data folder.";
    }
    return "The folder "
        + folder.dataFolder()
        + " cannot be made or written ("
        + e.getMessage()
        + "). Choose another data folder.";
  }

  private static FileLock tryLock(FileChannel channel) throws IOException {
    try {
      return channel.tryLock();
    } catch (OverlappingFileLockException e) {
      return null;
    }
  }

  private static void requireRoom(BrokerFolder folder) throws IOException {
    if (Files.getFileStore(folder.logFolder()).getUsableSpace() < LEAST_FREE_BYTES) {
      throw new LogException(full(folder));
    }
  }

  private static String full(BrokerFolder folder) {
    return "The disk that holds "
        + folder.dataFolder()
        + " is full: the log needs at least "
        + (LEAST_FREE_BYTES >> 20)
        + " MB to start. Free some space, or choose a folder on another disk.";
  }
}
