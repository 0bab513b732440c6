package sealspan.answers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import sealspan.answers.chart.Chart;
import sealspan.answers.chart.SvgChart;
import sealspan.answers.chart.TextChart;

/**
 * Every question against a file of text: the question as it is typed, an empty line, the answer.
 * With {@code -Dgolden.write=true} the answers are written down anew, to be read before they are
 * committed.
 */
class QuestionsTest {
  private static final Path GOLDEN = Path.of("src/test/resources/sealspan/answers/golden");

  @TempDir static Path folder;
  private static Answers answers;

  @BeforeAll
  static void publish() throws Exception {
    HandMade.publishedIn(folder);
    answers = Answers.open(folder);
  }

  @AfterAll
  static void close() {
    answers.close();
  }

  @TestFactory
  Stream<DynamicTest> answersAreThoseOfTheGoldenFiles() throws IOException {
    try (Stream<Path> files = Files.list(GOLDEN)) {
      return files.sorted().toList().stream()
          .map(f -> DynamicTest.dynamicTest(f.getFileName().toString(), () -> compare(f)));
    }
  }

  private static void compare(Path file) throws IOException {
    String expected = Files.readString(file);
    String asked = expected.lines().findFirst().orElseThrow();
    String actual = asked + "\n\n" + TextTable.of(ask(asked));
    if (Boolean.getBoolean("golden.write")) {
      Files.writeString(file, actual);
    }
    assertEquals(expected, actual);
  }

  @TestFactory
  Stream<DynamicTest> everyChartCanBeDrawn() throws IOException {
    try (Stream<Path> files = Files.list(GOLDEN)) {
      return files.sorted().toList().stream()
          .map(QuestionsTest::firstLine)
          .filter(asked -> Questions.named(asked.split(" ")[1]).chart() != null)
          .map(asked -> DynamicTest.dynamicTest(asked, () -> draw(asked)));
    }
  }

  private static String firstLine(Path file) {
    try (Stream<String> lines = Files.lines(file)) {
      return lines.findFirst().orElseThrow();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void draw(String asked) {
    Chart chart = Chart.of(Questions.named(asked.split(" ")[1]), ask(asked));
    assertTrue(TextChart.of(chart).startsWith(chart.title()), asked);
    assertTrue(SvgChart.of(chart).endsWith("</svg>\n"), asked);
  }

  private static Answer ask(String asked) {
    List<String> words = new ArrayList<>(List.of(asked.split(" ")));
    assertEquals("ask", words.remove(0));
    Question question = Questions.named(words.remove(0));
    Map<String, String> filters = new LinkedHashMap<>();
    for (int i = 0; i < words.size(); i += 2) {
      filters.put(words.get(i).substring(2), words.get(i + 1));
    }
    return answers.ask(question, filters);
  }

  @Test
  void everyQuestionHasAGoldenFileAndIsListed() throws IOException {
    List<String> missing = new ArrayList<>();
    for (Question question : Questions.all()) {
      if (!Files.exists(GOLDEN.resolve(question.name() + ".txt"))) {
        missing.add(question.name());
      }
    }
    assertEquals(List.of(), missing);
    try (Stream<Path> files =
        Files.list(Path.of("src/main/resources/sealspan/answers/questions"))) {
      assertEquals(
          Questions.all().stream().map(q -> q.name() + ".sql").sorted().toList(),
          files
              .map(f -> f.getFileName().toString())
              .filter(n -> !n.equals("index"))
              .sorted()
              .toList());
    }
  }

  @Test
  void everyDeclaredFilterIsUsedAndEveryUsedOneIsDeclared() {
    for (Question question : Questions.all()) {
      assertEquals(
          question.filters().stream().map(FilterUse::filter).sorted().toList(),
          BoundSql.of(
                  question.sql()
                      + "\n"
                      + (question.wordsSql() == null ? "" : question.wordsSql() + "\n")
                      + question.beneathSql())
              .filters()
              .stream()
              .sorted()
              .toList(),
          question.name());
    }
  }

  @Test
  void aValueThatLooksLikeSqlIsOnlyAValue() {
    Answer answer = answers.ask(Questions.named("worst-sites"), Map.of("site", "S1' or '1'='1"));
    assertEquals(List.of(), answer.table().rows());
  }

  @Test
  void saysWhatIsWrongWithAFilter() {
    assertMessage("There is no question named worst", () -> Questions.named("worst"));
    assertMessage(
        "needs the filter assembly: assembly id",
        () -> answers.ask(Questions.named("history"), Map.of()));
    assertMessage(
        "The question history does not take the filter zone; it takes assembly, since, until.",
        () -> answers.ask(Questions.named("history"), Map.of("zone", "Z1")));
    assertMessage(
        "There is no filter named colour",
        () -> answers.ask(Questions.named("history"), Map.of("colour", "red")));
    assertMessage(
        "takes a date such as 2025-03-31, not yesterday",
        () ->
            answers.ask(
                Questions.named("history"), Map.of("assembly", "A1", "since", "yesterday")));
    assertMessage(
        "takes a whole number, not -1",
        () -> answers.ask(Questions.named("worst-sites"), Map.of("limit", "-1")));
  }

  private static void assertMessage(String part, Runnable act) {
    AnswersException e = assertThrows(AnswersException.class, act::run);
    assertTrue(e.getMessage().contains(part), e.getMessage());
  }

  @Test
  void theGoldenFilesAreText() throws IOException {
    try (Stream<Path> files = Files.list(GOLDEN)) {
      for (Path file : files.toList()) {
        assertFalse(
            new String(Files.readAllBytes(file), StandardCharsets.UTF_8).contains("\r"),
            file.toString());
      }
    }
  }
}
