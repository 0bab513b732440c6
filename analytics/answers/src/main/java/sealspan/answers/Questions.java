package sealspan.answers;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The questions that the program knows. */
public final class Questions {
  private static final String FOLDER = "/sealspan/answers/questions/";
  private static final Map<String, String> TEXTS = readTexts();
  private static final List<Question> ALL =
      TEXTS.entrySet().stream().map(e -> Question.parse(e.getKey(), e.getValue())).toList();

  private Questions() {}

  /** The text of every question by its name, in the order in which they are listed. */
  static Map<String, String> texts() {
    return TEXTS;
  }

  /** All questions, in the order in which they are listed. */
  public static List<Question> all() {
    return ALL;
  }

  /** The question of a name; fails with {@link AnswersException} that lists the names. */
  public static Question named(String name) {
    return ALL.stream()
        .filter(question -> question.name().equals(name))
        .findFirst()
        .orElseThrow(
            () ->
                new AnswersException(
                    "There is no question named "
                        + name
                        + ". Questions are "
                        + ALL.stream().map(Question::name).collect(Collectors.joining(", "))
                        + "."));
  }

  private static Map<String, String> readTexts() {
    Map<String, String> texts = new LinkedHashMap<>();
    text("index")
        .lines()
        .filter(name -> !name.isBlank())
        .forEach(name -> texts.put(name, text(name + ".sql")));
    return Collections.unmodifiableMap(texts);
  }

  private static String text(String file) {
    try (InputStream in = Questions.class.getResourceAsStream(FOLDER + file)) {
      if (in == null) {
        throw new IllegalStateException("The program's own file " + FOLDER + file + " is missing.");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
