package sealspan.answers.writer;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HashMap;
import java.util.Map;
import org.apache.kafka.common.TopicPartition;

/** How far every topic is in the private file: the next offset to read of each partition. */
final class Places {
  static final String TABLE =
      "create table own.place (topic VARCHAR, \"partition\" INTEGER, next_offset BIGINT)";

  private Places() {}

  /** Those of every partition that was read before. */
  static Map<TopicPartition, Long> all(Connection connection) throws SQLException {
    Map<TopicPartition, Long> places = new HashMap<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows =
            statement.executeQuery("select topic, \"partition\", next_offset from own.place")) {
      while (rows.next()) {
        places.put(new TopicPartition(rows.getString(1), rows.getInt(2)), rows.getLong(3));
      }
    }
    return places;
  }

  /** Saves some, in the transaction of what was read. */
  static void save(Connection connection, Map<TopicPartition, Long> positions) throws SQLException {
    try (PreparedStatement delete =
            connection.prepareStatement(
                "delete from own.place where topic = ? and \"partition\" = ?");
        PreparedStatement insert =
            connection.prepareStatement("insert into own.place values (?, ?, ?)")) {
      for (Map.Entry<TopicPartition, Long> position : positions.entrySet()) {
        delete.setString(1, position.getKey().topic());
        delete.setInt(2, position.getKey().partition());
        delete.execute();
        insert.setString(1, position.getKey().topic());
        insert.setInt(2, position.getKey().partition());
        insert.setLong(3, position.getValue());
        insert.execute();
      }
    }
  }
}
