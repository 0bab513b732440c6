package sealspan.app.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sealspan.app.engine.EngineState.Phase;

class EngineStateTest {
  @TempDir Path root;

  @Test
  void isWrittenOverWhereItLiesWhenNoFurtherFileCanBe() throws IOException {
    DataFolder folder = new DataFolder(root);
    Files.createDirectories(folder.engine());
    state("one\ntwo, which is longer than all that comes after it").write(folder);
    assertEquals(
        "one\ntwo, which is longer than all that comes after it",
        EngineState.read(folder).orElseThrow().lastError());

    Files.createDirectory(folder.engine().resolve("state.new")); // stands in the way of the draft
    state("full\nits last lines").write(folder);
    assertEquals(state("full"), EngineState.read(folder).orElseThrow());
  }

  @Test
  void saysSoWhereThereIsNoPlaceForIt() throws IOException {
    DataFolder folder = new DataFolder(root);
    Files.createDirectories(folder.engine().resolve("state.new"));
    assertThrows(IOException.class, () -> state("").write(folder));
  }

  private static EngineState state(String lastError) {
    return new EngineState(
        7, Instant.EPOCH, Phase.STOPPING, "127.0.0.1:1", "stamp", 3, null, lastError);
  }
}
