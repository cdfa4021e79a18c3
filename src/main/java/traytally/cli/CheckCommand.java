package traytally.cli;

import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ParentCommand;
import traytally.store.Box;

/** {@code check}: whether the box is whole. */
@Command(
    name = "check",
    description = "Checks that the box is whole: the file, its links, the ledger's sums.",
    footer = {"", "Example: traytally check"})
final class CheckCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;

  @Override
  public Integer call() {
    try (Box box = root.openBox()) {
      List<String> faults = box.check();
      faults.forEach(root.desk().out()::println);
      if (faults.isEmpty()) {
        root.desk().out().println("The box is whole.");
      }
      return faults.isEmpty() ? Exit.OK : Exit.ATTENTION;
    }
  }
}
