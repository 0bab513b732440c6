package sealspan.answers;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HashMap;
import java.util.Map;

/**
 * The questions as the program knew them that made a snapshot. They are published with its tables,
 * so that a newer program, whose tables differ, can answer from it until it has made its own.
 *
 * @param texts the text of each question by its name; null in a snapshot that is older than this
 */
public record PublishedQuestions(Map<String, String> texts) {
  /** What to do where a snapshot lacks something that this program has. */
  private static final String MADE_ANEW =
      " An engine of this program makes them anew when it starts: sealspan stop, sealspan start,"
          + " and sealspan status to see how far it is.";

  /** The note beneath an answer from a snapshot that asks otherwise than this program. */
  static final String OTHERWISE =
      "These answers were made by another version of this program, and the question was asked as"
          + " that version asks it."
          + MADE_ANEW;

  /** Adds the questions of this program to a model that has none. */
  public static void addTo(Connection model) throws SQLException {
    try (Statement statement = model.createStatement()) {
      statement.execute("create table standing_question (name VARCHAR, text VARCHAR)");
    }
    try (PreparedStatement insert =
        model.prepareStatement("insert into standing_question values (?, ?)")) {
      for (Map.Entry<String, String> question : Questions.texts().entrySet()) {
        insert.setString(1, question.getKey());
        insert.setString(2, question.getValue());
        insert.addBatch();
      }
      insert.executeBatch();
    }
  }

  /** The questions of a snapshot. */
  static PublishedQuestions of(Connection snapshot) throws SQLException {
    try (Statement statement = snapshot.createStatement()) {
      try (ResultSet tables =
          statement.executeQuery(
              "select 1 from information_schema.tables where table_name = 'standing_question'")) {
        if (!tables.next()) {
          return new PublishedQuestions(null);
        }
      }
      Map<String, String> texts = new HashMap<>();
      try (ResultSet rows = statement.executeQuery("select name, text from standing_question")) {
        while (rows.next()) {
          texts.put(rows.getString(1), rows.getString(2));
        }
      }
      return new PublishedQuestions(texts);
    }
  }

  /** The questions of this program, for a model that it has just made. */
  static PublishedQuestions ofThisProgram() {
    return new PublishedQuestions(Questions.texts());
  }

  /**
   * A question as it fits the tables of the snapshot: the same one, or another of that name.
   *
   * @throws AnswersException where the version that made the snapshot did not know it
   */
  Question fitting(Question question) {
    if (texts == null
        || Questions.texts().get(question.name()).equals(texts.get(question.name()))) {
      return question;
    }
    String text = texts.get(question.name());
    if (text == null) {
      throw new AnswersException(
          "These answers were made by another version of this program, which did not know the"
              + " question "
              + question.name()
              + "."
              + MADE_ANEW);
    }
    try {
      return Question.parse(question.name(), text);
    } catch (IllegalArgumentException | AnswersException e) {
      throw new AnswersException(
          "These answers were made by another version of this program, whose question "
              + question.name()
              + " this one cannot read."
              + MADE_ANEW,
          e);
    }
  }

  /** Why a question can fail on this snapshot; empty where nothing speaks for its age. */
  String doubt() {
    return texts == null
        ? " These answers were made by an older version of this program." + MADE_ANEW
        : "";
  }
}
