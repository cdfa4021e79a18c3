package traytally.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Fact.Guided;
import traytally.ledger.Recorded;
import traytally.plastic.Name;
import traytally.plastic.Tone;
import traytally.report.GuideReport;
import traytally.store.Box;
import traytally.trip.Clarity;
import traytally.trip.Leaning;
import traytally.trip.Months;

/** {@code guide}: what to try first where the log is silent. */
@Command(
    name = "guide",
    description = "Lists the starting guide: what to try first where your log is silent.",
    subcommands = {GuideCommand.Set.class, GuideCommand.Reset.class},
    footer = {"", "Example: traytally guide set --for bass --in cloudy pale bright 2"})
final class GuideCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;
  @Mixin private Output output;

  @Override
  public Integer call() {
    try (Box box = root.openBox()) {
      output.print(root, GuideReport.of(box.book(), root.today()));
    }
    return Exit.OK;
  }

  /** {@code guide set}: one leaning. */
  @Command(
      name = "set",
      description = {
        "Sets how much a tone is worth trying: TONE LEANING",
        "TONE is dark, mid or pale, then muted or bright; LEANING is from -2, better left, to 2,"
            + " try it first; 0 says nothing."
      },
      footer = {"", "Example: traytally guide set --for bass --in cloudy pale bright 2"})
  static final class Set implements Callable<Integer> {
    @ParentCommand private GuideCommand parent;

    @Parameters(arity = "3", paramLabel = "TONE LEANING", description = "As above.")
    private List<String> words = List.of();

    @Option(names = "--for", paramLabel = "FISH", description = "For this fish only.")
    private Name species = Name.BLANK;

    @Option(names = "--in", paramLabel = "CLARITY", description = "In such water only.")
    private Optional<Clarity> clarity = Optional.empty();

    @Option(names = "--months", paramLabel = "MONTHS", description = "In 11-2 only, say.")
    private Optional<String> months = Optional.empty();

    @Override
    public Integer call() {
      Leaning leaning = new Leaning(species, clarity, months.map(Set::months), tone(), strength());
      try (Box box = parent.root.openOrMakeBox()) {
        List<Recorded<? extends Fact>> before = new ArrayList<>();
        box.book().recorded(Guided.class).stream()
            .filter(own -> own.what().leaning().sameCase(leaning))
            .forEach(before::add);
        String summary = String.join(" ", words);
        parent.root.record(
            box, Entry.ofFacts("guide", summary, List.of(new Guided(leaning)), before));
      }
      return Exit.OK;
    }

    private static Months months(String text) {
      return Months.parse(text)
          .orElseThrow(
              () -> new Refusal(Exit.USAGE, "\"" + text + "\" names no months. Write 11-2."));
    }

    private Tone tone() {
      String word = words.get(0) + " " + words.get(1);
      return Tone.parse(word)
          .orElseThrow(
              () ->
                  new Refusal(
                      Exit.USAGE,
                      "\""
                          + word
                          + "\" is no tone. Write dark, mid or pale, then muted or bright."));
    }

    private int strength() {
      String word = words.get(2);
      if (!word.matches("[-+]?[012]")) {
        throw new Refusal(Exit.USAGE, "\"" + word + "\" is no leaning: -2, -1, 0, 1 or 2.");
      }
      return Integer.parseInt(word);
    }
  }

  /** {@code guide reset}: the guide as it came. */
  @Command(
      name = "reset",
      description = "Takes back all your changes to the guide.",
      footer = {"", "Example: traytally guide reset"})
  static final class Reset implements Callable<Integer> {
    @ParentCommand private GuideCommand parent;

    @Override
    public Integer call() {
      try (Box box = parent.root.openBox()) {
        Book book = box.book();
        List<Recorded<? extends Fact>> own = new ArrayList<>(book.recorded(Guided.class));
        if (own.isEmpty()) {
          throw new Refusal(Exit.DATA, "the guide is as it came: there is nothing to take back.");
        }
        parent.root.record(box, Entry.ofFacts("guide", "as it came", List.of(), own));
      }
      return Exit.OK;
    }
  }
}
