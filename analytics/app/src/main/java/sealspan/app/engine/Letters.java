package sealspan.app.engine;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * How commands ask things of the engine and are answered: small files in a folder of the data
 * folder. They need no port and no password; who may write the folder may ask.
 */
public final class Letters {
  private static final String ANSWER = ".answer";

  private final Path folder;

  public Letters(DataFolder dataFolder) {
    this.folder = dataFolder.engine().resolve("letters");
  }

  /** What can be asked of an engine. */
  public enum Wish {
    STOP,
    /** Fit now, at the present end of the log. */
    FIT,
    /** Make all results anew from the log. */
    REBUILD
  }

  /**
   * A letter.
   *
   * @param id unique id
   * @param wish what is asked
   */
  public record Letter(String id, Wish wish) {}

  /**
   * How a wish ended.
   *
   * @param outcome whether it was done
   * @param words what was done, or why not, for people
   */
  public record Answer(Outcome outcome, String words) {}

  /** Whether a wish was fulfilled. */
  public enum Outcome {
    DONE,
    REFUSED
  }

  /** Sends a letter. */
  public Letter send(Wish wish) {
    Letter letter = new Letter(UUID.randomUUID().toString(), wish);
    write(letter.id() + "." + wish.name().toLowerCase(Locale.ROOT), "");
    return letter;
  }

  /** The answer to a letter, once; empty while there is none yet. */
  public Optional<Answer> answer(Letter letter) {
    Path file = folder.resolve(letter.id() + ANSWER);
    try {
      String text = Files.readString(file);
      Files.delete(file);
      int end = text.indexOf('\n');
      return Optional.of(
          new Answer(Outcome.valueOf(text.substring(0, end)), text.substring(end + 1)));
    } catch (NoSuchFileException e) {
      return Optional.empty();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Takes the letters that have come, for the engine. */
  List<Letter> take() {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(Letters::opened).flatMap(Optional::stream).toList();
    } catch (NoSuchFileException e) {
      return List.of();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Answers a letter, for the engine. */
  void reply(Letter letter, Answer answer) {
    write(letter.id() + ANSWER, answer.outcome().name() + "\n" + answer.words());
  }

  /** Throws away what was sent to an engine that is no more. */
  void clear() {
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.toList()) {
        Files.deleteIfExists(file);
      }
    } catch (NoSuchFileException e) {
      return;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Optional<Letter> opened(Path file) {
    String name = file.getFileName().toString();
    int dot = name.lastIndexOf('.');
    for (Wish wish : Wish.values()) {
      if (name.substring(dot + 1).equals(wish.name().toLowerCase(Locale.ROOT))) {
        try {
          return Files.deleteIfExists(file)
              ? Optional.of(new Letter(name.substring(0, dot), wish))
              : Optional.empty();
        } catch (IOException e) {
          throw new UncheckedIOException(e);
        }
      }
    }
    return Optional.empty();
  }

  private void write(String name, String text) {
    try {
      Files.createDirectories(folder);
      Path draft = Files.writeString(folder.resolve(name + ".new"), text);
      Files.move(draft, folder.resolve(name), StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
