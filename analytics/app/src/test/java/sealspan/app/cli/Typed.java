package sealspan.app.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine;

/**
 * What a command did.
 *
 * @param code its exit code
 * @param out what it printed
 * @param err what it complained of
 */
record Typed(int code, String out, String err) {
  /** Types a command with a data folder. */
  static Typed at(Path data, String... words) {
    List<String> all = new ArrayList<>(List.of(words));
    all.addAll(List.of("--data", data.toString()));
    return of(all.toArray(String[]::new));
  }

  /** Types a command. */
  static Typed of(String... words) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine line = Sealspan.commandLine();
    line.setOut(new PrintWriter(out));
    line.setErr(new PrintWriter(err));
    int code = line.execute(words);
    line.getOut().flush();
    line.getErr().flush();
    return new Typed(code, out.toString(), err.toString());
  }

  @Override
  public String toString() {
    return "exit code " + code + "\n" + out + "\n" + err;
  }
}
