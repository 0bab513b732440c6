package sealspan.app.engine;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import sealspan.answers.Answers;
import sealspan.event.AssemblyEvent;
import sealspan.jobs.FlinkRuntime;
import sealspan.stats.Interval;
import sealspan.study.AssemblyTables;

/** Tells two builds of the code that makes results apart, by its bytes. */
final class CodeStamp {
  private static final int SHOWN_DIGITS = 12;

  /** One class of each part that results depend on. */
  private static final List<Class<?>> PARTS =
      List.of(
          AssemblyEvent.class,
          Interval.class,
          AssemblyTables.class,
          FlinkRuntime.class,
          Answers.class);

  private CodeStamp() {}

  /** The stamp of the running build: the first 12 hex digits of a SHA-256. */
  static String running() {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      for (Class<?> part : PARTS) {
        addAll(digest, locationOf(part));
      }
      return HexFormat.of().formatHex(digest.digest()).substring(0, SHOWN_DIGITS);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java platform has SHA-256.", e);
    }
  }

  private static Path locationOf(Class<?> part) {
    try {
      CodeSource source = part.getProtectionDomain().getCodeSource();
      URI location = source.getLocation().toURI();
      return Path.of(location);
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void addAll(MessageDigest digest, Path location) throws IOException {
    List<Path> files;
    try (Stream<Path> tree = Files.walk(location)) {
      files = tree.filter(Files::isRegularFile).sorted().toList();
    }
    byte[] buffer = new byte[1 << 16];
    for (Path file : files) {
      try (InputStream in = Files.newInputStream(file)) {
        for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
          digest.update(buffer, 0, n);
        }
      }
    }
  }
}
