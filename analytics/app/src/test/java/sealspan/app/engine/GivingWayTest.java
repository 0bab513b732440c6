package sealspan.app.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;

class GivingWayTest {
  /** The 19th field of the file is the niceness: proc_pid_stat(5) of the Linux manual pages. */
  private static int niceness(Process process) throws IOException {
    String stat = Files.readString(Path.of("/proc", "" + process.pid(), "stat"));
    String[] afterName = stat.substring(stat.lastIndexOf(')') + 2).split(" ");
    return Integer.parseInt(afterName[19 - 3]);
  }

  @Test
  @EnabledOnOs(OS.LINUX)
  void aProcessThatGivesWayIsNicerThanBefore() throws Exception {
    Process waiting = new ProcessBuilder("sleep", "60").start();
    try {
      assertTrue(niceness(waiting) < 10, "the test itself gives way already");

      GivingWay.giveWay(waiting.toHandle());

      assertEquals(10, niceness(waiting));
    } finally {
      waiting.destroyForcibly();
    }
  }
}
