package sealspan.jobs;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.avro.TableCodec;
import sealspan.study.BatchTables;
import sealspan.study.Members;
import sealspan.table.AssemblyRows;

/** Members in a file are those in memory, whatever the order in which they come. */
class MemberFileTest {
  private static final List<AssemblyRows> ROWS =
      BatchTables.assemblies(SomeEvents.inOrder(3, 60), AcceptanceCriteria.shipped());

  @TempDir Path folder;

  private static MemberFile filled(Path folder, List<AssemblyRows> rows) {
    MemberFile file = MemberFile.in(folder);
    rows.forEach(member -> file.add(member.key(), TableCodec.encode(member)));
    return file;
  }

  private static List<byte[]> packed(Members members) {
    List<byte[]> packed = new ArrayList<>();
    members.packed(packed::add);
    return packed;
  }

  @Test
  void anyOrderOfArrivalGivesTheSameRowsInTheSameOrderEveryTime() throws IOException {
    Members inMemory = Members.of(ROWS);
    List<AssemblyRows> expected = new ArrayList<>();
    inMemory.forEach(expected::add);
    assertTrue(expected.size() >= 60);
    Random random = new Random(7);
    for (int arrival = 0; arrival < 5; arrival++) {
      List<AssemblyRows> shuffled = new ArrayList<>(ROWS);
      Collections.shuffle(shuffled, random);
      try (MemberFile file = filled(folder, shuffled)) {
        assertEquals(inMemory.size(), file.size());
        for (int pass = 0; pass < 3; pass++) {
          List<AssemblyRows> found = new ArrayList<>();
          file.forEach(found::add);
          assertEquals(expected, found);
        }
        assertArrayEquals(
            packed(inMemory).toArray(byte[][]::new), packed(file).toArray(byte[][]::new));
      }
      assertEquals(List.of(), files());
    }
  }

  @Test
  void nothingIsLeftWhenAPassBreaksOff() throws IOException {
    MemberFile[] broken = new MemberFile[1];
    assertThrows(
        IllegalStateException.class,
        () -> {
          try (MemberFile file = filled(folder, ROWS)) {
            broken[0] = file;
            file.forEach(
                member -> {
                  throw new IllegalStateException("broken off");
                });
          }
        });
    broken[0].close();
    assertEquals(List.of(), files());
    assertEquals(0, broken[0].size());
  }

  @Test
  void aFolderThatCannotBeWrittenIsNamed() throws IOException {
    Path notAFolder = Files.createFile(folder.resolve("taken"));
    JobException e = assertThrows(JobException.class, () -> MemberFile.in(notAFolder));
    assertTrue(e.getMessage().contains(notAFolder.toString()), e.getMessage());
    assertTrue(e.getMessage().contains("Check its rights"), e.getMessage());
  }

  private List<Path> files() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.toList();
    }
  }
}
