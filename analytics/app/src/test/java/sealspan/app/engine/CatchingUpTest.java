package sealspan.app.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sealspan.jobs.JobProgress;

class CatchingUpTest {
  @TempDir Path root;

  @Test
  void saysNothingOfLittleThatIsLeft() {
    assertEquals("", CatchingUp.words(new JobProgress(9_000, 4_000, 4_000), 3_001, 0));
    assertEquals("", CatchingUp.words(new JobProgress(9_000, 4_000, 3_001), 5_000, 0));
  }

  @Test
  void saysWhatWasReadWorkedOutAndWritten() {
    assertEquals(
        "9000 events read, 3500 of 4000 histories worked out, 3000 written",
        CatchingUp.words(new JobProgress(9_000, 4_000, 3_500), 3_000, 0));
    assertEquals(
        "9000 events read, 2500 of 4000 histories worked out, 2500 written",
        CatchingUp.words(new JobProgress(9_000, 4_000, 2_500), 2_700, 0),
        "the writer counts other rows too");
    assertEquals(
        "9000 events read, 4000 of 4000 histories worked out, 4000 written, 1700 events left",
        CatchingUp.words(new JobProgress(9_000, 4_000, 4_000), 4_000, 1_700));
  }

  @Test
  void isReadWhileItStands() throws IOException {
    DataFolder folder = new DataFolder(root);
    Files.createDirectories(folder.engine());
    CatchingUp noted = new CatchingUp(folder);
    assertEquals(Optional.empty(), CatchingUp.read(folder));
    noted.note("some");
    noted.note("more");
    assertEquals(Optional.of("more"), CatchingUp.read(folder));
    new CatchingUp(folder);
    assertEquals(Optional.empty(), CatchingUp.read(folder), "an engine that begins knows nothing");
    noted.note("again");
    noted.note("");
    assertEquals(Optional.empty(), CatchingUp.read(folder));
  }
}
