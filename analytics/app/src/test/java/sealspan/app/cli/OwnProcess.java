package sealspan.app.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A command in a process of its own, as a user's shell would start it. */
final class OwnProcess {
  private OwnProcess() {}

  /** Starts a command with a data folder; what it prints goes to a file. */
  static Process start(Path data, Path output, String... words) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xmx512m"));
    for (String passed : List.of("sealspan.home", "sealspan.broker.lib")) {
      command.add("-D" + passed + "=" + System.getProperty(passed));
    }
    command.addAll(List.of("-cp", System.getProperty("java.class.path"), "sealspan.app.Main"));
    command.addAll(List.of(words));
    command.addAll(List.of("--data", data.toString()));
    try {
      return new ProcessBuilder(command)
          .redirectErrorStream(true)
          .redirectOutput(ProcessBuilder.Redirect.appendTo(output.toFile()))
          .start();
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }
}
