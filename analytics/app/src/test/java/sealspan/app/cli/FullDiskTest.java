package sealspan.app.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A data folder on a small disk of its own, which is filled, and then may only be read. */
@Timeout(value = 10, unit = TimeUnit.MINUTES)
class FullDiskTest {
  private static final Path SAMPLES = Path.of(System.getProperty("sealspan.home"), "sample-events");
  private static final int MEGABYTES = 260;

  @TempDir Path folder;
  private Path disk;
  private Path data;

  @BeforeEach
  void mount() throws Exception {
    disk = Files.createDirectory(folder.resolve("disk"));
    assumeTrue(
        run("mount", "-t", "tmpfs", "-o", "size=" + MEGABYTES + "m", "tmpfs", disk.toString()) == 0,
        "a small disk can be mounted by root only; words for a full disk are tested elsewhere");
    data = disk.resolve("data");
  }

  @AfterEach
  void unmount() throws Exception {
    Typed.at(data, "stop");
    run("umount", "-l", disk.toString());
  }

  @Test
  void isNamedAndNothingIsLost() throws Exception {
    Typed first = Typed.at(data, "import", SAMPLES.resolve("events.jsonl").toString());
    assertEquals(ExitCode.DONE, first.code(), first.toString());
    Path filler = disk.resolve("filler");
    fill(filler);

    // The import waits a minute for a broker to come back; one has seen by then what is wrong.
    Process second =
        OwnProcess.start(
            data,
            folder.resolve("output"),
            "import",
            SAMPLES.resolve("visits.csv").toString(),
            "--no-wait");
    // What fails first makes room: the broker, the answers, or neither while these rows fit.
    BooleanSupplier failed =
        () -> {
          fill(filler);
          String out = Typed.at(data, "status").out();
          return out.contains("trouble") || out.contains("does not run") || !second.isAlive();
        };
    Settled.until(failed);
    assertTrue(failed.getAsBoolean(), "neither the engine nor the import tells of trouble");
    String status = Typed.at(data, "status").out();
    assertTrue(status.contains("is full"), status);
    assertTrue(status.matches("(?s).*Nothing (that was acknowledged )?is lost.*"), status);
    second.destroyForcibly().waitFor();
    Files.delete(filler);
    Typed again = Typed.at(data, "import", SAMPLES.resolve("visits.csv").toString());
    assertEquals(ExitCode.IN_PART, again.code(), again.toString());
    assertTrue(again.out().contains("conflicts            1"), again.toString());
    assertTrue(Typed.at(data, "ask", "pass-share").out().contains("65"), "as on paper");

    Typed.at(data, "stop");
    assertEquals(0, run("mount", "-o", "remount,ro", disk.toString()));
    Typed readOnly = Typed.at(data, "start");
    assertEquals(ExitCode.FAILED, readOnly.code(), readOnly.toString());
    assertTrue(readOnly.err().contains("ead-only"), readOnly.toString());
    assertTrue(Typed.at(data, "ask", "pass-share").out().contains("65"), "answers can be read");
  }

  private static void fill(Path filler) {
    byte[] piece = new byte[1 << 16];
    try (OutputStream out =
        Files.newOutputStream(filler, StandardOpenOption.CREATE, StandardOpenOption.APPEND)) {
      while (true) {
        out.write(piece);
      }
    } catch (IOException e) {
      assertTrue(e.getMessage().contains("No space left"), e.toString());
    }
  }

  private static int run(String... command) throws IOException, InterruptedException {
    return new ProcessBuilder(List.of(command)).redirectErrorStream(true).start().waitFor();
  }
}
