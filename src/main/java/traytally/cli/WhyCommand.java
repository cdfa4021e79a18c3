package traytally.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.plastic.Plastic;
import traytally.report.WhyReport;
import traytally.restock.Asked;
import traytally.restock.Outlook;
import traytally.restock.Prospect;
import traytally.restock.ShoppingLine;
import traytally.restock.ShoppingList;
import traytally.store.Box;

/** {@code why}: every number behind one line of the shopping list. */
@Command(
    name = "why",
    description = "Shows every number behind one plastic's line on the shopping list.",
    footer = {"", "Example: traytally why paddle motor oil 75"})
final class WhyCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;
  @Mixin private Output output;

  @Parameters(
      arity = "1..*",
      paramLabel = "PLASTIC",
      description = "Words that name it, in any order: paddle motor oil 75.")
  private List<String> words = List.of();

  @Override
  public Integer call() {
    try (Box box = root.openBox()) {
      Book book = box.book();
      Plastic plastic = one(book);
      ShoppingList list = ShoppingList.of(book, root.today(), Asked.NOTHING);
      Optional<ShoppingLine> line =
          list.lines().stream().filter(l -> l.plastic().equals(plastic)).findFirst();
      Outlook outlook = Outlook.of(book, root.today());
      Prospect prospect = Optional.ofNullable(outlook.prospects().get(plastic)).orElseThrow();
      output.print(root, WhyReport.of(prospect, line, outlook, root.today()));
    }
    return Exit.OK;
  }

  private Plastic one(Book book) {
    String asked = String.join(" ", words);
    List<Plastic> named = PlasticNames.matching(asked, book.plastics());
    if (named.isEmpty()) {
      throw new Refusal(Exit.DATA, "no plastic in the box is called \"" + asked + "\".");
    }
    if (named.size() > 1) {
      throw new Refusal(
          Exit.DATA,
          "\""
              + asked
              + "\" fits "
              + named.size()
              + " plastics: "
              + named.stream().limit(8).map(Plastic::toString).collect(Collectors.joining("; "))
              + (named.size() > 8 ? "; …" : ".")
              + " Say more of one.");
    }
    return named.get(0);
  }
}
