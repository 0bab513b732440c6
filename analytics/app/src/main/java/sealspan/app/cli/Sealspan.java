package sealspan.app.cli;

import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program as people type it. */
@Command(
    name = "sealspan",
    version = "sealspan " + Sealspan.VERSION,
    mixinStandardHelpOptions = true,
    description = {
      "Keeps the record of every field test and repair of backflow-prevention assemblies, and works"
          + " out from it what fails and how often, how long seals last and whether repairs held."
    },
    synopsisSubcommandLabel = "COMMAND",
    footerHeading = "%n",
    footer = {
      "Exit codes: 0 done, 1 failed, 2 typed wrong, 3 done in part (rows were rejected; of status:"
          + " no engine runs).",
      Cautions.DEFERENCE
    },
    subcommands = {
      DemoCommand.class,
      StartCommand.class,
      StopCommand.class,
      StatusCommand.class,
      ImportCommand.class,
      ProposeMappingCommand.class,
      RecordCommand.class,
      CorrectCommand.class,
      VoidCommand.class,
      AskCommand.class,
      LookForClustersCommand.class,
      AlarmCommand.class,
      CriteriaCommand.class,
      RebuildCommand.class,
      FitCommand.class,
      ExportCommand.class,
      RestoreCommand.class,
      FlinkJobCommand.class,
      PracticeCommand.class,
      EngineCommandLine.class,
      WarmUpCommand.class,
      HelpCommand.class
    })
public final class Sealspan implements Runnable {
  static final String VERSION = "0.1.0";

  @Spec private CommandSpec spec;

  /** Runs one command line and returns its exit code; prints results and complaints. */
  public static int run(String... args) {
    CommandLine line = commandLine();
    try {
      return line.execute(args);
    } catch (OutOfMemoryError e) {
      line.getErr()
          .println(
              "This takes more memory than the program was given ("
                  + Runtime.getRuntime().maxMemory() / 1_000_000
                  + " MB). Nothing is lost. Give it more, as in: SEALSPAN_HEAP=4g sealspan "
                  + String.join(" ", args));
      line.getErr().flush();
      return ExitCode.FAILED;
    } catch (Error e) {
      Complaints.sayUnexpected(e, line.getErr());
      return ExitCode.FAILED;
    }
  }

  static CommandLine commandLine() {
    CommandLine line = new CommandLine(new Sealspan());
    AskCommand.addFilters(line.getSubcommands().get("ask"));
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setUsageHelpAutoWidth(true);
    line.setExecutionExceptionHandler(Complaints::say);
    line.setParameterExceptionHandler(Sealspan::sayHowToType);
    return line;
  }

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }

  private static int sayHowToType(ParameterException e, String[] args) {
    PrintWriter err = e.getCommandLine().getErr();
    err.println(e.getMessage());
    CommandLine.UnmatchedArgumentException.printSuggestions(e, err);
    err.println(
        "How to type it: " + e.getCommandLine().getCommandSpec().qualifiedName() + " --help");
    return ExitCode.USAGE;
  }
}
