package sealspan.app.cli;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;

class HelpTest {
  private static final int LEAST_CHARACTERS = 8;

  @Test
  void everyCommandOptionAndParameterIsExplained() {
    List<String> unexplained = new ArrayList<>();
    commands(Sealspan.commandLine())
        .forEach(
            line -> {
              CommandSpec spec = line.getCommandSpec();
              if (!isExplained(spec.usageMessage().description())) {
                unexplained.add(spec.qualifiedName());
              }
              Stream.<ArgSpec>concat(spec.options().stream(), spec.positionalParameters().stream())
                  .filter(arg -> !isExplained(arg.description()))
                  .forEach(arg -> unexplained.add(spec.qualifiedName() + " " + arg));
            });
    assertEquals(List.of(), unexplained);
  }

  @Test
  void everyCommandHelps() {
    assertAll(
        commands(Sealspan.commandLine())
            .filter(line -> line.getCommandSpec().optionsMap().containsKey("--help"))
            .map(line -> line.getCommandSpec().qualifiedName(" "))
            .map(
                name ->
                    () -> {
                      String[] words = (name + " --help").split(" ");
                      Typed typed =
                          Typed.of(List.of(words).subList(1, words.length).toArray(String[]::new));
                      assertEquals(ExitCode.DONE, typed.code(), typed.toString());
                      assertTrue(typed.out().contains("Usage: " + name), typed.toString());
                    }));
  }

  @Test
  void whatIsTypedWrongIsAnsweredInWords() {
    Typed unknown = Typed.of("imprt");
    assertEquals(ExitCode.USAGE, unknown.code());
    assertTrue(unknown.err().contains("Did you mean"), unknown.err());
    Typed missing = Typed.of("import");
    assertEquals(ExitCode.USAGE, missing.code());
    assertTrue(missing.err().contains("How to type it: sealspan import --help"), missing.err());
    Typed noFile = Typed.of("import", "/no/such/file.csv");
    assertEquals(ExitCode.FAILED, noFile.code());
    assertEquals("There is no file /no/such/file.csv. Check the path.", noFile.err().strip());
  }

  private static Stream<CommandLine> commands(CommandLine line) {
    return Stream.concat(
        Stream.of(line),
        line.getSubcommands().values().stream().distinct().flatMap(HelpTest::commands));
  }

  private static boolean isExplained(String[] description) {
    return String.join(" ", description).length() >= LEAST_CHARACTERS;
  }
}
