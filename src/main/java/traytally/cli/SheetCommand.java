package traytally.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.render.Format;
import traytally.render.Template;
import traytally.report.TrayRows;
import traytally.report.Value;
import traytally.store.Box;

/** {@code sheet}: workbooks to fill in. */
@Command(
    name = "sheet",
    description = "Writes workbooks to fill in, and the tray as one to edit.",
    subcommands = {SheetCommand.Blank.class, SheetCommand.Tray.class, ReportCommand.class},
    footer = {"", "Example: traytally sheet blank box"})
final class SheetCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;

  Traytally root() {
    return root;
  }

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
      write(parent.root, file, (form, stream) -> template.write(form, stream));
      return Exit.OK;
    }
  }

  /** {@code sheet box}: the tray, to be edited and read back. */
  @Command(
      name = "box",
      description = {
        "Writes the tray as a box sheet. Edit it in any spreadsheet program and import it:",
        "only what you changed counts."
      },
      footer = {"", "Example: traytally sheet box --out tray.xlsx"})
  static final class Tray implements Callable<Integer> {
    @ParentCommand private SheetCommand parent;

    @Option(
        names = "--out",
        paramLabel = "FILE",
        description = "Where to write it, .xlsx or .csv; else box.xlsx here.")
    private Path out = Path.of("box.xlsx");

    @Override
    public Integer call() {
      Traytally root = parent.root;
      try (Box box = root.openBox()) {
        List<List<Value>> rows = TrayRows.of(box.book(), root.today());
        write(root, out, (form, to) -> Template.writeTray(rows, root.today(), form, to));
      }
      return Exit.OK;
    }
  }

  /** Something that writes a sheet in one of its two forms. */
  @FunctionalInterface
  private interface Sheet {
    void write(Format form, OutputStream stream) throws IOException;
  }

  private static void write(Traytally root, Path file, Sheet sheet) {
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
    Output.deliver(
        root.desk(), file, stream -> sheet.write(csv ? Format.CSV : Format.XLSX, stream));
  }
}
