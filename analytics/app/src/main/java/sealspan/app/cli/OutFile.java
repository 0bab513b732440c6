package sealspan.app.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import sealspan.app.Problem;

/** Writes what a user asked for to a file. */
final class OutFile {
  private OutFile() {}

  /**
   * Writes text, whole or not at all.
   *
   * @throws Problem when it cannot be written
   */
  static void write(Path file, String text) {
    try {
      Files.writeString(file, text);
    } catch (IOException e) {
      throw new Problem(file + " cannot be written (" + e.getMessage() + "). Choose another.", e);
    }
  }
}
