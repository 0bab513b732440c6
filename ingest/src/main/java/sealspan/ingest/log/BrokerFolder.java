package sealspan.ingest.log;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.stream.Stream;

/** Where the broker keeps its things in a data folder, and the configuration it is given. */
record BrokerFolder(Path dataFolder) {
  private static final long LOG_LINE_MAX_CHARS = 400;

  BrokerFolder {
    dataFolder = dataFolder.toAbsolutePath().normalize();
  }

  Path folder() {
    return dataFolder.resolve("broker");
  }

  /** The records themselves. Nothing else in the data folder is beyond rebuilding. */
  Path logFolder() {
    return dataFolder.resolve("log");
  }

  Path stateFile() {
    return folder().resolve("state");
  }

  Path lockFile() {
    return folder().resolve("lock");
  }

  Path argsFile() {
    return folder().resolve("java.args");
  }

  Path propertiesFile() {
    return folder().resolve("server.properties");
  }

  Path log4jFile() {
    return folder().resolve("log4j2.properties");
  }

  Path brokerLog() {
    return folder().resolve("broker.log");
  }

  Path consoleLog() {
    return folder().resolve("console.log");
  }

  boolean isFormatted() {
    return Files.exists(logFolder().resolve("meta.properties"));
  }

  void writeConfiguration(BrokerSettings settings, int port, int controllerPort)
      throws IOException {
    Files.writeString(propertiesFile(), properties(port, controllerPort));
    Files.writeString(log4jFile(), log4j());
    Files.writeString(argsFile(), javaArgs(settings));
  }

  /**
   * One node, loopback only, nothing ever deleted by age or size. A flush after every message means
   * after every appended batch, before its acknowledgement: the broker counts unflushed messages
   * when a produce request has been written and flushes then. Record times may lie ahead of the
   * broker's clock, because recorded time never decreases even where the clock was set back. A
   * short session lets a broker that was killed come back soon.
   */
  private String properties(int port, int controllerPort) {
    return String.join(
        "\n",
        "process.roles=broker,controller",
        "node.id=1",
        "controller.quorum.voters=1@127.0.0.1:" + controllerPort,
        "listeners=PLAINTEXT://127.0.0.1:" + port + ",CONTROLLER://127.0.0.1:" + controllerPort,
        "advertised.listeners=PLAINTEXT://127.0.0.1:" + port,
        "controller.listener.names=CONTROLLER",
        "listener.security.protocol.map=PLAINTEXT:PLAINTEXT,CONTROLLER:PLAINTEXT",
        "log.dirs=" + propertyValue(logFolder()),
        "log.flush.interval.messages=1",
        "log.retention.ms=-1",
        "log.retention.bytes=-1",
        "log.message.timestamp.after.max.ms=" + Long.MAX_VALUE,
        "auto.create.topics.enable=false",
        "offsets.topic.num.partitions=1",
        "offsets.topic.replication.factor=1",
        "transaction.state.log.num.partitions=1",
        "transaction.state.log.replication.factor=1",
        "transaction.state.log.min.isr=1",
        "share.coordinator.state.topic.num.partitions=1",
        "share.coordinator.state.topic.replication.factor=1",
        "share.coordinator.state.topic.min.isr=1",
        "group.initial.rebalance.delay.ms=0",
        "broker.session.timeout.ms=3000",
        "broker.heartbeat.interval.ms=500",
        "log.cleaner.dedupe.buffer.size=16777216",
        "num.network.threads=2",
        "num.io.threads=4",
        "");
  }

  private String log4j() {
    return String.join(
        "\n",
        "appender.file.type=RollingFile",
        "appender.file.name=file",
        "appender.file.fileName=" + propertyValue(brokerLog()),
        "appender.file.filePattern=" + propertyValue(brokerLog()) + ".%i",
        "appender.file.layout.type=PatternLayout",
        "appender.file.layout.pattern=%d{ISO8601} %p %m (%c)%n",
        "appender.file.policies.type=SizeBasedTriggeringPolicy",
        "appender.file.policies.size=2MB",
        "appender.file.strategy.type=DefaultRolloverStrategy",
        "appender.file.strategy.max=3",
        "rootLogger.level=WARN",
        "rootLogger.appenderRef.file.ref=file",
        "");
  }

  private String javaArgs(BrokerSettings settings) {
    return String.join(
        "\n",
        ReadyClasses.of(settings.classPath()).use(),
        "-Xms64m",
        "-Xmx" + settings.heapMegabytes() + "m",
        "-XX:+UseSerialGC",
        "-XX:+ExitOnOutOfMemoryError",
        "-Djava.awt.headless=true",
        "-Dlog4j2.configurationFile=" + quoted(log4jFile().toUri().toString()),
        "-cp",
        quoted(settings.classPath().joined()),
        "");
  }

  /** Java argument files and property files both take a backslash as an escape. */
  static String quoted(String s) {
    return '"' + s.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
  }

  private static String propertyValue(Path p) {
    return p.toString().replace("\\", "\\\\");
  }

  /**
   * The last lines that the broker wrote, its console first; an unreadable file counts as empty.
   */
  List<String> lastLines(int count) {
    return Stream.of(consoleLog(), brokerLog()).flatMap(f -> tail(f, count).stream()).toList();
  }

  private static List<String> tail(Path file, int count) {
    Deque<String> last = new ArrayDeque<>();
    try (Stream<String> lines = Files.lines(file, java.nio.charset.StandardCharsets.ISO_8859_1)) {
      lines
          .filter(line -> !line.startsWith("\tat "))
          .forEach(
              line -> {
                if (last.size() == count) {
                  last.removeFirst();
                }
                last.addLast(line.substring(0, (int) Math.min(line.length(), LOG_LINE_MAX_CHARS)));
              });
    } catch (IOException e) {
      return List.of();
    }
    return List.copyOf(last);
  }
}
