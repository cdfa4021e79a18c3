package traytally.cli;

import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.UnsupportedCharsetException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.intake.Field;
import traytally.intake.GivenSheet;
import traytally.intake.Import;
import traytally.intake.ImportOptions;
import traytally.intake.Imported;
import traytally.intake.ListKind;
import traytally.intake.ProblemRows;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.render.Look;
import traytally.render.Rendering;
import traytally.report.ImportReport;
import traytally.report.ProblemsReport;
import traytally.report.Report;
import traytally.sheet.Reading;
import traytally.sheet.Workbook;
import traytally.store.Box;

/** {@code import}: reads lists into the box. */
@Command(
    name = "import",
    description = {
      "Reads your lists: the tray, the trip log, the plan, shop prices.",
      "What traytally export wrote becomes a box of its own."
    },
    footer = {"", "Example: traytally import tray.xlsx trips.csv --dry-run"})
final class ImportCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;
  @Mixin private Output output;

  @Parameters(paramLabel = "FILE", arity = "1..*", description = "Lists, .xlsx, .xls or text.")
  private List<Path> files = List.of();

  @Option(names = "--dry-run", description = "Say what would be recorded, record nothing.")
  private boolean dryRun;

  @Option(
      names = "--as",
      paramLabel = "KIND",
      description = "Take every sheet for this: box, trips, plan or prices.")
  private Optional<ListKind> kind = Optional.empty();

  @Option(
      names = "--map",
      paramLabel = "HEADER=FIELD",
      description = "Take their header for our field; nothing after = passes it over.")
  private List<String> map = List.of();

  @Option(names = "--sheet", paramLabel = "NAME", description = "Read this tab only; repeatable.")
  private List<String> sheets = List.of();

  @Option(
      names = "--count-date",
      paramLabel = "DATE",
      description = "The day the tray was counted; today if not given.")
  private Optional<LocalDate> countDate = Optional.empty();

  @Option(names = "--add", description = "The list is new purchases, not a count.")
  private boolean add;

  @Option(names = "--again", description = "With --add: add the same purchases once more.")
  private boolean again;

  @Option(names = "--strict", description = "Take nothing if any row has a problem.")
  private boolean strict;

  @Option(names = "--once-owned", description = "Take plastics that only the log names as used up.")
  private boolean onceOwned;

  @Option(
      names = "--share-out",
      description = "Share out evenly the fish and losses told once for several plastics.")
  private boolean shareOut;

  @Option(
      names = "--date-order",
      paramLabel = "ORDER",
      description = "How to read 3/4/2026: day or month first.")
  private Optional<DateOrder> dateOrder = Optional.empty();

  @Option(
      names = "--length-unit",
      paramLabel = "UNIT",
      description = "What bare lengths are in: mm, cm or in.")
  private Optional<ImportOptions.LengthUnit> lengthUnit = Optional.empty();

  @Option(
      names = "--encoding",
      paramLabel = "NAME",
      description = "The encoding of a text list, such as windows-1252.")
  private Optional<String> encoding = Optional.empty();

  @Option(
      names = "--problems",
      paramLabel = "FILE",
      description = "Write the rows not taken to this .xlsx, the problem beside each.")
  private Optional<Path> problems = Optional.empty();

  private enum DateOrder {
    DAY,
    MONTH
  }

  /** What was given, what was read of it, and the batch it was recorded in, if it was. */
  private record Done(List<GivenSheet> given, Imported imported, OptionalLong batch) {}

  @Override
  public Integer call() {
    Optional<ReadBack> readBack = ReadBack.of(root, files);
    if (readBack.isPresent()) {
      return readBack.get().run(dryRun);
    }
    ImportOptions options = options();
    Reading reading =
        encoding.map(name -> Reading.AS_FOUND.withEncoding(charset(name))).orElse(Reading.AS_FOUND);
    requireWorkbook(problems);
    Done done;
    try (Progress progress = new Progress(root.desk())) {
      List<GivenSheet> given = new ArrayList<>();
      for (Path file : files) {
        requireThere(file);
        given.addAll(sheets(file, reading, progress));
      }
      progress.compare();
      done = take(given, options, progress);
    }
    writeProblems(done.given(), done.imported());
    return report(done.imported(), done.batch());
  }

  private Done take(List<GivenSheet> given, ImportOptions options, Progress progress) {
    if (dryRun && !Files.exists(root.boxFile())) {
      Imported tried = Import.read(given, Book.EMPTY, options, root.today());
      return new Done(given, tried, OptionalLong.empty());
    }
    try (Box box = root.openOrMakeBox()) {
      Imported imported = Import.read(given, box.book(), options, root.today());
      return new Done(given, imported, record(imported.entry(), box, progress));
    }
  }

  private OptionalLong record(Entry entry, Box box, Progress progress) {
    if (dryRun || entry.isEmpty()) {
      return OptionalLong.empty();
    }
    progress.record(entry.movements().size() + entry.added().size() + entry.withdrawn().size());
    box.keepCopy();
    return OptionalLong.of(box.record(entry));
  }

  private void writeProblems(List<GivenSheet> given, Imported imported) {
    if (problems.isEmpty()) {
      return;
    }
    List<Report> reports =
        ProblemRows.of(given, imported).stream()
            .map(rows -> ProblemsReport.of(rows, root.today()))
            .toList();
    if (reports.isEmpty()) {
      root.desk().err().println("No row has a problem: " + problems.get() + " was not written.");
      return;
    }
    Look look = Looks.of(root.desk(), root.settings()).withColour(false);
    Output.deliver(
        root.desk(), problems.get(), stream -> Rendering.workbook(reports, look, stream));
  }

  private static void requireWorkbook(Optional<Path> file) {
    if (file.filter(f -> !f.toString().toLowerCase(Locale.ROOT).endsWith(".xlsx")).isPresent()) {
      throw new Refusal(Exit.USAGE, "--problems writes a workbook: end its name in .xlsx.");
    }
  }

  private static List<GivenSheet> sheets(Path file, Reading reading, Progress progress) {
    String name = String.valueOf(file.getFileName());
    try (Workbook workbook = Workbook.open(file, reading)) {
      return GivenSheet.of(name, workbook, rows -> progress.read(name, rows));
    }
  }

  private int report(Imported imported, OptionalLong batch) {
    output.print(root, ImportReport.of(imported, batch, dryRun, root.today()));
    boolean refused = imported.rowsTaken() == 0 && imported.hasProblems();
    boolean stopped = strict && imported.hasProblems();
    return refused || stopped ? Exit.DATA : Exit.OK;
  }

  private ImportOptions options() {
    return new ImportOptions(
        kind,
        mapping(),
        sheets,
        countDate,
        add,
        again,
        strict,
        onceOwned,
        shareOut,
        dateOrder.map(order -> order == DateOrder.DAY),
        lengthUnit.or(this::mappedUnit));
  }

  /** The unit of {@code --map 'their header=length (mm)'}. */
  private Optional<ImportOptions.LengthUnit> mappedUnit() {
    return map.stream()
        .map(pair -> pair.substring(pair.lastIndexOf('=') + 1))
        .filter(word -> Field.parse(word.strip()).equals(Optional.of(Field.LENGTH)))
        .flatMap(word -> ImportOptions.LengthUnit.behind(word).stream())
        .findFirst();
  }

  private Map<String, Optional<Field>> mapping() {
    Map<String, Optional<Field>> fields = new LinkedHashMap<>();
    for (String pair : map) {
      int equals = pair.lastIndexOf('=');
      String word = pair.substring(equals + 1).strip();
      Optional<Field> field = Field.parse(word);
      if (equals < 1 || (field.isEmpty() && !word.isEmpty())) {
        throw new Refusal(
            Exit.USAGE,
            "--map '" + pair + "': write 'their header=our field', such as 'how many=pieces'.");
      }
      if (field.equals(Optional.of(Field.LENGTH))
          && word.contains("(")
          && ImportOptions.LengthUnit.behind(word).isEmpty()) {
        throw new Refusal(
            Exit.USAGE, "--map '" + pair + "': lengths are in mm, cm or in, such as length (mm).");
      }
      fields.put(pair.substring(0, equals), field);
    }
    return fields;
  }

  private static Charset charset(String name) {
    try {
      return Charset.forName(name);
    } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
      throw new Refusal(
          Exit.USAGE, "\"" + name + "\" is not an encoding. Try UTF-8 or windows-1252.", e);
    }
  }

  private static void requireThere(Path file) {
    if (Files.isDirectory(file)) {
      throw new Refusal(Exit.NO_INPUT, file + " is a folder. Name the lists in it.");
    }
    if (!Files.isReadable(file)) {
      throw new Refusal(
          Exit.NO_INPUT,
          Files.exists(file) ? "cannot read " + file + "." : "there is no file " + file + ".");
    }
  }
}
