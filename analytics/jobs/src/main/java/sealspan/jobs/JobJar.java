package sealspan.jobs;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Enumeration;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;

/**
 * Both jobs as one jar for a Flink cluster: our own classes, and under {@code lib} the libraries
 * that a cluster does not bring itself; Flink puts those on the class path of the job.
 */
public final class JobJar {
  /** What a cluster brings, and what only other parts of the program need. */
  private static final String LEFT_OUT =
      "flink-(?!connector-(kafka|base)).*|log4j-.*|slf4j-.*|duckdb.*|picocli.*|lib.*";

  private JobJar() {}

  /**
   * Writes the jar.
   *
   * @param classPath of this program
   */
  public static void write(Path file, String classPath) throws IOException {
    List<Path> ours = new ArrayList<>();
    List<Path> libraries = new ArrayList<>();
    for (String entry : classPath.split(File.pathSeparator)) {
      Path path = Path.of(entry);
      if (Files.isDirectory(path) || isOurs(path)) {
        ours.add(path);
      } else if (Files.exists(path) && !path.getFileName().toString().matches(LEFT_OUT)) {
        libraries.add(path);
      }
    }
    try (OutputStream out = Files.newOutputStream(file);
        ZipOutputStream jar = new ZipOutputStream(out)) {
      for (Path path : ours) {
        addContents(jar, path);
      }
      for (Path library : libraries) {
        try (InputStream in = Files.newInputStream(library)) {
          add(jar, "lib/" + library.getFileName(), in);
        }
      }
    }
  }

  private static boolean isOurs(Path path) throws IOException {
    if (!path.toString().endsWith(".jar") || !Files.exists(path)) {
      return false;
    }
    try (ZipFile jar = new ZipFile(path.toFile())) {
      return jar.getEntry("sealspan/") != null;
    }
  }

  private static void addContents(ZipOutputStream jar, Path path) throws IOException {
    if (!Files.isDirectory(path)) {
      try (ZipFile from = new ZipFile(path.toFile())) {
        for (Enumeration<? extends ZipEntry> e = from.entries(); e.hasMoreElements(); ) {
          ZipEntry entry = e.nextElement();
          if (!entry.isDirectory() && isContent(entry.getName())) {
            try (InputStream in = from.getInputStream(entry)) {
              add(jar, entry.getName(), in);
            }
          }
        }
      }
      return;
    }
    try (Stream<Path> tree = Files.walk(path)) {
      for (Path file : tree.filter(Files::isRegularFile).sorted().toList()) {
        String name = path.relativize(file).toString().replace(File.separatorChar, '/');
        if (isContent(name)) {
          try (InputStream in = Files.newInputStream(file)) {
            add(jar, name, in);
          }
        }
      }
    }
  }

  private static boolean isContent(String name) {
    return !name.startsWith("META-INF/") && !name.equals("module-info.class");
  }

  private static void add(ZipOutputStream jar, String name, InputStream content)
      throws IOException {
    jar.putNextEntry(new ZipEntry(name));
    content.transferTo(jar);
    jar.closeEntry();
  }
}
