package traytally.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import traytally.sheet.Workbook;

/**
 * Every folder under {@code golden} is a case: its lists are imported, and what comes of it must
 * read as {@code expected.txt}. See {@code golden/README.md}.
 */
final class GoldenTest {
  private static final Path CASES = Path.of("src/test/resources/golden");
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 1);

  static List<Path> cases() throws IOException {
    try (Stream<Path> folders = Files.list(CASES)) {
      return folders.filter(Files::isDirectory).sorted().toList();
    }
  }

  @ParameterizedTest
  @MethodSource("cases")
  void listsReadAsWrittenDownAndChangeNothingTheSecondTime(Path folder) throws IOException {
    if (Boolean.getBoolean("golden.write")) {
      writeWorkbooks(folder);
    }
    Recorder recorder = before(folder);
    List<GivenSheet> sheets = sheets(folder);
    ImportOptions options = options(folder);
    Optional<Imported> first = Optional.empty();
    String read;
    try {
      first = Optional.of(Import.read(sheets, recorder.book(), options, TODAY));
      read = Transcript.of(first.get());
    } catch (ListRefusedException e) {
      read = "refused: " + e.getMessage() + "\n";
      assertTrue(read.substring("refused: ".length()).contains(": "), read);
    }
    Path expected = folder.resolve("expected.txt");
    if (Boolean.getBoolean("golden.write")) {
      Files.writeString(expected, read);
    }
    assertEquals(Files.readString(expected), read);
    if (first.isPresent()) {
      recorder.record(first.get().entry());
      Imported second = Import.read(sheets, recorder.book(), options, TODAY);
      assertTrue(second.entry().isEmpty(), () -> Transcript.of(second));
      assertEquals(first.get().rowsTaken(), second.rowsTaken());
    }
  }

  /** A workbook beside each of the folder's texts that describe one. */
  private static void writeWorkbooks(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      for (Path cells : files.filter(f -> f.toString().endsWith(".cells")).toList()) {
        String name = cells.getFileName().toString().replace(".cells", ".xlsx");
        WrittenWorkbook.write(cells, folder.resolve(name));
      }
    }
  }

  /** The book once the lists in the folder {@code before} were imported, one after another. */
  private static Recorder before(Path folder) throws IOException {
    Recorder recorder = new Recorder();
    Path before = folder.resolve("before");
    if (Files.isDirectory(before)) {
      for (Path file : files(before)) {
        List<GivenSheet> sheets = read(file);
        // Counted a month before the lists under test, unless the case says otherwise.
        LocalDate then = TODAY.minusMonths(1);
        recorder.record(Import.read(sheets, recorder.book(), ImportOptions.NONE, then).entry());
      }
    }
    return recorder;
  }

  private static List<GivenSheet> sheets(Path folder) throws IOException {
    List<GivenSheet> sheets = new ArrayList<>();
    for (Path file : files(folder)) {
      sheets.addAll(read(file));
    }
    return sheets;
  }

  private static List<GivenSheet> read(Path file) {
    try (Workbook workbook = Workbook.open(file)) {
      return GivenSheet.of(file.getFileName().toString(), workbook);
    }
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(Files::isRegularFile)
          .filter(f -> !List.of("expected.txt", "options.txt").contains(f.getFileName().toString()))
          .filter(f -> !f.toString().endsWith(".cells"))
          .sorted()
          .toList();
    }
  }

  private static ImportOptions options(Path folder) throws IOException {
    Path file = folder.resolve("options.txt");
    return options(Files.exists(file) ? Files.readAllLines(file) : List.of());
  }

  /** The options of lines such as {@code count-date 2026-04-01}. */
  static ImportOptions options(List<String> lines) {
    Map<String, String> said = new HashMap<>();
    Map<String, Optional<Field>> map = new HashMap<>();
    for (String line : lines) {
      String[] parts = line.split(" ", 2);
      if (parts[0].equals("map")) {
        String[] sides = parts[1].split("=", 2);
        map.put(ColumnHeader.of(sides[0]).folded(), Field.parse(sides[1]));
      } else {
        said.put(parts[0], parts.length > 1 ? parts[1] : "yes");
      }
    }
    return new ImportOptions(
        Optional.ofNullable(said.get("as")).flatMap(ListKind::parse),
        map,
        Optional.ofNullable(said.get("sheet")).map(List::of).orElse(List.of()),
        Optional.ofNullable(said.get("count-date")).map(LocalDate::parse),
        said.containsKey("add"),
        said.containsKey("again"),
        said.containsKey("strict"),
        said.containsKey("once-owned"),
        said.containsKey("share-out"),
        Optional.ofNullable(said.get("date-order")).map("day"::equals),
        Optional.ofNullable(said.get("length-unit"))
            .map(u -> ImportOptions.LengthUnit.valueOf(u.toUpperCase(Locale.ROOT))));
  }
}
