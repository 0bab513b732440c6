package sealspan.app.engine;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Folders with all that is in them. */
public final class Trees {
  private Trees() {}

  /** Deletes a folder of disposable things; nothing happens where there is none. */
  public static void delete(Path folder) {
    try {
      List<Path> deepestFirst;
      try (Stream<Path> tree = Files.walk(folder)) {
        deepestFirst = tree.sorted(Comparator.reverseOrder()).toList();
      }
      for (Path path : deepestFirst) {
        Files.deleteIfExists(path);
      }
    } catch (NoSuchFileException e) {
      return;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
