package sealspan.app.cli;

import java.io.IOException;
import java.io.StringReader;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.AdminClientConfig;
import org.apache.kafka.common.Uuid;
import sealspan.ingest.log.BrokerClassPath;

/**
 * A Kafka of someone else's that lets in only who names a user and a password (SASL/PLAIN, RFC
 * 4616), as a child process on this machine.
 */
final class PasswordBroker implements AutoCloseable {
  static final String USER = "recorder";
  static final String PASSWORD = "an invented password";

  private final Path folder;
  private final int port;
  private Process process;

  private PasswordBroker(Path folder, int port) {
    this.folder = folder;
    this.port = port;
  }

  /** Starts one that keeps everything in a folder, and waits until it answers. */
  static PasswordBroker start(Path folder, BrokerClassPath jars)
      throws IOException, InterruptedException {
    PasswordBroker broker;
    try (ServerSocket one = free();
        ServerSocket other = free()) {
      broker = new PasswordBroker(folder, one.getLocalPort());
      Files.writeString(broker.properties(), broker.configuration(other.getLocalPort()));
    }
    Process format =
        broker.java(
            jars,
            "kafka.tools.StorageTool",
            List.of(
                "format",
                "--cluster-id",
                Uuid.randomUuid().toString(),
                "--config",
                broker.properties().toString()));
    if (format.waitFor() != 0) {
      throw new IOException(Files.readString(broker.output()));
    }
    broker.process = broker.java(jars, "kafka.Kafka", List.of(broker.properties().toString()));
    broker.awaitAnswer();
    return broker;
  }

  private void awaitAnswer() throws IOException, InterruptedException {
    Properties settings = new Properties();
    settings.load(new StringReader(clientSettings(PASSWORD)));
    settings.put(AdminClientConfig.DEFAULT_API_TIMEOUT_MS_CONFIG, "120000");
    settings.put(AdminClientConfig.REQUEST_TIMEOUT_MS_CONFIG, "10000");
    try (Admin admin = Admin.create(settings)) {
      admin.describeCluster().clusterId().get();
    } catch (ExecutionException e) {
      throw new IOException(Files.readString(output()), e);
    }
  }

  String address() {
    return "127.0.0.1:" + port;
  }

  /** What a client's properties file has to say. */
  String clientSettings(String password) {
    return String.join(
        "\n",
        "bootstrap.servers=" + address(),
        "security.protocol=SASL_PLAINTEXT",
        "sasl.mechanism=PLAIN",
        "sasl.jaas.config=" + login(USER, password) + ";",
        "");
  }

  private static String login(String user, String password) {
    return "org.apache.kafka.common.security.plain.PlainLoginModule required username=\"%s\" password=\"%s\""
        .formatted(user, password);
  }

  private String configuration(int controllerPort) {
    return String.join(
        "\n",
        "process.roles=broker,controller",
        "node.id=1",
        "controller.quorum.voters=1@127.0.0.1:" + controllerPort,
        "listeners=GUARDED://" + address() + ",CONTROLLER://127.0.0.1:" + controllerPort,
        "advertised.listeners=GUARDED://" + address(),
        "inter.broker.listener.name=GUARDED",
        "controller.listener.names=CONTROLLER",
        "listener.security.protocol.map=GUARDED:SASL_PLAINTEXT,CONTROLLER:PLAINTEXT",
        "sasl.enabled.mechanisms=PLAIN",
        "sasl.mechanism.inter.broker.protocol=PLAIN",
        "listener.name.guarded.plain.sasl.jaas.config="
            + login("broker", "of the broker")
            + " user_broker=\"of the broker\" user_%s=\"%s\";".formatted(USER, PASSWORD),
        "log.dirs=" + folder.resolve("log"),
        "auto.create.topics.enable=false",
        "offsets.topic.num.partitions=1",
        "offsets.topic.replication.factor=1",
        "group.initial.rebalance.delay.ms=0",
        "");
  }

  private Process java(BrokerClassPath jars, String main, List<String> arguments)
      throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-Xmx256m", "-XX:+UseSerialGC", "-cp"));
    command.add(String.join(":", jars.entries().stream().map(Path::toString).toList()));
    command.add(main);
    command.addAll(arguments);
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.appendTo(output().toFile()))
        .start();
  }

  private Path properties() {
    return folder.resolve("server.properties");
  }

  private Path output() {
    return folder.resolve("output");
  }

  private static ServerSocket free() throws IOException {
    return new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
  }

  @Override
  public void close() throws InterruptedException {
    process.destroy();
    if (!process.waitFor(30, TimeUnit.SECONDS)) {
      process.destroyForcibly().waitFor();
    }
  }
}
