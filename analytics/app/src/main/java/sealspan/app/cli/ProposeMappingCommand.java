package sealspan.app.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sealspan.app.Problem;
import sealspan.ingest.source.Mapping;
import sealspan.ingest.source.MappingProposal;
import sealspan.ingest.source.SourceException;
import sealspan.ingest.source.Sources;

@Command(
    name = "propose-mapping",
    mixinStandardHelpOptions = true,
    description = {
      "Proposes how to read somebody else's table, from its header and first rows.",
      "The proposal is a draft to be checked line by line; then: sealspan import FILE --mapping"
          + " MAPPING --dry-run"
    })
final class ProposeMappingCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "the table")
  private Path file;

  @Option(
      names = "--out",
      paramLabel = "MAPPING",
      description = "the mapping file to write; without it the terminal")
  private Path out;

  @Option(names = "--encoding", paramLabel = "NAME", description = "such as windows-1252")
  private String encoding;

  @Override
  public Integer call() {
    try {
      Mapping how = Mapping.NONE.inEncoding(encoding);
      MappingProposal proposal = Sources.propose(file, how);
      if (out == null) {
        spec.commandLine().getOut().print(proposal.json());
      } else {
        OutFile.write(out, proposal.json());
        spec.commandLine().getOut().println("Wrote " + out + ". Check every line of it.");
      }
    } catch (SourceException e) {
      throw new Problem(e.getMessage(), e);
    }
    spec.commandLine().getOut().flush();
    return ExitCode.DONE;
  }
}
