package sealspan.answers;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Answers questions from one snapshot; the engine need not run. Close it after use. */
public final class Answers implements AutoCloseable {
  private static final int OPENING_TRIES = 5;

  private final Connection connection;
  private final String asOf;
  private final PublishedQuestions published;

  Answers(Connection connection, String asOf, PublishedQuestions published) {
    this.connection = connection;
    this.asOf = asOf;
    this.published = published;
  }

  /**
   * Opens the newest snapshot of a data folder, for reading only.
   *
   * @throws AnswersException where there is none, or it cannot be opened
   */
  public static Answers open(Path dataFolder) {
    AnswersFolder folder = new AnswersFolder(dataFolder);
    for (int tries = 1; ; tries++) {
      Path snapshot = folder.newestSnapshot();
      try {
        return of(snapshot);
      } catch (SQLException e) {
        // A newer snapshot may have taken its place since its name was read.
        if (tries == OPENING_TRIES || folder.newestSnapshot().equals(snapshot)) {
          throw new AnswersException(
              "The snapshot " + snapshot + " cannot be opened: " + e.getMessage(), e);
        }
      }
    }
  }

  /**
   * Works out the answers as they would have been at the end of a day, from the events that the log
   * had recorded by then. It takes a while and holds those events in memory.
   *
   * @throws AnswersException where there is no snapshot, or it cannot be read
   */
  public static Answers openAsOf(Path dataFolder, AsOf asOf, Progress progress) {
    AnswersFolder folder = new AnswersFolder(dataFolder);
    for (int tries = 1; ; tries++) {
      Path snapshot = folder.newestSnapshot();
      try {
        return asOf.open(folder, progress);
      } catch (SQLException e) {
        if (tries == OPENING_TRIES || Files.exists(snapshot)) {
          throw new AnswersException(
              "The answers as of " + asOf.day() + " cannot be worked out: " + e.getMessage(), e);
        }
      }
    }
  }

  private static Answers of(Path snapshot) throws SQLException {
    Connection connection = OpenSnapshot.readOnly(snapshot);
    try {
      return new Answers(connection, Cut.of(connection).words(), PublishedQuestions.of(connection));
    } catch (SQLException e) {
      connection.close();
      throw e;
    }
  }

  /**
   * Answers a question, as the version of the program asked it that made the answers.
   *
   * @param asked the question
   * @param typed values of filters by their names, as typed
   * @throws AnswersException where a filter is unknown, not of this question, malformed or missing
   */
  public Answer ask(Question asked, Map<String, String> typed) {
    Question question = published.fitting(asked);
    Map<Filter, Object> values = values(question, typed);
    try {
      ResultTable table = BoundSql.of(question.sql()).run(connection, values);
      if (question.studyCall() != null) {
        table = question.studyCall().applyTo(table);
      }
      List<String> words =
          question.wordsSql() == null ? List.of() : lines(question.wordsSql(), values);
      List<String> notes = lines(question.beneathSql(), values);
      question.leftOut().forEach(text -> notes.add("Left out: " + text));
      question.cautions().forEach(text -> notes.add("Caution: " + text));
      if (question != asked) {
        notes.add(PublishedQuestions.OTHERWISE);
      }
      return new Answer(question.name(), title(question, typed), asOf, words, table, notes);
    } catch (SQLException e) {
      throw new AnswersException(
          "The question "
              + question.name()
              + " cannot be answered: "
              + e.getMessage()
              + published.doubt(),
          e);
    }
  }

  /**
   * What a map of clusters of fouling shows.
   *
   * @param answer the answer that it goes with
   * @param number the only cluster to show; null for all
   */
  public FoulingMap foulingMap(Answer answer, Long number) {
    try {
      return FoulingMap.read(connection, answer, number);
    } catch (SQLException e) {
      throw new AnswersException(
          "The map cannot be made: " + e.getMessage() + published.doubt(), e);
    }
  }

  /** The snapshot, for what is no question. */
  Connection connection() {
    return connection;
  }

  /** The lines that a query of one text column gives. */
  private List<String> lines(String sql, Map<Filter, Object> values) throws SQLException {
    List<String> lines = new ArrayList<>();
    for (List<Object> line : BoundSql.of(sql).run(connection, values).rows()) {
      if (line.get(0) != null) {
        lines.add(line.get(0).toString());
      }
    }
    return lines;
  }

  private static Map<Filter, Object> values(Question question, Map<String, String> typed) {
    Map<String, FilterUse> taken = new LinkedHashMap<>();
    question.filters().forEach(use -> taken.put(use.filter().label(), use));
    for (String label : typed.keySet()) {
      Filter filter = Filter.ofLabel(label);
      if (!taken.containsKey(label)) {
        throw new AnswersException(
            "The question "
                + question.name()
                + " does not take the filter "
                + filter.label()
                + "; it takes "
                + (taken.isEmpty() ? "none" : String.join(", ", taken.keySet()))
                + ".");
      }
    }
    Map<Filter, Object> values = new EnumMap<>(Filter.class);
    for (FilterUse use : question.filters()) {
      String value = typed.getOrDefault(use.filter().label(), use.standard());
      if (value != null) {
        values.put(use.filter(), use.filter().read(value));
      } else if (use.need() == FilterUse.Need.REQUIRED) {
        throw new AnswersException(
            "The question "
                + question.name()
                + " needs the filter "
                + use.filter().label()
                + ": "
                + use.filter().meaning()
                + ".");
      }
    }
    return values;
  }

  private static String title(Question question, Map<String, String> typed) {
    List<String> given = new ArrayList<>();
    for (FilterUse use : question.filters()) {
      String value = typed.get(use.filter().label());
      if (value != null) {
        given.add(use.filter().label() + " " + value);
      }
    }
    return question.title() + (given.isEmpty() ? "" : " (" + String.join(", ", given) + ")");
  }

  @Override
  public void close() {
    try {
      connection.close();
    } catch (SQLException e) {
      throw new AnswersException("The snapshot could not be closed: " + e.getMessage(), e);
    }
  }
}
