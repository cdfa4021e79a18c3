package traytally.cli;

import java.util.Set;
import java.util.TreeSet;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** What a command line asks, whatever its words' order and whatever becomes of the answer. */
final class Question {
  /** Which box, which day, and where the answer goes: told apart otherwise, or no matter. */
  private static final Set<String> NOT_OF_IT =
      Set.of("--box", "--as-of", "--format", "--out", "--debug", "--fail");

  private Question() {}

  /** The subcommands, words and options of {@code given}, a line each. */
  static String of(ParseResult given) {
    StringBuilder question = new StringBuilder();
    Set<String> options = new TreeSet<>();
    for (CommandLine line : given.asCommandLineList()) {
      ParseResult command = line.getParseResult();
      question.append('\n').append(command.commandSpec().name());
      for (OptionSpec option : command.matchedOptions()) {
        if (!NOT_OF_IT.contains(option.longestName())) {
          options.add(option.longestName() + option.stringValues());
        }
      }
      command.matchedPositionals().forEach(word -> question.append(word.stringValues()));
    }
    options.forEach(option -> question.append('\n').append(option));
    return question.toString();
  }
}
