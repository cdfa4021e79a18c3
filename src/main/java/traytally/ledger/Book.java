package traytally.ledger;

import java.time.LocalDate;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Stint;

/**
 * All that stands in a box: every movement, and the facts that nobody withdrew.
 *
 * @param batches in the order recorded
 * @param facts in the order recorded
 * @param nextStint the next free stint number; those of withdrawn stints stay taken, since an undo
 *     may bring them back
 */
public record Book(
    List<Batch> batches,
    Ledger ledger,
    List<Recorded<? extends Fact>> facts,
    Settings settings,
    long nextStint) {
  /** A box in which nothing was recorded yet. */
  public static final Book EMPTY =
      new Book(List.of(), new Ledger(List.of()), List.of(), Settings.standard(), 1);

  public Book {
    batches = List.copyOf(batches);
    facts = List.copyOf(facts);
  }

  /** The facts of one kind, in the order recorded. */
  public <T extends Fact> List<Recorded<T>> recorded(Class<T> kind) {
    return facts.stream()
        .filter(fact -> kind.isInstance(fact.what()))
        .map(fact -> new Recorded<>(fact.id(), fact.batch(), kind.cast(fact.what())))
        .toList();
  }

  /** The facts of one kind without their batches, in the order recorded. */
  public <T extends Fact> List<T> facts(Class<T> kind) {
    return recorded(kind).stream().map(Recorded::what).toList();
  }

  /** The stints up to the end of {@code asOf}, in the order recorded. */
  public List<Fact.Fished> fished(LocalDate asOf) {
    return facts(Fact.Fished.class).stream()
        .filter(fished -> !fished.stint().trip().date().isAfter(asOf))
        .toList();
  }

  /** The stints up to the end of {@code asOf} by trip, those of a trip in the order fished. */
  public List<Stint> log(LocalDate asOf) {
    return fished(asOf).stream()
        .sorted(
            Comparator.comparing((Fact.Fished fished) -> fished.stint().trip())
                .thenComparingInt(Fact.Fished::ordinal))
        .map(Fact.Fished::stint)
        .toList();
  }

  /** What the list last said of each plastic. */
  public SortedMap<Plastic, Fact.Described> described() {
    SortedMap<Plastic, Fact.Described> last = new TreeMap<>();
    facts(Fact.Described.class).forEach(d -> last.put(d.plastic(), d));
    return last;
  }

  /** The plastics the angler vouches for. */
  public SortedSet<Plastic> kept() {
    SortedSet<Plastic> kept = new TreeSet<>();
    facts(Fact.Kept.class).forEach(k -> kept.add(k.plastic()));
    return kept;
  }

  /** The name that {@code spelling} was agreed to stand for, or {@code spelling} itself. */
  public Name agreed(Name spelling) {
    Optional<Name> name = Optional.empty();
    for (Fact.Agreed agreed : facts(Fact.Agreed.class)) {
      if (agreed.spelling().equals(spelling)) {
        name = Optional.of(agreed.name());
      }
    }
    return name.orElse(spelling);
  }

  /** Every plastic that something standing speaks of: counted, described, kept or moved. */
  public SortedSet<Plastic> plastics() {
    Set<Plastic> plastics = new HashSet<>();
    facts(Fact.Counted.class).forEach(c -> plastics.add(c.plastic()));
    facts(Fact.Described.class).forEach(d -> plastics.add(d.plastic()));
    plastics.addAll(kept());
    facts(Fact.Fished.class).forEach(f -> plastics.add(f.stint().plastic()));
    List<Long> standing = batches.stream().filter(Batch::stands).map(Batch::id).sorted().toList();
    for (Recorded<Movement> movement : ledger.movements()) {
      if (!movement.what().reverses()
          && !movement.what().isWorkedOut()
          && movement.what().stint().isEmpty()
          && Collections.binarySearch(standing, movement.batch()) >= 0) {
        plastics.add(movement.what().plastic());
      }
    }
    return new TreeSet<>(plastics);
  }
}
