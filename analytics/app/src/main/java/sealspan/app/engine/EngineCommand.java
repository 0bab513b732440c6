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

  /**
   * Code must run five times as often as usual before the thorough compiler takes it up. With the
   * usual thresholds that compiler took a quarter of all the work of making the answers of 10,000
   * assemblies anew, most of it for code that did not run long enough to give the time back.
   */
  private static final List<String> PATIENT_COMPILER =
      List.of(
          "-XX:Tier4InvocationThreshold=25000",
          "-XX:Tier4MinInvocationThreshold=3000",
          "-XX:Tier4CompileThreshold=75000",
          "-XX:Tier4BackEdgeThreshold=200000");

  private EngineCommand() {}

  /**
   * A shell starts it with interrupts ignored: a Ctrl-C typed at the command that happened to start
   * it must not end it.
   */
  static ProcessBuilder of(DataFolder folder) {
    List<String> command = new ArrayList<>();
    command.addAll(List.of("/bin/sh", "-c", "trap '' INT HUP; exec \"$@\"", "sealspan-engine"));
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(heap());
    command.addAll(PATIENT_COMPILER);
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

  /**
   * A quarter of the memory of this machine, but 2 GiB at least and 4 GiB at most. An eighth of it
   * is for what is new: left to itself the virtual machine gives that so little room that a long
   * catch-up collects several times a second, each time with a batch on its way to the answers. Who
   * chooses the memory leaves how it is divided to the virtual machine.
   */
  private static List<String> heap() {
    String chosen = System.getenv(HEAP);
    if (chosen != null) {
      return List.of("-Xmx" + chosen);
    }
    long memoryBytes =
        ManagementFactory.getOperatingSystemMXBean() instanceof OperatingSystemMXBean machine
            ? machine.getTotalMemorySize()
            : 0;
    long heapMb = Math.max(2_048, Math.min(4_096, memoryBytes / 4 >> 20));
    return List.of("-Xmx" + heapMb + "m", "-Xmn" + heapMb / 8 + "m");
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
