package sealspan.answers.freesql;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import sealspan.answers.AnswersException;
import sealspan.answers.AnswersFolder;
import sealspan.answers.HandMade;
import sealspan.answers.OpenSnapshot;

/**
 * Statements put together from words of attacks and of questions, from a fixed seed: each is let
 * through or refused with words, and one that is let through is a SELECT that can be prepared or
 * names what is wrong. Nothing is written.
 */
@Timeout(value = 60, unit = TimeUnit.MINUTES)
class HostileSqlTest {
  private static final int STATEMENTS = Boolean.getBoolean("sealspan.deep") ? 1_000_000 : 4_000;

  private static final List<String> QUESTIONS =
      List.of(
          "select type, count(*) as n from test where outcome = 'FAILED' group by 1 order by 2",
          "select * from test t join reading r using (event_id) where r.result = 'FAILED'",
          "with f as (select * from test) select f.day, a.type from f, assembly a limit 3",
          "select x from generate_series(1, 3) t(x) union all select unnest([4, 5])",
          "with recursive r as (select 1 as i union all select i + 1 from r where i < 5) from r");

  private static final String[] PIECES = {
    ";",
    ",",
    "(",
    ")",
    "'",
    "\"",
    "--",
    "/*",
    "*/",
    "$$",
    "?",
    "::",
    ".",
    "\0",
    "\u00a0",
    "\n",
    "copy",
    "attach",
    "into",
    "from",
    "select",
    "with",
    "as",
    "union",
    "insert",
    "pragma",
    "set",
    "read_text('/etc/passwd')",
    "'/etc/passwd'",
    "own.event",
    "\"own\"",
    "to 'attack.csv'",
    "x'41'",
    "e'\\x41'",
    "1e309",
    "9223372036854775808",
    "null",
    "lateral",
    "pivot",
    "sample 10%",
    "using",
    "values (1)",
    "describe",
    "exclude (type)",
    "replace (1 as type)",
    "columns(*)"
  };

  @TempDir static Path data;

  @Test
  void isAnsweredOrRefusedWithWordsAndWritesNothing() throws Exception {
    HandMade.publishedIn(data);
    Random random = new Random(65);
    List<String> attacks = FreeSqlTest.attacks().toList();
    int through = 0;
    try (Connection connection = OpenSnapshot.readOnly(new AnswersFolder(data).newestSnapshot());
        Statement statement = connection.createStatement()) {
      QueryProcess.lock(statement, 256);
      Set<String> tables = QueryProcess.tables(statement);
      List<String> before = files();
      for (int i = 0; i < STATEMENTS; i++) {
        String sql = made(attacks, random);
        through += isLetThrough(connection, new SqlGate(tables), sql) ? 1 : 0;
      }
      assertEquals(before, files());
      new SqlGate(tables).check(connection, QUESTIONS.get(0));
    }
    assertTrue(through > STATEMENTS / 100, through + " let through");
    assertTrue(through < STATEMENTS / 2, through + " let through");
  }

  private static boolean isLetThrough(Connection connection, SqlGate gate, String sql) {
    try {
      gate.check(connection, sql);
    } catch (AnswersException e) {
      assertTrue(e.getMessage().startsWith("The query is refused: "), sql + ": " + e.getMessage());
      return false;
    } catch (SQLException e) {
      assertTrue(e.getMessage().length() > 10, sql);
      return false;
    } catch (RuntimeException | Error e) {
      return fail(sql, e);
    }
    try (PreparedStatement prepared = connection.prepareStatement(sql)) {
      assertTrue(prepared.getMetaData().getColumnCount() > 0, sql);
    } catch (SQLException e) {
      assertTrue(e.getMessage().length() > 10, sql);
    }
    return true;
  }

  private static String made(List<String> attacks, Random random) {
    String begin = any(random.nextInt(3) == 0 ? attacks : QUESTIONS, random);
    List<String> words = new ArrayList<>(Arrays.asList(begin.split(" ")));
    int changes = random.nextInt(4);
    for (int i = 0; i < changes; i++) {
      int at = random.nextInt(words.size());
      switch (random.nextInt(4)) {
        case 0:
          words.set(at, PIECES[random.nextInt(PIECES.length)]);
          break;
        case 1:
          words.add(at, PIECES[random.nextInt(PIECES.length)]);
          break;
        case 2:
          List<String> other = Arrays.asList(any(attacks, random).split(" "));
          words.addAll(at, other.subList(random.nextInt(other.size()), other.size()));
          break;
        default:
          words.remove(at);
          if (words.isEmpty()) {
            words.add("select");
          }
      }
    }
    return String.join(" ", words);
  }

  private static String any(List<String> some, Random random) {
    return some.get(random.nextInt(some.size()));
  }

  private static List<String> files() throws IOException {
    List<String> files = new ArrayList<>();
    try (Stream<Path> inData = Files.walk(data);
        Stream<Path> here = Files.list(Path.of(""));
        Stream<Path> temporary = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
      inData.forEach(f -> files.add(f.toString()));
      here.forEach(f -> files.add(f.toString()));
      temporary.map(Path::toString).filter(f -> f.contains("attack")).forEach(files::add);
    }
    files.sort(null);
    return files;
  }
}
