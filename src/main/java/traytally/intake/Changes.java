package traytally.intake;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.TreeMap;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Movement;
import traytally.ledger.MovementKind;
import traytally.ledger.Posting;
import traytally.ledger.Recorded;
import traytally.plastic.Plastic;

/** What the lists of one import change in the book, gathered and then put in order. */
final class Changes {
  private record TakenBack(long number, Plastic plastic, String why) {}

  private final Book book;
  private final List<TakenBack> takenBack = new ArrayList<>();
  private final List<Fact.Counted> counts = new ArrayList<>();
  private final List<Movement> bought = new ArrayList<>();
  private final List<Fact.Fished> fished = new ArrayList<>();
  private final List<Fact> added = new ArrayList<>();
  private final List<Recorded<? extends Fact>> withdrawn = new ArrayList<>();
  private final List<String> summary = new ArrayList<>();

  Changes(Book book) {
    this.book = book;
  }

  Book book() {
    return book;
  }

  void add(Fact fact) {
    added.add(fact);
  }

  void withdraw(Recorded<? extends Fact> fact) {
    withdrawn.add(fact);
  }

  void count(Fact.Counted count) {
    counts.add(count);
    added.add(count);
  }

  void buy(Movement movement) {
    bought.add(movement);
  }

  void fish(Fact.Fished stint) {
    fished.add(stint);
    added.add(stint);
  }

  /** Withdraws a recorded stint and takes back what it moved. */
  void unfish(Recorded<Fact.Fished> stint, String why) {
    withdrawn.add(stint);
    takenBack.add(new TakenBack(stint.what().number(), stint.what().stint().plastic(), why));
  }

  /** Adds to the words the batch is listed under. */
  void summarise(String words) {
    summary.add(words);
  }

  /** Adds {@code tray.xlsx: 60 plastics counted} to those words. */
  void summarise(String source, int number, String noun, String done) {
    summarise(source + ": " + number + " " + noun + (number == 1 ? " " : "s ") + done);
  }

  boolean isEmpty() {
    return added.isEmpty() && withdrawn.isEmpty() && bought.isEmpty();
  }

  /** The entry, and what it brought to light. */
  record Outcome(Entry entry, SortedMap<Plastic, Integer> found, long history) {}

  Outcome outcome() {
    Posting posting = new Posting(book.ledger(), book.recorded(Fact.Counted.class));
    takenBack.forEach(t -> posting.takeBackStint(t.number(), t.plastic(), t.why()));
    counts.forEach(posting::count);
    bought.forEach(posting::post);
    fished.sort(Comparator.comparing(f -> f.stint().trip().date()));
    fished.forEach(posting::fish);
    long history =
        fished.stream()
            .map(Fact.Fished::stint)
            .filter(s -> s.use() > 0 && posting.isHistory(s.plastic(), s.trip().date()))
            .count();
    SortedMap<Plastic, Integer> found = new TreeMap<>();
    List<Movement> movements = posting.movements();
    for (Movement movement : movements) {
      if (movement.kind() == MovementKind.FOUND && !movement.reverses()) {
        found.merge(movement.plastic(), movement.pieces(), Integer::sum);
      }
    }
    Entry entry =
        new Entry(
            "import",
            summary.isEmpty() ? "details of a list changed" : String.join("; ", summary),
            OptionalLong.empty(),
            movements,
            added,
            withdrawn);
    return new Outcome(entry, found, history);
  }

  /** An entry that changes nothing. */
  static Entry nothing() {
    return new Entry("import", "nothing", OptionalLong.empty(), List.of(), List.of(), List.of());
  }
}
