package sealspan.app.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import sealspan.answers.AnswersFolder;

/** Answers that an older build has left, whose tables differ, are replaced before they are used. */
@Timeout(value = 10, unit = TimeUnit.MINUTES)
class OldAnswersTest {
  @TempDir Path data;

  @AfterEach
  void stop() {
    Typed.at(data, "stop");
  }

  @Test
  void areSaidToBeOldAndTheNextEngineMakesItsOwn() throws Exception {
    Typed first = Typed.at(data, "demo");
    assertEquals(ExitCode.DONE, first.code(), first.toString());
    String worst = Typed.at(data, "ask", "worst-sites", "--format", "csv").out();
    assertEquals(ExitCode.DONE, Typed.at(data, "stop").code());
    leaveAsAnOlderBuildWould();

    Typed refused = Typed.at(data, "ask", "worst-sites");
    assertEquals(ExitCode.FAILED, refused.code(), refused.toString());
    assertTrue(
        refused.err().contains("were made by an older version of this program"),
        refused.toString());

    Typed again = Typed.at(data, "demo");
    assertEquals(ExitCode.DONE, again.code(), again.toString());
    assertTrue(again.out().contains("Ready after"), again.toString());
    assertEquals(worst, Typed.at(data, "ask", "worst-sites", "--format", "csv").out());
  }

  private void leaveAsAnOlderBuildWould() throws Exception {
    Path snapshot = new AnswersFolder(data).newestSnapshot();
    try (Connection connection = DriverManager.getConnection("jdbc:duckdb:" + snapshot);
        Statement statement = connection.createStatement()) {
      statement.execute("alter table rate rename fails_within_year to of_old");
      statement.execute("update publication set code_version = 'of old'");
      statement.execute("drop table standing_question");
      statement.execute("drop table forecast");
    }
    Path generation = data.resolve("engine").resolve("generation");
    String text = Files.readString(generation);
    String old = text.replaceAll("codeStamp=.*", "codeStamp=of old");
    assertTrue(!old.equals(text), text);
    Files.writeString(generation, old);
  }
}
