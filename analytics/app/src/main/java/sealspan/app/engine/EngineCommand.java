package sealspan.app.engine;

import com.sun.management.OperatingSystemMXBean;
import java.io.File;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import sealspan.ingest.log.QuickCompiler;

/** The command line of an engine in the background, with the Java and the jars that we run on. */
final class EngineCommand {
  /** The variable that says how much memory the engine gets. */
  static final String HEAP = "SEALSPAN_ENGINE_HEAP";

  private EngineCommand() {}

  /**
   * A shell starts it with interrupts ignored: a Ctrl-C typed at the command that happened to start
   * it must not end it.
   */
  static ProcessBuilder of(DataFolder folder) {
    List<String> command = new ArrayList<>();
    command.addAll(List.of("/bin/sh", "-c", "trap '' INT HUP; exec \"$@\"", "sealspan-engine"));
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-Xmx" + System.getenv().getOrDefault(HEAP, usualHeap()));
    command.addAll(QuickCompiler.options());
    command.add("-XX:+UseSerialGC");
    command.add("-XX:+ExitOnOutOfMemoryError");
    command.add("-Duser.timezone=UTC");
    command.add("-Djava.awt.headless=true");
    command.add("-D" + ProgramLog.FOLDER + "=" + folder.logs());
    command.add("-D" + ProgramLog.NAME + "=engine");
    passOn(command, Installation.HOME);
    passOn(command, Installation.BROKER_JARS);
    command.addAll(List.of("-cp", absolute(System.getProperty("java.class.path"))));
    command.addAll(List.of("sealspan.app.Main", "engine", "--data", folder.root().toString()));
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.directory(folder.root().toFile());
    builder.redirectErrorStream(true);
    builder.redirectOutput(
        ProcessBuilder.Redirect.appendTo(folder.logs().resolve("engine.out").toFile()));
    return builder;
  }

  /** A quarter of the memory of this machine, but 2 GiB at least and 4 GiB at most. */
  private static String usualHeap() {
    long memoryBytes =
        ManagementFactory.getOperatingSystemMXBean() instanceof OperatingSystemMXBean machine
            ? machine.getTotalMemorySize()
            : 0;
    return Math.max(2_048, Math.min(4_096, memoryBytes / 4 >> 20)) + "m";
  }

  private static void passOn(List<String> command, String property) {
    String value = System.getProperty(property);
    if (value != null) {
      command.add("-D" + property + "=" + value);
    }
  }

  private static String absolute(String classPath) {
    List<String> entries = new ArrayList<>();
    for (String entry : classPath.split(File.pathSeparator)) {
      entries.add(Path.of(entry).toAbsolutePath().toString());
    }
    return String.join(File.pathSeparator, entries);
  }
}
