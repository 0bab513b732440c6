package sealspan.answers.freesql;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import sealspan.answers.Answer;
import sealspan.answers.AnswersException;
import sealspan.answers.AnswersFolder;
import sealspan.answers.HandMade;
import sealspan.answers.OpenSnapshot;

/** What users may ask, and what must not get through; in a real process each time. */
@Timeout(value = 3, unit = TimeUnit.MINUTES)
class FreeSqlTest {
  @TempDir static Path data;
  private static Connection connection;
  private static Statement statement;
  private List<String> filesBefore;

  @BeforeAll
  static void publish() throws Exception {
    HandMade.publishedIn(data);
    connection = OpenSnapshot.readOnly(new AnswersFolder(data).newestSnapshot());
    statement = connection.createStatement();
    QueryProcess.lock(statement, 256);
  }

  @AfterAll
  static void close() throws SQLException {
    connection.close();
  }

  @BeforeEach
  void note() throws IOException {
    filesBefore = files();
  }

  /** Whatever was asked: no file appeared in the data folder, here, or among temporary files. */
  @AfterEach
  void nothingWasWritten() throws IOException {
    assertEquals(filesBefore, files());
  }

  private static List<String> files() throws IOException {
    List<String> files = new ArrayList<>();
    try (Stream<Path> inData = Files.walk(data);
        Stream<Path> here = Files.list(Path.of(""));
        Stream<Path> temporary = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
      inData.forEach(f -> files.add(f.toString()));
      here.forEach(f -> files.add(f.toString()));
      temporary
          .map(Path::toString)
          .filter(f -> f.contains("sealspan-query") || f.contains("attack"))
          .forEach(files::add);
    }
    files.sort(null);
    return files;
  }

  private static Answer ask(String sql) {
    return FreeSql.ask(data, sql, SqlLimits.USUAL);
  }

  private static String refusal(String sql) {
    return assertThrows(AnswersException.class, () -> ask(sql), sql).getMessage();
  }

  @Test
  void answersASelect() {
    Answer answer =
        ask(
            """
            with failed as (select type, count(*) as n from test where outcome = 'FAILED' group by 1)
            select t.type, count(*) as rounds, coalesce(any_value(n), 0)::integer as failed,
              min(day) as first_day, max(recorded_at) as recorded_at, bool_or(marginal) as marginal,
              round(avg(exposure_days), 1)::decimal(6, 1) as mean_days, list(distinct site_id) as sites
            from test t left join failed f on f.type = t.type
            group by t.type order by t.type
            """);
    assertEquals(
        List.of(
            Arrays.asList(
                "DC",
                3L,
                0,
                LocalDate.of(2022, 6, 1),
                recorded(),
                false,
                new BigDecimal("365.0"),
                "[S2]"),
            Arrays.asList("PVB", 1L, 0, LocalDate.of(2023, 5, 2), recorded(), false, null, "[S1]"),
            Arrays.asList(
                "RP",
                4L,
                2,
                LocalDate.of(2022, 4, 4),
                recorded(),
                true,
                new BigDecimal("365.5"),
                "[S1]")),
        answer.table().rows());
    assertEquals("3 events, the newest recorded 2025-03-01T08:00:00Z (offsets 0:3)", answer.asOf());
    assertEquals(List.of("n = 3 rows"), answer.notes());
  }

  private static LocalDateTime recorded() {
    return LocalDateTime.of(2025, 3, 1, 8, 0);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "from assembly",
        "select * from test t join reading r using (event_id) where r.result = 'FAILED'",
        "select type, size_inch, count(*) from assembly group by rollup (type, size_inch)",
        "select *, row_number() over (partition by type order by day) as n from test qualify n = 1",
        "select x from generate_series(1, 3) t(x) union all select unnest([4, 5])",
        "select [x * 2 for x in [1, 2]], {'a': 1}.a, case when true then 1 end, 'a' ilike 'A'",
        "select year(day), date_trunc('month', day), day + interval 1 year from test limit 1",
        "with recursive r as (select 1 as i union all select i + 1 from r where i < 5) from r",
        "select * exclude (bundle_key) from main.rate",
        "select * from event_sum, cut",
        "select assembly_id from test where day between '2022-01-01' and date '2023-01-01'"
      })
  void answersWhatPeopleWrite(String sql) {
    assertTrue(ask(sql).table().rows().size() > 0);
  }

  static Stream<String> attacks() {
    return Stream.of(
        "copy test to 'attack.csv'",
        "copy (select 1) to '/tmp/attack.csv'",
        "copy test from '/etc/passwd'",
        "attach 'attack.duckdb' as x",
        "attach '/tmp/attack.duckdb'",
        "detach x",
        "install httpfs",
        "load httpfs",
        "force install spatial from community",
        "set memory_limit = '100GB'",
        "set global threads = 64",
        "reset lock_configuration",
        "pragma database_list",
        "pragma enable_profiling = 'json'",
        "call pragma_version()",
        "checkpoint",
        "vacuum",
        "begin transaction",
        "use memory",
        "export database '/tmp/attack'",
        "import database '/tmp/attack'",
        "create table x (a integer)",
        "create temp table x as select 1",
        "create or replace temp view v as select 1",
        "create macro m(a) as a",
        "create secret s (type s3, key_id 'a', secret 'b')",
        "create persistent secret s (type s3, key_id 'a', secret 'b')",
        "create type mood as enum ('a')",
        "create sequence s",
        "drop table test",
        "insert into test select * from test",
        "update assembly set type = 'RP'",
        "delete from assembly",
        "alter table assembly add column x integer",
        "comment on table assembly is 'x'",
        "prepare p as select 1",
        "execute p",
        "explain analyze select 1",
        "describe assembly",
        "show all tables",
        "summarize assembly",
        "select 1; select 2",
        "select 1; copy (select 1) to '/tmp/attack.csv'",
        "select 1; drop table test",
        "select * from read_csv('/etc/passwd')",
        "select * from read_text('/etc/passwd')",
        "select * from read_blob('/etc/passwd')",
        "select * from read_json('/etc/passwd')",
        "select * from read_parquet('x.parquet')",
        "select * from parquet_metadata('x.parquet')",
        "select * from sniff_csv('/etc/passwd')",
        "select * from glob('/*')",
        "select * from '/etc/passwd'",
        "select * from 'attack.csv'",
        "select * from \"attack.parquet\"",
        "from 'https://example.org/x.csv'",
        "select (select content from read_text('/etc/passwd'))",
        "select * from test where exists (from glob('/etc/*'))",
        "with x as (from read_text('/etc/passwd')) from x",
        "with \"/etc/passwd\" as (select 1) select * from test",
        "with test as (select 1) select * from test",
        "select * from (with assembly as (select 1) from assembly)",
        "select * from duckdb_settings()",
        "select * from duckdb_secrets()",
        "select * from duckdb_databases()",
        "select * from duckdb_tables",
        "select * from information_schema.tables",
        "select * from pg_catalog.pg_class",
        "select * from sqlite_master",
        "select * from own.event",
        "select \"value\" from own.event",
        "select * from \"snapshot-000001\".own.place",
        "select * from system.main.duckdb_settings",
        "select getenv('HOME')",
        "select current_setting('memory_limit')",
        "select * from query('select 1')",
        "select * from query_table('test')",
        "select * from json_execute_serialized_sql(json_serialize_sql('select 1'))",
        "select json_serialize_sql('select 1')",
        "select * from pragma_storage_info('test')",
        "select * from test_all_types()",
        "select nextval('s')",
        "select getvariable('x')",
        "select write_log('x')",
        "select sleep_ms(100000)",
        "select pg_sleep(1000)",
        "select rpad('x', 100000000, 'y')",
        "select repeat('x', 1000000000)",
        "select length(lpad('x', 2000000000, 'y')) from range(100)",
        "select ?",
        "select $1",
        "select $name",
        "pivot test on type using count(*)",
        "select",
        "",
        "-- nothing",
        "/* nothing */;",
        "select * from nothing");
  }

  /** The gate itself, without a process around it. */
  @ParameterizedTest
  @MethodSource("attacks")
  void refuses(String attack) throws SQLException {
    SqlGate gate = new SqlGate(QueryProcess.tables(statement));
    String said =
        assertThrows(AnswersException.class, () -> gate.check(connection, attack)).getMessage();
    assertTrue(said.startsWith("The query is refused: "), said);
  }

  /** The second wall: what the gate might overlook still reads and writes no file. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "copy (select 1) to 'attack.csv'",
        "attach 'attack.duckdb' as x",
        "export database 'attack'",
        "select * from read_text('/etc/hostname')",
        "select * from glob('/*')",
        "select * from '/etc/passwd'",
        "install httpfs",
        "set lock_configuration = false",
        "set enable_external_access = true",
        "create persistent secret s (type s3, key_id 'a', secret 'b')",
        "delete from assembly"
      })
  void theLockedConnectionHoldsToo(String attack) {
    assertThrows(SQLException.class, () -> statement.execute(attack));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "copy (select 1) to '/tmp/attack.csv'",
        "select 1; attach '/tmp/attack.duckdb'",
        "select * from read_text('/etc/passwd')"
      })
  void refusesInTheProcessOfTheQuery(String attack) {
    String said = refusal(attack);
    assertTrue(said.startsWith("The query is refused: "), said);
  }

  @Test
  void saysWhatMayBeAsked() {
    String said = refusal("select * from nothing");
    assertTrue(
        said.contains("there is no table nothing; the tables are ageing, assembly, curve"), said);
    assertTrue(refusal("select foo(1)").contains("the function foo is not among those"));
    assertTrue(refusal("select 1; select 2").contains("it has 2 statements"));
    assertTrue(refusal("selct 1").contains("it cannot be read"), refusal("selct 1"));
    assertTrue(
        refusal("select colour from test")
            .startsWith("The query cannot be answered: Binder Error"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "with recursive r as (select 1 as i union all select i + 1 from r) select max(i) from r",
        "select count(*) from range(1000000) a, range(1000000) b, range(1000000) c",
        "select sum(a.day - b.day) from test a, test b, test c, test d, test e, test f, test g,"
            + " test h, test i, test j, test k, test l"
      })
  void stopsWhatDoesNotEnd(String endless) {
    SqlLimits limits = new SqlLimits(Duration.ofSeconds(3), 128, 10, 1);
    String said =
        assertThrows(AnswersException.class, () -> FreeSql.ask(data, endless, limits)).getMessage();
    assertTrue(said.startsWith("The query was stopped: it ran for more than 3 seconds"), said);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "select list(a.i * b.i) from range(20000) a(i), range(20000) b(i)",
        "select string_agg(md5(a.i::varchar), '') from range(100000000) a(i)",
        "select replace(replace(replace(replace(replace(replace(replace(replace(replace("
            + "'xxxxxxxxxxxxxxxx','x','xxxxxxxxxxxxxxxx'),'x','xxxxxxxxxxxxxxxx'),'x',"
            + "'xxxxxxxxxxxxxxxx'),'x','xxxxxxxxxxxxxxxx'),'x','xxxxxxxxxxxxxxxx'),'x',"
            + "'xxxxxxxxxxxxxxxx'),'x','xxxxxxxxxxxxxxxx'),'x','xxxxxxxxxxxxxxxx'),'x','yy')"
      })
  void stopsWhatNeedsTooMuchMemory(String greedy) {
    SqlLimits limits = new SqlLimits(Duration.ofSeconds(60), 64, 10, 1);
    String said =
        assertThrows(AnswersException.class, () -> FreeSql.ask(data, greedy, limits)).getMessage();
    assertTrue(said.contains("Out of Memory") || said.contains("needed more than the 64 MB"), said);
  }

  @Test
  void cutsManyRowsOffAndSaysSo() {
    SqlLimits limits = new SqlLimits(Duration.ofSeconds(20), 128, 5, 1);
    Answer answer = FreeSql.ask(data, "select i from range(10000000000) t(i)", limits);
    assertEquals(5, answer.table().rows().size());
    assertEquals(List.of("Only the first 5 rows are shown; there are more."), answer.notes());
  }

  @Test
  void stopsAResultThatIsTooLarge() {
    SqlLimits limits = new SqlLimits(Duration.ofSeconds(20), 128, 1_000_000, 1);
    String said =
        assertThrows(
                AnswersException.class,
                () ->
                    FreeSql.ask(data, "select sha256(i::varchar) from range(100000) t(i)", limits))
            .getMessage();
    assertTrue(said.contains("its result has more than 1 MB"), said);
  }

  @Test
  void refusesDeepNesting() {
    String deep = "select " + "(".repeat(20_000) + "1" + ")".repeat(20_000);
    assertThrows(AnswersException.class, () -> ask(deep));
    assertTrue(refusal("select " + "1 + ".repeat(30_000) + "1").contains("more than 100000"));
    String sums = "select " + "1 + ".repeat(5_000) + "1";
    assertThrows(AnswersException.class, () -> ask(sums));
  }

  @Test
  void theSnapshotIsStillWhole() throws Exception {
    assertTrue(Files.size(new AnswersFolder(data).newestSnapshot()) > 0);
    assertEquals(1, ask("select count(*) from test").table().rows().size());
  }
}
