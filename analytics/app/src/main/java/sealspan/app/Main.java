package sealspan.app;

import sealspan.app.cli.Sealspan;

/** Entry of the program. */
public final class Main {
  private Main() {}

  /** Runs one command and exits with its code; see {@link sealspan.app.cli.ExitCode}. */
  public static void main(String[] args) {
    System.exit(Sealspan.run(args));
  }
}
