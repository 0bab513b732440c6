package sealspan.answers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A newer program answers from what an older one has published, as far as that goes. */
class PublishedQuestionsTest {
  private static final String ASKED_OTHERWISE =
      """
      -- title: Which sites fail most, as an older version asked it?
      -- asked by: utility engineer
      select site as of_old from old_table
      -- beneath
      select 'n = 1 site'
      """;

  private Connection snapshot;
  private Question question;

  @BeforeEach
  void oldTables() throws SQLException {
    snapshot = DriverManager.getConnection("jdbc:duckdb:");
    question = Questions.named("worst-sites");
    execute("create table old_table as select 'S1' as site");
  }

  @AfterEach
  void close() throws SQLException {
    snapshot.close();
  }

  private void execute(String sql) throws SQLException {
    try (Statement statement = snapshot.createStatement()) {
      statement.execute(sql);
    }
  }

  private Answer ask() throws SQLException {
    return new Answers(snapshot, "today", PublishedQuestions.of(snapshot)).ask(question, Map.of());
  }

  private void published(String name, String text) throws SQLException {
    execute("create table standing_question (name VARCHAR, text VARCHAR)");
    execute(
        "insert into standing_question values ('" + name + "', '" + text.replace("'", "''") + "')");
  }

  @Test
  void whatThisProgramPublishesItAsksAsItIs() throws SQLException {
    PublishedQuestions.addTo(snapshot);
    for (Question own : Questions.all()) {
      assertEquals(own, PublishedQuestions.of(snapshot).fitting(own));
    }
    assertTrue(Questions.all().size() > 20);
  }

  @Test
  void aQuestionIsAskedAsTheVersionAskedItThatMadeTheTables() throws SQLException {
    published("worst-sites", ASKED_OTHERWISE);
    Answer answer = ask();
    assertEquals(List.of(List.of("S1")), answer.table().rows());
    assertEquals(List.of("n = 1 site", PublishedQuestions.OTHERWISE), answer.notes());
  }

  @Test
  void aQuestionThatTheVersionDidNotKnowIsSaidToBeNew() throws SQLException {
    published("another", ASKED_OTHERWISE);
    assertSays("which did not know the question worst-sites. An engine of this program makes");
  }

  @Test
  void aQuestionThatThisVersionCannotReadIsSaid() throws SQLException {
    published("worst-sites", "-- header of the future: yes");
    assertSays("whose question worst-sites this one cannot read. An engine of this program makes");
  }

  @Test
  void tablesWithoutQuestionsAreSaidToBeOlder() throws SQLException {
    assertSays("made by an older version of this program. An engine of this program makes");
  }

  private void assertSays(String words) {
    String message = assertThrows(AnswersException.class, this::ask).getMessage();
    assertTrue(message.contains(words), message);
  }
}
