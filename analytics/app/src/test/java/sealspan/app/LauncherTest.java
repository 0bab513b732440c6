package sealspan.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The launcher script in a project of its own, with a PATH that holds the usual small tools and
 * only the Java and Maven that a test puts there. Those two are scripts that write down how they
 * were called.
 */
class LauncherTest {
  private static final List<String> TOOLS =
      List.of(
          "bash",
          "sh",
          "awk",
          "cat",
          "dirname",
          "env",
          "find",
          "grep",
          "head",
          "ls",
          "mkdir",
          "mv",
          "readlink",
          "rm",
          "rmdir",
          "sed",
          "sleep",
          "tail",
          "tee",
          "touch",
          "uname");

  @TempDir Path top;
  private Path bin;
  private Path project;

  @BeforeEach
  void layOut() throws IOException {
    bin = Files.createDirectories(top.resolve("bin"));
    for (String tool : TOOLS) {
      Files.createSymbolicLink(bin.resolve(tool), find(tool));
    }
    project = top.resolve("a project");
    Path launcher = project.resolve("analytics/sealspan");
    Files.createDirectories(project.resolve("schemas/src/main/java"));
    Files.createDirectories(project.resolve("analytics/app/src/main/java"));
    Files.writeString(project.resolve("pom.xml"), "<project/>");
    Files.copy(Path.of(System.getProperty("sealspan.home"), "analytics", "sealspan"), launcher);
    assertTrue(launcher.toFile().setExecutable(true));
  }

  @Test
  void saysWhatToInstallWithoutJava() throws Exception {
    Ran ran = run("status");
    assertEquals(1, ran.code());
    assertTrue(ran.text().contains("Java was not found"), ran.text());
    assertTrue(ran.text().contains("a JDK, version 17 or newer"), ran.text());
  }

  @Test
  void namesTheInstallCommandOfTheSystem() throws Exception {
    script("apt-get", "exit 0");
    assertTrue(run().text().contains("sudo apt-get install openjdk-17-jdk maven"));
  }

  @Test
  void refusesAnOldJava() throws Exception {
    script("java", "echo 'openjdk version \"11.0.2\" 2019-01-15' >&2");
    assertTrue(run().text().contains("is Java 11; Sealspan needs a JDK, version 17"));
    script("java", "echo 'java version \"1.8.0_392\"' >&2");
    assertTrue(run().text().contains("is Java 8; Sealspan needs a JDK, version 17"));
  }

  @Test
  void findsTheVersionBehindOptionsThatJavaPicksUp() throws Exception {
    script(
        "java",
        "echo 'Picked up JAVA_TOOL_OPTIONS: -Da=b' >&2\n"
            + "echo 'openjdk version \"11.0.2\" 2019-01-15' >&2");
    assertTrue(run().text().contains("is Java 11; Sealspan needs a JDK, version 17"));
  }

  @Test
  void refusesAJavaWithoutCompiler() throws Exception {
    script("java", "echo 'openjdk version \"17.0.15\" 2025-04-15' >&2");
    assertTrue(run().text().contains("is a Java without a compiler"));
  }

  @Test
  void saysThatJavaHomeIsWrong() throws Exception {
    Ran ran = run(List.of("JAVA_HOME=/nowhere"));
    assertEquals(1, ran.code());
    assertTrue(ran.text().contains("JAVA_HOME is /nowhere, but there is no bin/java in it"));
  }

  @Test
  void saysWhatToInstallWithoutMaven() throws Exception {
    workingJava();
    assertTrue(run().text().contains("Maven was not found on the PATH"));
    script("mvn", "echo 'Apache Maven 3.6.3 (abc)'");
    assertTrue(run().text().contains("is Maven 3.6.3; Sealspan needs 3.8 or newer"));
  }

  @Test
  void buildsOnceAndAgainOnlyWhenSourcesChanged() throws Exception {
    workingJava();
    workingMaven();
    Ran first = run("ask", "worst sites");
    assertEquals(0, first.code(), first.text());
    assertTrue(first.text().contains("First run: building Sealspan. Maven fetches up to "));
    assertTrue(first.text().contains("fetched 12 MB"), first.text());
    assertTrue(first.text().contains("sealspan.app.Main <ask> <worst sites>"), first.text());

    Ran second = run("ask");
    assertFalse(second.text().contains("building"), second.text());
    assertEquals(1, builds());

    Path source = project.resolve("schemas/src/main/java/A.java");
    Files.writeString(source, "class A {}");
    Files.setLastModifiedTime(source, FileTime.from(Instant.now().plusSeconds(5)));
    assertTrue(run("ask").text().contains("Sources changed: building Sealspan."));
    assertEquals(2, builds());
  }

  @Test
  void buildsAgainInAProjectThatWasMoved() throws Exception {
    workingJava();
    workingMaven();
    run("ask");
    project = Files.move(project, top.resolve("moved"));
    assertEquals(0, run("ask").code());
    assertEquals(2, builds());
  }

  @Test
  void showsWhyABuildFailed() throws Exception {
    workingJava();
    script(
        "mvn",
        "case \"$1\" in -version) echo 'Apache Maven 3.9.1';;"
            + " *) echo '[ERROR] cannot find symbol'; exit 1;; esac");
    Ran ran = run("ask");
    assertEquals(1, ran.code());
    assertTrue(ran.text().contains("The build failed:\n[ERROR] cannot find symbol"), ran.text());
    assertFalse(Files.exists(project.resolve("analytics/target/building")));
    assertFalse(Files.exists(project.resolve("analytics/target/stamp")));
  }

  @Test
  void worksThroughSymbolicLinksFromAnotherFolder() throws Exception {
    workingJava();
    workingMaven();
    Path link = Files.createDirectories(top.resolve("elsewhere")).resolve("link");
    Files.createSymbolicLink(link, Path.of("../a project/analytics/sealspan"));
    Path second = Files.createSymbolicLink(top.resolve("sealspan"), link);
    Ran ran = launch(second, List.of(), "status");
    assertEquals(0, ran.code(), ran.text());
    assertTrue(ran.text().contains("<-Dsealspan.home=" + project.toRealPath() + ">"), ran.text());
  }

  private record Ran(int code, String text) {}

  private Ran run(String... args) throws Exception {
    return launch(project.resolve("analytics/sealspan"), List.of(), args);
  }

  private Ran run(List<String> environment) throws Exception {
    return launch(project.resolve("analytics/sealspan"), environment);
  }

  private Ran launch(Path launcher, List<String> environment, String... args) throws Exception {
    List<String> command = new ArrayList<>(List.of(launcher.toString()));
    command.addAll(Arrays.asList(args));
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.directory(top.toFile());
    builder.environment().clear();
    builder.environment().put("PATH", bin.toString());
    for (String setting : environment) {
      int equals = setting.indexOf('=');
      builder.environment().put(setting.substring(0, equals), setting.substring(equals + 1));
    }
    Process process = builder.start();
    process.getOutputStream().close();
    String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Ran(process.waitFor(), text);
  }

  private void workingJava() throws IOException {
    script(
        "java",
        "case \"$1\" in -version) echo 'openjdk version \"21\" 2023-09-19' >&2; exit;; esac\n"
            + "flags=; for arg; do flags=\"$flags <$arg>\"; done\n"
            + "echo \"$flags\" | sed 's/<sealspan.app.Main>/sealspan.app.Main/'");
    script("javac", "exit 0");
  }

  /** Writes a jar and one line of transfer, as Maven does. */
  private void workingMaven() throws IOException {
    script(
        "mvn",
        "case \"$1\" in -version) echo 'Apache Maven 3.8.7'; exit;; esac\n"
            + "echo built >>'"
            + top.resolve("builds")
            + "'\n"
            + "mkdir -p analytics/app/target/lib\n"
            + "touch analytics/app/target/app-1.jar analytics/app/target/lib/x.jar\n"
            + "echo 'Downloaded from central: https://example.org/x.jar (12 MB at 3 MB/s)'\n"
            + "echo '[INFO] Building app 0.1.0 [10/10]'");
  }

  private int builds() throws IOException {
    return Files.readAllLines(top.resolve("builds")).size();
  }

  private void script(String name, String body) throws IOException {
    Path file = Files.writeString(bin.resolve(name), "#!/bin/sh\n" + body + "\n");
    assertTrue(file.toFile().setExecutable(true));
  }

  private static Path find(String tool) {
    return Arrays.stream(System.getenv("PATH").split(":"))
        .map(folder -> Path.of(folder, tool))
        .filter(Files::isExecutable)
        .findFirst()
        .orElseThrow(() -> new IllegalStateException(tool + " is not on the PATH."));
  }
}
