package traytally.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import traytally.ledger.Batch;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Fact.Counted;
import traytally.ledger.Fact.Described;
import traytally.ledger.Movement;
import traytally.ledger.MovementKind;
import traytally.ledger.Posting;
import traytally.ledger.Recorded;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/**
 * What came of a shopping list, as a change to the box.
 *
 * @param shops the only shops whose parcel came; empty for all
 * @param except words of the plastics that did not come
 */
record Parcel(BoughtList list, LocalDate date, Set<Name> shops, List<String> except) {

  /** The lines that came and are not booked yet, booked as bought. */
  HandChange change(Book book) {
    List<BoughtList.Line> came = list.lines().stream().filter(this::came).toList();
    if (came.isEmpty()) {
      throw new Refusal(Exit.DATA, "nothing on that list came: no row is left to book.");
    }
    Set<Long> standing = new HashSet<>();
    book.batches().stream().filter(Batch::stands).forEach(batch -> standing.add(batch.id()));
    List<BoughtList.Line> fresh =
        came.stream().filter(line -> !isBooked(line, book, standing)).toList();
    List<String> notes = new ArrayList<>();
    if (fresh.size() < came.size()) {
      notes.add(
          came.size()
              - fresh.size()
              + " of the list's rows were booked before and are left out: one parcel counts once.");
    }
    Posting posting = new Posting(book.ledger(), book.recorded(Counted.class));
    List<Fact> told = new ArrayList<>();
    List<Recorded<? extends Fact>> withdrawn = new ArrayList<>();
    Set<Plastic> plastics = new LinkedHashSet<>();
    int pieces = 0;
    for (BoughtList.Line line : fresh) {
      pieces += line.pieces().count();
      posting.post(bought(line));
      if (plastics.add(line.plastic())) {
        describe(line, book, told, withdrawn);
      }
    }
    String said =
        String.format(
            Locale.ROOT,
            "bought by list %s of %d %s",
            HandWords.pieces(pieces),
            plastics.size(),
            plastics.size() == 1 ? "plastic" : "plastics");
    return new HandChange(
        "Understood: " + said + ".",
        List.copyOf(plastics),
        notes,
        Optional.empty(),
        new Entry("bought", said, OptionalLong.empty(), posting.movements(), told, withdrawn));
  }

  private boolean came(BoughtList.Line line) {
    String name = line.plastic().toString().toLowerCase(Locale.ROOT);
    return (shops.isEmpty() || shops.contains(line.shop()))
        && except.stream()
            .noneMatch(
                words ->
                    List.of(words.strip().toLowerCase(Locale.ROOT).split("\\s+")).stream()
                        .allMatch(name::contains));
  }

  private static boolean isBooked(BoughtList.Line line, Book book, Set<Long> standing) {
    return book.ledger().movements(line.plastic()).stream()
        .filter(movement -> standing.contains(movement.batch()))
        .map(Recorded::what)
        .anyMatch(move -> move.kind() == MovementKind.BOUGHT && move.note().equals(note(line)));
  }

  private static String note(BoughtList.Line line) {
    return line.mark() + ", packs of " + line.packSize();
  }

  private Movement bought(BoughtList.Line line) {
    return Movement.of(date, MovementKind.BOUGHT, line.plastic(), line.pieces().count())
        .withNote(note(line));
  }

  /** What a pack holds and costs is taken over where the list says it. */
  private static void describe(
      BoughtList.Line line, Book book, List<Fact> told, List<Recorded<? extends Fact>> withdrawn) {
    Described was =
        Optional.ofNullable(book.described().get(line.plastic()))
            .orElseGet(
                () -> new Described(line.plastic(), "", OptionalInt.empty(), Optional.empty(), ""));
    Described now =
        new Described(
            line.plastic(),
            was.tray(),
            OptionalInt.of(line.packSize()),
            line.packPrice().or(was::packPrice),
            was.note());
    if (!now.equals(was)) {
      told.add(now);
      book.recorded(Described.class).stream()
          .filter(described -> described.what().plastic().equals(line.plastic()))
          .forEach(withdrawn::add);
    }
  }
}
