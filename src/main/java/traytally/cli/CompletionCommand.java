package traytally.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParentCommand;
import traytally.plastic.Worded;

/** {@code completion}: the script by which a shell completes the commands and their options. */
@Command(
    name = "completion",
    description = {
      "Prints the script by which bash and zsh complete commands, options and their words.",
      "Load it in ~/.bashrc or ~/.zshrc: source <(traytally completion)"
    },
    footer = {"", "Example: traytally completion > ~/.traytally-completion"})
final class CompletionCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;

  @Override
  public Integer call() {
    CommandLine all = new CommandLine(new Traytally(root.desk()));
    Commands.registerAll(all);
    Converter.register(all);
    offerWords(all);
    root.desk().out().print(AutoComplete.bash("traytally", all));
    return Exit.OK;
  }

  /** Lets options of a closed list offer its words, as they are typed. */
  private static void offerWords(CommandLine commandLine) {
    CommandSpec spec = commandLine.getCommandSpec();
    for (OptionSpec option : List.copyOf(spec.options())) {
      List<String> words = words(option);
      if (!words.isEmpty() && !option.inherited()) {
        spec.remove(option);
        spec.addOption(option.toBuilder().completionCandidates(words).build());
      }
    }
    commandLine.getSubcommands().values().forEach(CompletionCommand::offerWords);
  }

  private static List<String> words(ArgSpec option) {
    List<String> words = new ArrayList<>();
    Stream.concat(Stream.of(option.type()), Arrays.stream(option.auxiliaryTypes()))
        .filter(type -> type.isEnum() && Worded.class.isAssignableFrom(type))
        .distinct()
        .forEach(
            type ->
                Arrays.stream(type.getEnumConstants())
                    .forEach(constant -> words.add(((Worded) constant).word())));
    return words;
  }
}
