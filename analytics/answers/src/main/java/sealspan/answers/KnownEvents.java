package sealspan.answers;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import sealspan.event.LoggedEvent;
import sealspan.event.Subject;

/**
 * The events themselves, as far as the newest snapshot goes: for those who look one up, or judge a
 * new one beside those that are known. Close it after use.
 */
public final class KnownEvents implements AutoCloseable {
  private final Connection connection;
  private final String sources;

  private KnownEvents(Connection connection, String sources) {
    this.connection = connection;
    this.sources = sources;
  }

  /**
   * Opens the newest snapshot.
   *
   * @throws AnswersException where there is none, or it cannot be read
   */
  public static KnownEvents open(Path dataFolder) {
    AnswersFolder folder = new AnswersFolder(dataFolder);
    Properties settings = new Properties();
    settings.setProperty("duckdb.read_only", "true");
    for (Path snapshot = folder.newestSnapshot(); ; ) {
      try {
        Connection connection = DriverManager.getConnection("jdbc:duckdb:" + snapshot, settings);
        Path segments = folder.segments(Cut.of(connection).generation());
        return new KnownEvents(connection, RecordedEvents.sources(connection, "own", segments));
      } catch (SQLException e) {
        Path newer = folder.newestSnapshot();
        if (newer.equals(snapshot)) {
          throw new AnswersException(
              "The snapshot " + snapshot + " cannot be read: " + e.getMessage(), e);
        }
        snapshot = newer;
      }
    }
  }

  /** The event of an id; empty where none is known. */
  public Optional<LoggedEvent> withId(String id) {
    List<LoggedEvent> found = select("id = ?", List.of(id));
    return found.isEmpty() ? Optional.empty() : Optional.of(found.get(0));
  }

  /** The events of some subjects, in the order of the log within each partition. */
  public List<LoggedEvent> of(Collection<Subject> subjects) {
    List<LoggedEvent> events = new ArrayList<>();
    for (Subject subject : subjects) {
      events.addAll(select("subject_key = ?", List.of(subject.key())));
    }
    return events;
  }

  private List<LoggedEvent> select(String condition, List<String> values) {
    String sql =
        "select %s from (%s) where %s order by \"partition\", \"offset\""
            .formatted(RecordedEvents.FIELDS, sources, condition);
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < values.size(); i++) {
        statement.setString(i + 1, values.get(i));
      }
      List<LoggedEvent> events = new ArrayList<>();
      try (ResultSet row = statement.executeQuery()) {
        while (row.next()) {
          events.add(RecordedEvents.logged(row));
        }
      }
      return events;
    } catch (SQLException e) {
      throw new AnswersException("The known events cannot be read: " + e.getMessage(), e);
    }
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
