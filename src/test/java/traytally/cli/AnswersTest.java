package traytally.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import traytally.plastic.Money;
import traytally.plastic.Swatch;
import traytally.report.Column;
import traytally.report.Column.Kind;
import traytally.report.Column.Room;
import traytally.report.Report;
import traytally.report.Report.Section;
import traytally.report.Report.Single;
import traytally.report.Value;

/** What was worked out is remembered, and never for a box that has changed since. */
class AnswersTest {
  @TempDir private Path folder;

  private final List<String> worked = new ArrayList<>();

  private Report answer(String box, String edition, String question) {
    return new Answers(folder.resolve("answers"), Path.of(box), edition)
        .to(
            question,
            () -> {
              worked.add(box + edition + question);
              return report(box + edition + question);
            });
  }

  private static Report report(String title) {
    List<Column> columns =
        List.of(
            new Column("name", "Name", Kind.TEXT),
            new Column("value", "", Kind.DECIMAL, Room.SPARE));
    List<List<Value>> inner = List.of(List.of(Value.of("Köder ≥ 5″"), Value.of(0.1 + 0.2)));
    List<Value> cells =
        List.of(
            Value.UNKNOWN,
            Value.of(""),
            Value.of(Long.MIN_VALUE),
            Value.of(-0.0),
            Value.of(new Money(-1, Currency.getInstance("JPY"))),
            Value.of(LocalDate.of(2026, 5, 1)),
            new Value.Tint(new Swatch(0xFFFFFF), true),
            Value.of(true),
            new Value.Rows(columns, inner));
    return new Report(
        "box",
        title,
        LocalDate.of(-1, 1, 1),
        List.of(new Single(new Column("total", "Total", Kind.MONEY), cells.get(4))),
        columns,
        cells.stream().map(cell -> List.of(cell, Value.of("x".repeat(70_000)))).toList(),
        List.of(new Section("First", 0, 2, "two"), new Section("Rest", 2, 9, "")),
        List.of("A note.", "Another one."));
  }

  @Test
  void everyKindOfValueIsReadAgainAsItWas() throws IOException {
    Report report = report("Box");
    assertEquals(report, ReportBytes.read(ReportBytes.of(report)));
  }

  @Test
  void aQuestionIsWorkedOutOnce() {
    Report first = answer("a", "1", "box");
    assertEquals(first, answer("a", "1", "box"));
    assertEquals(List.of("a1box"), worked);
  }

  @Test
  void anotherBoxQuestionOrEditionIsWorkedOutAnew() {
    answer("a", "1", "box");
    assertNotEquals(answer("a", "1", "box").title(), answer("a", "1", "trust").title());
    answer("b", "1", "box");
    answer("a", "2", "box");
    assertEquals(List.of("a1box", "a1trust", "b1box", "a2box"), worked);
  }

  @Test
  void theAnswersOfAChangedBoxGoAndThoseOfOthersStay() throws IOException {
    answer("a", "1", "box");
    answer("a", "1", "trust");
    answer("b", "1", "box");
    assertEquals(3, kept().size());
    answer("a", "2", "box");
    assertEquals(2, kept().size());
    answer("b", "1", "box");
    assertEquals(List.of("a1box", "a1trust", "b1box", "a2box"), worked);
  }

  @Test
  void thereAreNeverMany() throws IOException {
    for (int day = 0; day < 100; day++) {
      answer("a", "1", "day " + day);
      assertTrue(kept().size() <= 40, "answers kept: " + kept().size());
    }
  }

  @Test
  void whatIsSpoiltIsWorkedOutAgain() throws IOException {
    Report whole = answer("a", "1", "box");
    Path file = kept().get(0);
    byte[] bytes = Files.readAllBytes(file);
    for (int cut : List.of(0, 7, 12, bytes.length - 1)) {
      Files.write(file, Arrays.copyOf(bytes, cut));
      assertEquals(whole, answer("a", "1", "box"));
    }
    bytes[bytes.length / 2] ^= 1;
    Files.write(file, bytes);
    assertEquals(whole, answer("a", "1", "box"));
    assertEquals(6, worked.size());
    assertEquals(whole, answer("a", "1", "box"));
    assertEquals(6, worked.size());
  }

  @Test
  void onlyTheOwnerReadsThem() throws IOException {
    answer("a", "1", "box");
    assertEquals(
        "rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(kept().get(0))));
  }

  @Test
  void aFolderThatCannotBeMadeHindersNobody() throws IOException {
    Files.writeString(folder.resolve("answers"), "a file");
    assertEquals(answer("a", "1", "box"), answer("a", "1", "box"));
    assertEquals(2, worked.size());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "box --low --fail", "trust plastic --by landed", "restock --budget 30"})
  void anAnswerIsTheSameFromMemoryUntilTheBoxChanges(String asked) throws IOException {
    Ran.importDemo(folder);
    String[] args = asked.isEmpty() ? new String[0] : asked.split(" ");
    Ran first = Ran.in(folder, args);
    assertEquals(1, kept().size(), first.err());
    assertEquals(first, Ran.in(folder, args));
    List<String> machine = new ArrayList<>(List.of(args));
    machine.addAll(List.of("--format", "json"));
    Ran json = Ran.in(folder, machine.toArray(String[]::new));
    assertEquals(1, kept().size());
    assertEquals(0, Ran.in(folder, "count", "paddle motor oil 75", "0").code());
    Ran changed = Ran.in(folder, machine.toArray(String[]::new));
    assertEquals(asked.startsWith("trust"), json.out().equals(changed.out()), changed.out());
    Files.delete(kept().get(0));
    assertEquals(changed, Ran.in(folder, machine.toArray(String[]::new)));
  }

  @Test
  void rowNumbersNameTheListingFromMemoryToo() {
    Ran.importDemo(folder);
    Ran.in(folder, "box");
    Ran.in(folder, "box", "--colour", "motor oil");
    Ran row = Ran.in(folder, "why", "2", "--format", "json");
    Ran.in(folder, "box");
    Ran.in(folder, "box", "--colour", "motor oil");
    assertEquals(row, Ran.in(folder, "why", "2", "--format", "json"));
  }

  private List<Path> kept() throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(file -> file.toString().endsWith(".answer")).sorted().toList();
    }
  }
}
