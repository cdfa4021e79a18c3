package traytally.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.render.Format;
import traytally.render.Template;

/** {@code sheet}: workbooks to fill in. */
@Command(
    name = "sheet",
    description = "Writes workbooks to fill in.",
    subcommands = SheetCommand.Blank.class,
    footer = {"", "Example: traytally sheet blank box"})
final class SheetCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;

  @Override
  public Integer call() {
    throw new Refusal(Exit.USAGE, "say which sheet: traytally sheet blank box");
  }

  /** {@code sheet blank}: a blank one of the four. */
  @Command(
      name = "blank",
      description = "Writes a blank sheet: box, trips, plan or prices.",
      footer = {"", "Example: traytally sheet blank trips --out trips.xlsx"})
  static final class Blank implements Callable<Integer> {
    @ParentCommand private SheetCommand parent;

    @Parameters(paramLabel = "KIND", description = "box, trips, plan or prices.")
    private Template template = Template.BOX;

    @Option(
        names = "--out",
        paramLabel = "FILE",
        description = "Where to write it, .xlsx or .csv; else KIND.xlsx here.")
    private Optional<Path> out = Optional.empty();

    @Override
    public Integer call() {
      Path file = out.orElseGet(() -> Path.of(template.word() + ".xlsx"));
      String name = file.toString().toLowerCase(Locale.ROOT);
      boolean csv = name.endsWith(".csv");
      if (!csv && !name.endsWith(".xlsx")) {
        throw new Refusal(Exit.USAGE, "a sheet is a .xlsx or a .csv file: " + file);
      }
      if (Files.exists(file)) {
        throw new Refusal(
            Exit.CANNOT_CREATE,
            file + " is there already and may hold your rows. Name another file with --out.");
      }
      Output.save(file, stream -> template.write(csv ? Format.CSV : Format.XLSX, stream));
      parent.root.desk().err().println("Written: " + file);
      return Exit.OK;
    }
  }
}
