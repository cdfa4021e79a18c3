package traytally.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import traytally.ledger.Fact.Counted;
import traytally.ledger.Fact.Fished;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Fish;
import traytally.trip.LossCause;
import traytally.trip.Stint;
import traytally.trip.Trip;

final class PostingTest {
  private static final Plastic PADDLE = Plastic.of("", "paddle", "motor oil", 75);
  private static final Plastic WORM = Plastic.of("", "worm", "black", 120);

  private static LocalDate may(int day) {
    return LocalDate.of(2026, 5, day);
  }

  private static Stint stint(Plastic plastic, int day, int lost, int worn) {
    return new Stint(
        new Trip(may(day), Name.of("Gannet Ledge")),
        Name.of("pollack"),
        Optional.empty(),
        plastic,
        OptionalDouble.of(30),
        OptionalInt.empty(),
        Fish.NONE,
        lost,
        lost > 0 ? Optional.of(LossCause.SNAGGED) : Optional.empty(),
        worn,
        1,
        "");
  }

  static Stream<Arguments> cases() {
    InputStream table =
        Objects.requireNonNull(PostingTest.class.getResourceAsStream("/ledger/posting.txt"));
    try (BufferedReader lines =
        new BufferedReader(new InputStreamReader(table, StandardCharsets.UTF_8))) {
      return lines
          .lines()
          .filter(line -> !line.startsWith("#") && !line.isBlank())
          .map(line -> Arguments.of((Object[]) line.split("\\s*\\|\\s*")))
          .toList()
          .stream();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void movesWhatTheTableSays(String name, String told, String moved, String trays) {
    Shelf shelf = new Shelf();
    for (String step : told.split("; ", -1)) {
      tell(shelf, step.split(" "));
    }
    Ledger ledger = shelf.book().ledger();
    String last =
        ledger.movements().stream()
            .filter(m -> m.batch() == shelf.batches().size())
            .map(m -> words(m.what()))
            .collect(Collectors.joining(" "));
    assertEquals(moved, last.isEmpty() ? "nothing" : last, name);
    for (String tray : trays.split(" ", -1)) {
      int at = tray.indexOf('@');
      assertEquals(
          Integer.parseInt(tray.substring(0, at)),
          ledger.stock(PADDLE, may(Integer.parseInt(tray.substring(at + 1)))).count(),
          name + ", " + tray);
    }
  }

  private static String words(Movement movement) {
    return String.format(
        Locale.ROOT,
        "%s %+d@%d",
        movement.kind().word(),
        movement.pieces(),
        movement.date().getDayOfMonth());
  }

  private static void tell(Shelf shelf, String[] words) {
    int first = Integer.parseInt(words[1]);
    if (words[0].equals("undo")) {
      shelf.reverse(first);
      return;
    }
    int pieces = Integer.parseInt(words[2]);
    Book book = shelf.book();
    Posting posting = new Posting(book.ledger(), book.recorded(Counted.class));
    List<Fact> added = new ArrayList<>();
    List<Recorded<? extends Fact>> gone = new ArrayList<>();
    switch (words[0]) {
      case "count" -> {
        Counted count = new Counted(PADDLE, may(first), pieces, true);
        posting.count(count);
        added.add(count);
      }
      case "fish" -> {
        Fished fished = new Fished(stint(PADDLE, first, pieces, 0), shelf.nextStint(), 1, "");
        posting.fish(fished);
        added.add(fished);
      }
      case "edit" -> {
        List<Recorded<Fished>> log = book.recorded(Fished.class);
        Recorded<Fished> old = log.get(log.size() - 1);
        Fished fished = new Fished(stint(PADDLE, first, pieces, 0), old.what().number(), 1, "");
        posting.takeBackStint(old.what().number(), PADDLE, "edited");
        posting.fish(fished);
        gone.add(old);
        added.add(fished);
      }
      case "buy" -> posting.post(Movement.of(may(first), MovementKind.BOUGHT, PADDLE, pieces));
      case "lose" -> posting.post(Movement.of(may(first), MovementKind.LOST, PADDLE, -pieces));
      default -> throw new IllegalArgumentException(words[0]);
    }
    shelf.record(new Entry(words[0], "", OptionalLong.empty(), posting.movements(), added, gone));
  }

  @Test
  void stintMovesLostAndWornPiecesUnderItsNumber() {
    Posting posting = new Posting(new Ledger(List.of()), List.of());
    posting.count(new Counted(PADDLE, may(1), 9, true));
    posting.fish(new Fished(stint(PADDLE, 2, 2, 1), 41, 1, ""));
    List<Movement> moved = posting.movements();
    assertEquals(
        List.of("lost -2@2", "worn -1@2", "opening +9@1"),
        moved.stream().map(PostingTest::words).toList());
    assertEquals(OptionalLong.of(41), moved.get(0).stint());
    assertEquals(Optional.of(LossCause.SNAGGED), moved.get(0).how());
    assertEquals("Gannet Ledge", moved.get(1).note());
    assertEquals(6, posting.balance(PADDLE, may(2)));
    assertEquals(9, posting.balance(PADDLE, may(1)));
    assertEquals(0, posting.balance(WORM, may(2)));
  }

  @Test
  void countOfTheSameBatchSawTheStintsOfItsDay() {
    Posting posting = new Posting(new Ledger(List.of()), List.of());
    posting.count(new Counted(PADDLE, may(5), 9, true));
    posting.fish(new Fished(stint(PADDLE, 5, 2, 0), 1, 1, ""));
    assertEquals(
        List.of("opening +9@5"), posting.movements().stream().map(PostingTest::words).toList());
  }

  @Test
  void askingTwiceGivesTheSameMovements() {
    Posting posting = new Posting(new Ledger(List.of()), List.of());
    posting.fish(new Fished(stint(PADDLE, 5, 2, 0), 1, 1, ""));
    assertEquals(posting.movements(), posting.movements());
    assertEquals(2, posting.movements().size());
  }

  @Test
  void datesBeforeTheLastCountAreHistory() {
    Posting posting = new Posting(new Ledger(List.of()), List.of());
    assertEquals(Optional.empty(), posting.counted(PADDLE));
    posting.count(new Counted(PADDLE, may(5), 9, true));
    assertEquals(Optional.of(may(5)), posting.counted(PADDLE));
    assertEquals(true, posting.isHistory(PADDLE, may(4)));
    assertEquals(false, posting.isHistory(PADDLE, may(5)));
    assertEquals(false, posting.isHistory(WORM, may(4)));
  }

  @Test
  void openingWithoutACountIsRefused() {
    Posting posting = new Posting(new Ledger(List.of()), List.of());
    for (MovementKind kind : List.of(MovementKind.OPENING, MovementKind.RECOUNT)) {
      assertThrows(
          IllegalArgumentException.class, () -> posting.post(Movement.of(may(1), kind, PADDLE, 3)));
    }
  }

  @Test
  void piecesFoundByHandStay() {
    Posting posting = new Posting(new Ledger(List.of()), List.of());
    posting.post(Movement.of(may(1), MovementKind.FOUND, PADDLE, 3));
    assertEquals(
        List.of("found +3@1"), posting.movements().stream().map(PostingTest::words).toList());
    assertEquals(3, posting.balance(PADDLE, may(1)));
  }
}
