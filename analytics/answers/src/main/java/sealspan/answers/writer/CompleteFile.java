package sealspan.answers.writer;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** A file that is complete and on disk before its name appears. */
final class CompleteFile {
  private CompleteFile() {}

  /** Gives what was written under a name of its own its final name, in the place of any other. */
  static void put(Path written, Path name) throws IOException {
    flush(written);
    Files.move(written, name, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  /** Sees to it that what was written is on disk. */
  static void flush(Path written) throws IOException {
    try (FileChannel channel = FileChannel.open(written, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
  }
}
