package sealspan.app.cli;

import java.io.PrintWriter;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.ISetter;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sealspan.answers.Answer;
import sealspan.answers.Answers;
import sealspan.answers.Filter;
import sealspan.answers.Question;
import sealspan.answers.Questions;
import sealspan.answers.TextTable;

@Command(
    name = "ask",
    mixinStandardHelpOptions = true,
    description = {
      "Answers a question from the published answers; the engine need not run.",
      "Without a name it lists the questions and the filters that each takes."
    })
final class AskCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private DataOption data;

  @Parameters(arity = "0..1", paramLabel = "NAME", description = "the question")
  private String name;

  private final Map<String, String> filters = new LinkedHashMap<>();

  /** Gives the command one option for every filter that a question may take. */
  static void addFilters(CommandLine line) {
    AskCommand ask = (AskCommand) line.getCommandSpec().userObject();
    for (Filter filter : Filter.values()) {
      line.getCommandSpec()
          .addOption(
              OptionSpec.builder("--" + filter.label())
                  .paramLabel(filter.kind().name())
                  .type(String.class)
                  .description("filter: " + filter.meaning())
                  .setter(ask.filterSetter(filter))
                  .build());
    }
  }

  private ISetter filterSetter(Filter filter) {
    return new ISetter() {
      @Override
      public <T> T set(T value) {
        if (value == null) {
          filters.remove(filter.label());
        } else {
          filters.put(filter.label(), value.toString());
        }
        return value;
      }
    };
  }

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    if (name == null) {
      list(out);
      return ExitCode.DONE;
    }
    Question question = Questions.named(name);
    try (Answers answers = Answers.open(data.folder().root())) {
      Answer answer = answers.ask(question, filters);
      out.print(TextTable.of(answer));
    }
    out.flush();
    return ExitCode.DONE;
  }

  private static void list(PrintWriter out) {
    out.println("Questions, and the filters that each takes (sealspan ask NAME --FILTER VALUE):");
    out.println();
    for (Question question : Questions.all()) {
      out.println("  " + question.name());
      out.println("      " + question.title());
      out.println("      asked by: " + question.askedBy() + filters(question));
    }
    out.println();
    out.println("Any one SELECT over the published tables: sealspan ask --sql \"SELECT ...\"");
    out.flush();
  }

  private static String filters(Question question) {
    StringBuilder text = new StringBuilder();
    question
        .filters()
        .forEach(
            use -> text.append(text.isEmpty() ? "; filters: " : ", ").append(use.filter().label()));
    return text.toString();
  }
}
