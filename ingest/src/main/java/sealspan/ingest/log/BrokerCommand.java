package sealspan.ingest.log;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.kafka.common.Uuid;

/** The commands that run the broker, with the Java runtime that runs this program. */
final class BrokerCommand {
  private BrokerCommand() {}

  static ProcessBuilder serve(BrokerFolder folder, ReadyClasses ready) {
    List<String> arguments = new ArrayList<>(ready.make());
    arguments.addAll(QuickCompiler.options());
    arguments.addAll(List.of("kafka.Kafka", folder.propertiesFile().toString()));
    return java(folder, arguments);
  }

  static ProcessBuilder format(BrokerFolder folder) {
    return java(
        folder,
        List.of(
            "-XX:TieredStopAtLevel=1", // too short for the better compiler to pay
            "kafka.tools.StorageTool",
            "format",
            "--ignore-formatted",
            "--cluster-id",
            Uuid.randomUuid().toString(),
            "--config",
            folder.propertiesFile().toString()));
  }

  /**
   * The class path goes into an argument file: the command line stays short enough to be read back
   * from the operating system, and names the data folder.
   */
  private static ProcessBuilder java(BrokerFolder folder, List<String> arguments) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("@" + folder.argsFile());
    command.addAll(arguments);
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.directory(folder.folder().toFile());
    builder.redirectErrorStream(true);
    builder.redirectOutput(folder.consoleLog().toFile());
    List.of("JAVA_TOOL_OPTIONS", "JDK_JAVA_OPTIONS", "_JAVA_OPTIONS", "CLASSPATH")
        .forEach(builder.environment()::remove);
    return builder;
  }
}
