package traytally.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Fact.ColourWord;
import traytally.ledger.Recorded;
import traytally.plastic.Name;
import traytally.plastic.Swatch;
import traytally.report.ColoursReport;
import traytally.store.Box;

/** {@code colours}: how the colours look, and the words that look is assumed from. */
@Command(
    name = "colours",
    description = "Lists how your colours look, as you said or as their names suggest.",
    subcommands = {
      ColoursCommand.Shown.class,
      ColoursCommand.Set.class,
      ColoursCommand.Withdraw.class
    },
    footer = {"", "Example: traytally colours set 'old faithful' '#5a5222'"})
final class ColoursCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;
  @Mixin private Output output;

  @Override
  public Integer call() {
    try (Box box = root.openBox()) {
      output.print(root, ColoursReport.of(box.book(), root.today()));
    }
    return Exit.OK;
  }

  private static List<Recorded<? extends Fact>> told(Book book, Name word) {
    List<Recorded<? extends Fact>> told = new ArrayList<>();
    book.recorded(ColourWord.class).stream()
        .filter(own -> own.what().word().equals(word))
        .forEach(told::add);
    return told;
  }

  /** {@code colours words}: the words and their swatches. */
  @Command(
      name = "words",
      description = "Lists the everyday words that stand for a look.",
      footer = {"", "Example: traytally colours words"})
  static final class Shown implements Callable<Integer> {
    @ParentCommand private ColoursCommand parent;
    @Mixin private Output output;

    @Override
    public Integer call() {
      try (Box box = parent.root.openBox()) {
        output.print(parent.root, ColoursReport.words(box.book(), parent.root.today()));
      }
      return Exit.OK;
    }
  }

  /** {@code colours set}: what a word stands for. */
  @Command(
      name = "set",
      description = "Says what a word stands for: a swatch, or none where it is not to be used.",
      footer = {"", "Example: traytally colours set 'old faithful' '#5a5222'"})
  static final class Set implements Callable<Integer> {
    @ParentCommand private ColoursCommand parent;

    @Parameters(index = "0", paramLabel = "WORD", description = "One word, or several in quotes.")
    private Name word = Name.BLANK;

    @Parameters(index = "1", paramLabel = "SWATCH", description = "#RRGGBB, or none.")
    private String swatch = "";

    @Override
    public Integer call() {
      Optional<Swatch> is = Swatch.parse(swatch);
      if (word.isBlank()) {
        throw new Refusal(Exit.USAGE, "a word has letters in it.");
      }
      if (is.isEmpty() && !swatch.equals("none")) {
        throw new Refusal(
            Exit.USAGE, "\"" + swatch + "\" is no swatch. Write #RRGGBB, as in #5a5222, or none.");
      }
      try (Box box = parent.root.openOrMakeBox()) {
        parent.root.record(
            box,
            Entry.ofFacts(
                "colours",
                word + " " + swatch,
                List.of(new ColourWord(word, is)),
                told(box.book(), word)));
      }
      return Exit.OK;
    }
  }

  /** {@code colours withdraw}: a word as it came. */
  @Command(
      name = "withdraw",
      description = "Takes back what you said of a word.",
      footer = {"", "Example: traytally colours withdraw 'old faithful'"})
  static final class Withdraw implements Callable<Integer> {
    @ParentCommand private ColoursCommand parent;

    @Parameters(index = "0", paramLabel = "WORD", description = "The word.")
    private Name word = Name.BLANK;

    @Override
    public Integer call() {
      try (Box box = parent.root.openBox()) {
        List<Recorded<? extends Fact>> told = told(box.book(), word);
        if (told.isEmpty()) {
          throw new Refusal(Exit.DATA, "you said nothing of the word \"" + word + "\".");
        }
        parent.root.record(box, Entry.ofFacts("colours", "withdrawn: " + word, List.of(), told));
      }
      return Exit.OK;
    }
  }
}
