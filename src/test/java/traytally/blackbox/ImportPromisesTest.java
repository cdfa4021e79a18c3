package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import traytally.cli.Ran;

/** What holds whatever list is handed in, tried with every golden case and every sample. */
class ImportPromisesTest {
  private static final Path CASES = Path.of("src/test/resources/golden");
  private static final Path SAMPLES =
      Path.of(System.getProperty("traytally.shared", "../shared")).resolve("samples");
  private static final Set<String> NO_LIST =
      Set.of("expected.txt", "options.txt", "args.txt", "truth.json");

  @TempDir Path folder;

  static List<Path> cases() throws IOException {
    List<Path> cases = new ArrayList<>();
    for (Path all : List.of(CASES, SAMPLES)) {
      if (Files.isDirectory(all)) {
        try (Stream<Path> folders = Files.list(all)) {
          folders.filter(Files::isDirectory).sorted().forEach(cases::add);
        }
      }
    }
    return cases;
  }

  private static List<String> command(Path sample) throws IOException {
    List<String> command = new ArrayList<>(List.of("import", "--format", "json"));
    try (Stream<Path> files = Files.list(sample)) {
      files
          .filter(Files::isRegularFile)
          .filter(file -> !NO_LIST.contains(file.getFileName().toString()))
          .filter(file -> !file.toString().endsWith(".cells"))
          .sorted()
          .forEach(file -> command.add(file.toString()));
    }
    Path options = sample.resolve("options.txt");
    for (String line : Files.exists(options) ? Files.readAllLines(options) : List.<String>of()) {
      String[] parts = line.split(" ", 2);
      command.add("--" + parts[0]);
      command.addAll(parts.length > 1 ? List.of(parts[1]) : List.of());
    }
    return command;
  }

  private Ran run(List<String> command) {
    return Ran.in(folder, command.toArray(String[]::new));
  }

  private Json json(String command) {
    Ran ran = run(List.of(command, "--format", "json"));
    assertEquals(0, ran.code(), ran.err());
    return Json.parse(ran.out());
  }

  @ParameterizedTest
  @MethodSource("cases")
  void theSecondTimeChangesNothingAndUndoEmptiesTheBox(Path sample) throws IOException {
    List<String> command = command(sample);
    Ran tried = run(with(command, "--dry-run"));
    Ran first = run(command);
    assertTrue(first.code() == 0 || first.code() == 65, first.err());
    if (first.out().isEmpty()) {
      assertTrue(first.err().startsWith("traytally: "), first.err());
      assertEquals(1, first.err().lines().count(), first.err());
      return;
    }
    Json report = Json.parse(first.out());
    assertEquals(report.rows().size(), Json.parse(tried.out()).rows().size(), tried.out());
    assertEquals(
        report.number("rows_read"), report.number("rows_taken") + report.number("rows_skipped"));
    Ran second = run(command);
    assertEquals(first.code(), second.code(), second.err());
    assertTrue(Json.parse(second.out()).isNull("batch"), second.out());
    if (!report.isNull("batch")) {
      assertEquals(0, run(List.of("undo")).code());
    }
    for (String list : List.of("box", "trips", "plan")) {
      assertEquals(List.of(), json(list).rows().stream().map(Json::keys).toList(), list);
    }
    double left = json("ledger").rows().stream().mapToDouble(row -> row.number("pieces")).sum();
    assertEquals(0, left);
  }

  private static List<String> with(List<String> command, String option) {
    List<String> longer = new ArrayList<>(command);
    longer.add(option);
    return longer;
  }
}
