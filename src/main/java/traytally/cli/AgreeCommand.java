package traytally.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Fact.Agreed;
import traytally.ledger.Recorded;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.report.AgreedReport;
import traytally.store.Box;

/** {@code agree}: spellings the angler agreed to. */
@Command(
    name = "agree",
    description = "Agrees that a spelling stands for a name; lists what was agreed.",
    footer = {"", "Example: traytally agree 'mtr oil' = 'motor oil'"})
final class AgreeCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;
  @Mixin private Output output;

  @Parameters(
      arity = "0..*",
      paramLabel = "SPELLING = NAME",
      description = "The spelling, an equals sign, the name. Nothing lists them.")
  private List<String> words = List.of();

  @Option(
      names = "--withdraw",
      paramLabel = "SPELLING",
      description = "Ends what was agreed of this spelling.")
  private List<Name> withdraw = List.of();

  @Override
  public Integer call() {
    if (words.isEmpty() && withdraw.isEmpty()) {
      try (Box box = root.openBox()) {
        output.print(root, AgreedReport.of(box.book(), root.today()));
      }
      return Exit.OK;
    }
    try (Box box = root.openOrMakeBox()) {
      Book book = box.book();
      Entry entry = entry(book);
      entry.added().forEach(fact -> warn(book, (Agreed) fact));
      root.record(box, entry);
    }
    return Exit.OK;
  }

  private Entry entry(Book book) {
    List<Fact> added = new ArrayList<>();
    List<Name> ended = new ArrayList<>(withdraw);
    if (!words.isEmpty()) {
      Agreed agreed = agreed(String.join(" ", words));
      added.add(agreed);
      ended.add(agreed.spelling());
    }
    List<Recorded<? extends Fact>> withdrawn = new ArrayList<>();
    book.recorded(Agreed.class).stream()
        .filter(agreed -> ended.contains(agreed.what().spelling()))
        .forEach(withdrawn::add);
    if (added.isEmpty() && withdrawn.isEmpty()) {
      throw new Refusal(Exit.DATA, "nothing was agreed of \"" + withdraw.get(0) + "\".");
    }
    String summary =
        added.isEmpty() ? "withdrawn: " + withdraw.get(0) : "agreed: " + String.join(" ", words);
    return Entry.ofFacts("agree", summary, added, withdrawn);
  }

  /** Says so where a spelling is itself a name in the box, or stands for one that is not there. */
  private void warn(Book book, Agreed agreed) {
    Set<Name> names = new TreeSet<>();
    for (Plastic plastic : book.plastics()) {
      names.addAll(List.of(plastic.maker(), plastic.body(), plastic.colour()));
    }
    if (names.contains(agreed.spelling())) {
      root.desk()
          .err()
          .println(
              "Note: \""
                  + agreed.spelling()
                  + "\" is a name in your box. Lists handed in from now on"
                  + " will be read as \""
                  + agreed.name()
                  + "\" wherever they say it.");
    } else if (!names.isEmpty() && !names.contains(agreed.name())) {
      root.desk()
          .err()
          .println(
              "Note: no maker, body style or colour in your box is \"" + agreed.name() + "\" yet.");
    }
  }

  private static Agreed agreed(String words) {
    int equals = words.indexOf('=');
    Name spelling = Name.of(equals < 0 ? "" : words.substring(0, equals));
    Name name = Name.of(equals < 0 ? "" : words.substring(equals + 1));
    if (spelling.isBlank() || name.isBlank()) {
      throw new Refusal(
          Exit.USAGE, "write the spelling, an equals sign and the name: 'mtr oil' = 'motor oil'");
    }
    if (spelling.equals(name)) {
      throw new Refusal(
          Exit.USAGE, "\"" + spelling + "\" and \"" + name + "\" are one name already.");
    }
    return new Agreed(spelling, name);
  }
}
