package traytally.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.plastic.Plastic;
import traytally.report.WhyReport;
import traytally.restock.Asked;
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
      description = "Its row in the last listing, or its words: paddle motor oil 75.")
  private List<String> words = List.of();

  @Override
  public Integer call() {
    try (Box box = root.openBox()) {
      Book book = box.book();
      Plastic plastic = PlasticNames.one(root, book, String.join(" ", words));
      ShoppingList list = ShoppingList.of(book, root.today(), Asked.NOTHING);
      Optional<ShoppingLine> line =
          list.lines().stream().filter(l -> l.plastic().equals(plastic)).findFirst();
      Prospect prospect = list.outlook().prospect(plastic).orElseThrow();
      output.print(root, WhyReport.of(prospect, line, list.outlook(), root.today()));
    }
    return Exit.OK;
  }
}
