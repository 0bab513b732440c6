package sealspan.ingest.log;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;

/**
 * The broker's classes as the Java runtime lays them ready, in a file beside the jars, so that a
 * broker starts with a third less work. The first broker that stops in an orderly way makes it.
 * Where the jars have changed since, or another Java runs them, the runtime passes over it.
 *
 * @param archive the file, or where it would be
 * @param draft what this broker would make, put in place when it is whole
 */
record ReadyClasses(Path archive, Path draft) {
  static ReadyClasses of(BrokerClassPath jars) {
    Path folder = jars.entries().get(0).getParent();
    return new ReadyClasses(
        folder.resolve("broker.jsa"),
        folder.resolve("broker-" + ProcessHandle.current().pid() + "-" + System.nanoTime()));
  }

  /** The option that uses what is there, without a word where it does not fit. */
  String use() {
    return "-Xlog:disable\n"
        + (exist()
            ? "-XX:SharedArchiveFile=" + BrokerFolder.quoted(archive.toString())
            : "-Xshare:auto");
  }

  /** The options of a broker that is to make the file; none where it is there or cannot be made. */
  List<String> make() {
    return exist() || !Files.isWritable(archive.getParent())
        ? List.of()
        : List.of("-XX:ArchiveClassesAtExit=" + draft);
  }

  /** Puts in place what a broker has made that has ended; without it all works too. */
  void adopt() {
    try {
      if (Files.exists(draft)) {
        Files.move(draft, archive, StandardCopyOption.ATOMIC_MOVE);
      }
    } catch (IOException e) {
      draft.toFile().delete();
    }
  }

  boolean exist() {
    return Files.exists(archive);
  }
}
