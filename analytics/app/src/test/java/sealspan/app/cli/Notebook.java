package sealspan.app.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import sealspan.app.Main;

/** A notebook, run from top to bottom by Python without Jupyter. */
record Notebook(Path file) {
  /** Whether there is a Python to run it. */
  static boolean canRun() {
    for (String folder : System.getenv("PATH").split(File.pathSeparator)) {
      if (Files.isExecutable(Path.of(folder, "python3"))) {
        return true;
      }
    }
    return false;
  }

  /** Runs every cell of code; gives what was printed, complaints too. */
  Typed run(Path data, Path scratch) throws IOException, InterruptedException {
    StringBuilder program = new StringBuilder();
    for (JsonNode cell : new ObjectMapper().readTree(file.toFile()).get("cells")) {
      if (cell.get("cell_type").asText().equals("code")) {
        cell.get("source").forEach(line -> program.append(line.asText()));
        program.append('\n');
      }
    }
    Path script = Files.writeString(scratch.resolve("notebook.py"), program);
    Path printed = scratch.resolve("notebook.txt");
    ProcessBuilder python =
        new ProcessBuilder("python3", script.toString())
            .redirectErrorStream(true)
            .redirectOutput(printed.toFile());
    python.environment().put("SEALSPAN_DATA", data.toString());
    python.environment().put("SEALSPAN", sealspan());
    python.environment().put("PYTHONIOENCODING", "utf-8");
    int code = python.start().waitFor();
    return new Typed(code, Files.readString(printed, StandardCharsets.UTF_8), "");
  }

  /** The program as it runs here, as a command of a shell. */
  private static String sealspan() {
    return "'"
        + Path.of(System.getProperty("java.home"), "bin", "java")
        + "' -cp '"
        + System.getProperty("java.class.path")
        + "' '-Dsealspan.home="
        + System.getProperty("sealspan.home")
        + "' "
        + Main.class.getName();
  }
}
