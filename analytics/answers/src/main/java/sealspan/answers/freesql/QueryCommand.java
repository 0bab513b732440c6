package sealspan.answers.freesql;

import com.fasterxml.jackson.annotation.JsonFormat;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.duckdb.DuckDBDriver;

/** The command line of a query's process, under the limits that the system can hold it to. */
final class QueryCommand {
  /** Address space of the Java process beside DuckDB's memory. */
  private static final long PROCESS_MEGABYTES = 1_600;

  /** No file larger than DuckDB's own library, which may have to be unpacked. */
  private static final long LARGEST_FILE_BYTES = 128L << 20;

  private static final Path PRLIMIT = Path.of("/usr/bin/prlimit");

  private QueryCommand() {}

  /**
   * A process that is not started yet; its environment is empty.
   *
   * @param folder folder of its own for everything that it may write
   */
  static ProcessBuilder of(Path folder, Path snapshot, SqlLimits limits) {
    List<String> command = new ArrayList<>();
    if (Files.isExecutable(PRLIMIT)) {
      long megabytes = PROCESS_MEGABYTES + limits.memoryMegabytes();
      command.add(PRLIMIT.toString());
      command.add("--as=" + (megabytes << 20));
      command.add("--cpu=" + (limits.time().toSeconds() + 1));
      command.add("--fsize=" + LARGEST_FILE_BYTES);
      command.add("--core=0");
    }
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(
        List.of(
            "-Xmx96m",
            "-Xss4m",
            "-XX:+UseSerialGC",
            "-XX:TieredStopAtLevel=1",
            "-XX:ReservedCodeCacheSize=32m",
            "-XX:CompressedClassSpaceSize=32m",
            "-XX:-UsePerfData",
            "-XX:-CreateCoredumpOnCrash",
            "-XX:ErrorFile=" + folder.resolve("crash"),
            "-Djava.io.tmpdir=" + folder,
            "-Duser.timezone=UTC",
            "-cp",
            classPath(),
            QueryProcess.class.getName(),
            snapshot.toAbsolutePath().toString(),
            Integer.toString(limits.memoryMegabytes()),
            Long.toString(limits.rows())));
    ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile());
    builder.environment().clear();
    builder.environment().put("HOME", folder.toString());
    builder.redirectError(ProcessBuilder.Redirect.DISCARD);
    return builder;
  }

  /** The few jars that the process needs: a short class path starts faster and offers less. */
  private static String classPath() {
    Set<String> entries = new LinkedHashSet<>();
    for (Class<?> type :
        List.of(
            QueryProcess.class,
            DuckDBDriver.class,
            ObjectMapper.class,
            JsonFactory.class,
            JsonFormat.class)) {
      try {
        entries.add(
            Path.of(type.getProtectionDomain().getCodeSource().getLocation().toURI()).toString());
      } catch (URISyntaxException e) {
        throw new IllegalStateException(e);
      }
    }
    return String.join(File.pathSeparator, entries);
  }
}
