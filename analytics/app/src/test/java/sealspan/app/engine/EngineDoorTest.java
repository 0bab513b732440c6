package sealspan.app.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EngineDoorTest {
  @TempDir Path root;

  @Test
  void anEngineThatEndedForWantOfMemoryIsToldWithWhatToDo() throws IOException {
    DataFolder folder = new DataFolder(root);
    EngineDoor door = new EngineDoor(folder);
    assertEquals(Optional.empty(), door.wantOfMemory());
    Files.createDirectories(folder.logs());
    Path out = folder.logs().resolve("engine.out");

    Files.writeString(out, "Stopped.\n");
    assertFalse(door.notRunning().contains("memory"), door.notRunning());

    // What the virtual machine prints with -XX:+ExitOnOutOfMemoryError.
    Files.writeString(out, "Terminating due to java.lang.OutOfMemoryError: Java heap space\n");
    assertTrue(
        door.notRunning().contains("SEALSPAN_ENGINE_HEAP=6g sealspan start --data " + root),
        door.notRunning());
  }
}
