package sealspan.jobs;

import java.io.File;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;

/**
 * A stand-alone Flink cluster of one job manager and some task managers, each a process of its own,
 * started as its scripts would: Flink's own jars alone on the class path, and of flags for the JVM
 * one that Flink's stock config.yaml has for Java 17, in env.java.opts.all.
 */
final class OwnFlinkCluster implements AutoCloseable {
  private static final String NOT_FLINKS =
      ".*/(schemas|study|stats|ingest|jobs)(-[0-9.]+)?(/target)?[^/]*(/(test-)?classes|\\.jar)"
          + "|.*(kafka|flink-connector-base|junit|jqwik|testcontainers|docker-java|avro|hipparchus).*";

  private final Path folder;
  private final String classPath;
  private final Process jobManager;
  private final List<Process> taskManagers = new ArrayList<>();

  OwnFlinkCluster(Path folder, int taskManagers, int slotsEach) throws IOException {
    this.folder = folder;
    this.classPath =
        Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
            .filter(entry -> !entry.matches(NOT_FLINKS))
            .collect(Collectors.joining(File.pathSeparator));
    writeConfiguration(slotsEach);
    jobManager =
        start(
            "job-manager",
            "org.apache.flink.runtime.entrypoint.StandaloneSessionClusterEntrypoint",
            "--configDir",
            folder.toString(),
            "--executionMode",
            "cluster");
    for (int i = 0; i < taskManagers; i++) {
      this.taskManagers.add(
          start(
              "task-manager-" + i,
              "org.apache.flink.runtime.taskexecutor.TaskManagerRunner",
              "--configDir",
              folder.toString()));
    }
  }

  /** What a stock config.yaml says, for one machine, with the memory of a small one. */
  private void writeConfiguration(int slotsEach) throws IOException {
    Files.createDirectories(folder);
    int rpc = freePort();
    int rest = freePort();
    Files.writeString(
        folder.resolve("config.yaml"),
        """
        jobmanager.rpc.address: 127.0.0.1
        jobmanager.rpc.port: %d
        jobmanager.bind-host: 127.0.0.1
        taskmanager.host: 127.0.0.1
        taskmanager.bind-host: 127.0.0.1
        taskmanager.numberOfTaskSlots: %d
        taskmanager.cpu.cores: 1
        taskmanager.memory.framework.heap.size: 128m
        taskmanager.memory.framework.off-heap.size: 64m
        taskmanager.memory.jvm-metaspace.size: 256m
        taskmanager.memory.jvm-overhead.min: 64m
        taskmanager.memory.jvm-overhead.max: 64m
        taskmanager.memory.task.heap.size: 256m
        taskmanager.memory.task.off-heap.size: 0m
        taskmanager.memory.managed.size: 64m
        taskmanager.memory.network.min: 160m
        taskmanager.memory.network.max: 160m
        taskmanager.load-balance.mode: SLOTS
        heartbeat.interval: 2000
        heartbeat.timeout: 10000
        rest.address: 127.0.0.1
        rest.bind-address: 127.0.0.1
        rest.port: %d
        rest.bind-port: %d
        io.tmp.dirs: %s
        """
            .formatted(rpc, slotsEach, rest, rest, folder));
  }

  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    }
  }

  private Process start(String name, String main, String... arguments) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-Xmx512m", "--add-opens=java.base/java.util=ALL-UNNAMED"));
    command.addAll(List.of("-cp", classPath, main));
    command.addAll(List.of(arguments));
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().put("FLINK_CONF_DIR", folder.toString());
    return builder.redirectOutput(output(name).toFile()).start();
  }

  private Path output(String name) {
    return folder.resolve(name + ".out");
  }

  /** Submits a job as {@code flink run} does; with {@code -d} it is not waited for. */
  void run(String... arguments) throws IOException, InterruptedException {
    List<String> all = new ArrayList<>(List.of("run"));
    all.addAll(List.of(arguments));
    Process client =
        start("client", "org.apache.flink.client.cli.CliFrontend", all.toArray(String[]::new));
    if (!client.waitFor(2, TimeUnit.MINUTES) || client.exitValue() != 0) {
      client.destroyForcibly();
      throw new AssertionError("flink run failed:\n" + lastLines());
    }
  }

  /** kill -9. */
  void killTaskManager(int number) throws InterruptedException {
    taskManagers.get(number).destroyForcibly().waitFor();
  }

  /** The last lines that each process wrote. */
  String lastLines() {
    StringBuilder text = new StringBuilder();
    try (var files = Files.list(folder)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".out")).sorted().toList()) {
        List<String> lines = Files.readAllLines(file);
        text.append(file.getFileName()).append(":\n");
        lines.subList(Math.max(0, lines.size() - 25), lines.size()).stream()
            .map(line -> "  " + line + "\n")
            .forEach(text::append);
      }
    } catch (IOException e) {
      text.append(e);
    }
    return text.toString();
  }

  @Override
  public void close() {
    for (Process one : taskManagers) {
      one.destroyForcibly();
    }
    jobManager.destroyForcibly();
  }
}
