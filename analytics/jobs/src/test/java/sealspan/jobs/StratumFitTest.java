package sealspan.jobs;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.apache.flink.api.common.RuntimeExecutionMode;
import org.apache.flink.configuration.Configuration;
import org.apache.flink.configuration.CoreOptions;
import org.apache.flink.configuration.ExecutionOptions;
import org.apache.flink.configuration.RestartStrategyOptions;
import org.apache.flink.streaming.api.environment.StreamExecutionEnvironment;
import org.apache.flink.util.CloseableIterator;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.avro.TableCodec;
import sealspan.event.LoggedEvent;
import sealspan.study.BatchTables;
import sealspan.study.FitCut;
import sealspan.study.Fits;
import sealspan.study.NeededRows;
import sealspan.study.fouling.FoulingTables;
import sealspan.table.AssemblyRows;
import sealspan.table.Bundle;
import sealspan.table.FitRows;
import sealspan.table.FoulingRows;
import sealspan.table.ZoneRows;

/** Fits by Flink of members that come in any order, the strata mixed or one after the other. */
class StratumFitTest {
  private static final AcceptanceCriteria CRITERIA = AcceptanceCriteria.shipped();
  private static final FitCut CUT = new FitCut("cut", "0:1", Instant.EPOCH, 1);
  private static final List<LoggedEvent> EVENTS = SomeEvents.inOrder(9, 40);

  @TempDir Path folder;

  private static List<Member> members() {
    List<Member> members = new ArrayList<>();
    for (AssemblyRows rows : BatchTables.assemblies(EVENTS, CRITERIA)) {
      members.add(new Member(FoulingRows.KEY, FoulingTables.needed(rows)));
      for (String stratum : Fits.strataOf(rows)) {
        members.add(new Member(stratum, NeededRows.of(stratum).of(rows)));
      }
    }
    for (ZoneRows zone : BatchTables.zones(EVENTS)) {
      members.add(new Member(FoulingRows.KEY, zone));
    }
    return members;
  }

  private CloseableIterator<Upsert> fits(List<Member> members, RuntimeExecutionMode mode)
      throws Exception {
    Configuration c = new Configuration();
    c.set(ExecutionOptions.RUNTIME_MODE, mode);
    c.set(RestartStrategyOptions.RESTART_STRATEGY, "none");
    c.set(CoreOptions.TMP_DIRS, folder.toString());
    return StreamExecutionEnvironment.createLocalEnvironment(2, c)
        .fromData(Member.TYPE, members.toArray(Member[]::new))
        .keyBy(new StratumKey())
        .process(new StratumFit(CUT), Upsert.TYPE)
        .executeAndCollect();
  }

  @ParameterizedTest
  @EnumSource(names = {"BATCH", "STREAMING"})
  void areThoseOfMembersInMemory(RuntimeExecutionMode mode) throws Exception {
    Map<String, byte[]> expected = new HashMap<>();
    for (Bundle bundle : BatchTables.of(EVENTS, EVENTS, CRITERIA, CUT)) {
      if (bundle instanceof FitRows || bundle instanceof FoulingRows) {
        expected.put(bundle.key(), TableCodec.encode(bundle));
      }
    }
    assertTrue(expected.size() > 10, expected.keySet().toString());
    List<Member> members = members();
    Collections.shuffle(members, new Random(11));
    int found = 0;
    try (CloseableIterator<Upsert> fits = fits(members, mode)) {
      while (fits.hasNext()) {
        Upsert fit = fits.next();
        String key = new String(fit.key, UTF_8);
        assertArrayEquals(expected.get(key), fit.value, key);
        found++;
      }
    }
    assertEquals(expected.size(), found);
    assertEquals(List.of(), memberFiles());
  }

  @ParameterizedTest
  @EnumSource(names = {"BATCH", "STREAMING"})
  void nothingIsLeftAfterAFailure(RuntimeExecutionMode mode) throws Exception {
    List<Member> members = members();
    Collections.shuffle(members, new Random(12));
    for (String stratum : List.of("all", "component=check1", FoulingRows.KEY)) {
      members.add(new Member(stratum, "assembly/broken", new byte[] {1, 2, 3}));
    }
    assertThrows(
        Exception.class,
        () -> {
          try (CloseableIterator<Upsert> fits = fits(members, mode)) {
            fits.forEachRemaining(fit -> {});
          }
        });
    assertEquals(List.of(), memberFiles());
  }

  /** In the folder, and, where the system shows them, open ones without a name. */
  private List<String> memberFiles() throws IOException {
    List<String> files = new ArrayList<>();
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
            files.add(file.toString());
            return FileVisitResult.CONTINUE;
          }

          /** Flink may take away folders of its own while it ends. */
          @Override
          public FileVisitResult visitFileFailed(Path file, IOException why) throws IOException {
            if (why instanceof NoSuchFileException) {
              return FileVisitResult.CONTINUE;
            }
            throw why;
          }
        });
    Path open = Path.of("/proc/self/fd");
    try (Stream<Path> numbers = Files.isDirectory(open) ? Files.list(open) : Stream.of()) {
      numbers.map(StratumFitTest::target).forEach(files::add);
    }
    return files.stream()
        .filter(file -> file.contains("members") && file.contains(".rows"))
        .toList();
  }

  private static String target(Path link) {
    try {
      return Files.readSymbolicLink(link).toString();
    } catch (IOException e) {
      return ""; // closed meanwhile
    }
  }
}
