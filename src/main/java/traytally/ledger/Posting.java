package traytally.ledger;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import traytally.ledger.Fact.Counted;
import traytally.ledger.Fact.Fished;
import traytally.plastic.Plastic;
import traytally.trip.LossCause;
import traytally.trip.Stint;

/**
 * Works out the movements that new counts, stints and purchases call for.
 *
 * <p>Two rules hold whatever is posted. The balance of a plastic is below zero at no date: where it
 * would be, pieces are {@code found} on that date. And what the eye counted stands: nothing posted
 * later for an earlier date changes the balance since.
 */
public final class Posting {
  private final Ledger ledger;
  private final Map<Plastic, Recorded<Counted>> lastCount = new HashMap<>();
  private final Map<Plastic, NavigableMap<LocalDate, Integer>> changes = new HashMap<>();
  private final List<Movement> posted = new ArrayList<>();
  private final Set<Plastic> unsettled = new LinkedHashSet<>();

  /**
   * A posting on top of {@code ledger}.
   *
   * @param counts the counts that stand
   */
  public Posting(Ledger ledger, Collection<Recorded<Counted>> counts) {
    this.ledger = ledger;
    counts.forEach(count -> lastCount.merge(count.what().plastic(), count, Posting::later));
  }

  private static Recorded<Counted> later(Recorded<Counted> a, Recorded<Counted> b) {
    Comparator<Recorded<Counted>> order =
        Comparator.<Recorded<Counted>, LocalDate>comparing(c -> c.what().date())
            .thenComparingLong(Recorded::batch)
            .thenComparingLong(Recorded::id);
    return order.compare(a, b) >= 0 ? a : b;
  }

  /** What was posted, in order, with what must have been found for it to be possible. */
  public List<Movement> movements() {
    unsettled.forEach(plastic -> settle(plastic, OptionalLong.empty()));
    unsettled.clear();
    return List.copyOf(posted);
  }

  /** The last day {@code plastic} was counted, if it ever was. */
  public Optional<LocalDate> counted(Plastic plastic) {
    return Optional.ofNullable(lastCount.get(plastic)).map(c -> c.what().date());
  }

  /** Pieces of {@code plastic} at the end of {@code date}, with what was posted so far. */
  public int balance(Plastic plastic, LocalDate date) {
    return changes(plastic).headMap(date, true).values().stream().mapToInt(i -> i).sum();
  }

  /**
   * Posts a count: the difference from the book becomes an opening or a recount. A count older than
   * one that stands moves nothing.
   */
  public void count(Counted count) {
    Plastic plastic = count.plastic();
    Optional<LocalDate> before = counted(plastic);
    if (before.isPresent() && before.get().isAfter(count.date())) {
      return;
    }
    int difference = count.pieces() - balance(plastic, count.date());
    boolean first = before.isEmpty() && difference > 0;
    lastCount.put(plastic, new Recorded<>(Long.MAX_VALUE, Long.MAX_VALUE, count));
    if (difference != 0) {
      MovementKind kind = first ? MovementKind.OPENING : MovementKind.RECOUNT;
      post(Movement.of(count.date(), kind, plastic, difference));
    }
  }

  /**
   * Posts what a stint used up. A stint dated before the plastic's last count is history: that
   * count has seen its losses already, and nothing moves.
   */
  public void fish(Fished fished) {
    Stint stint = fished.stint();
    LocalDate date = stint.trip().date();
    if (isHistory(stint.plastic(), date)) {
      return;
    }
    OptionalLong number = OptionalLong.of(fished.number());
    if (stint.lost() > 0) {
      post(use(MovementKind.LOST, stint.lostHow(), stint, stint.lost(), number));
    }
    if (stint.worn() > 0) {
      post(use(MovementKind.WORN, Optional.empty(), stint, stint.worn(), number));
    }
  }

  private static Movement use(
      MovementKind kind, Optional<LossCause> how, Stint stint, int pieces, OptionalLong number) {
    return new Movement(
        stint.trip().date(),
        kind,
        how,
        stint.plastic(),
        -pieces,
        number,
        false,
        stint.trip().water().text());
  }

  /** Whether {@code plastic} was counted after {@code date}. */
  public boolean isHistory(Plastic plastic, LocalDate date) {
    return counted(plastic).filter(counted -> counted.isAfter(date)).isPresent();
  }

  /** Posts a movement as it is, and what must have been found for it to be possible. */
  public void post(Movement movement) {
    add(movement);
    settle(movement.plastic(), movement.stint());
  }

  /**
   * Takes a recorded movement back. If a count has seen its pieces since, the count keeps its word
   * by a recount of the same size. What a whole run of these leaves below zero is found at its end.
   */
  public void takeBack(Recorded<Movement> recorded, String why) {
    Movement movement = recorded.what();
    add(movement.reversed(why));
    Recorded<Counted> count = lastCount.get(movement.plastic());
    if (count != null
        && count.batch() > recorded.batch()
        && !count.what().date().isBefore(movement.date())) {
      LocalDate seen = count.what().date();
      add(
          Movement.of(seen, MovementKind.RECOUNT, movement.plastic(), movement.pieces())
              .withNote("keeps the count of " + seen));
    }
    unsettled.add(movement.plastic());
  }

  /** Takes back all that still stands of what stint {@code number} moved. */
  public void takeBackStint(long number, Plastic plastic, String why) {
    Map<Movement, Recorded<Movement>> standing = new LinkedHashMap<>();
    for (Recorded<Movement> recorded : ledger.movements(plastic)) {
      Movement movement = recorded.what();
      if (movement.stint().isPresent() && movement.stint().getAsLong() == number) {
        // A movement and its reversal differ only in sign, flag and note.
        Movement opposite = movement.reversed("").withNote("");
        if (standing.remove(opposite) == null) {
          standing.put(movement.withNote(""), recorded);
        }
      }
    }
    standing.values().forEach(recorded -> takeBack(recorded, why));
  }

  private void settle(Plastic plastic, OptionalLong stint) {
    int balance = 0;
    List<Movement> missing = new ArrayList<>();
    for (Map.Entry<LocalDate, Integer> day : changes(plastic).entrySet()) {
      balance += day.getValue();
      if (balance < 0) {
        missing.add(
            new Movement(
                day.getKey(),
                MovementKind.FOUND,
                Optional.empty(),
                plastic,
                -balance,
                stint,
                false,
                "more were used than the book held"));
        balance = 0;
      }
    }
    missing.forEach(this::add);
  }

  private void add(Movement movement) {
    changes(movement.plastic()).merge(movement.date(), movement.pieces(), Integer::sum);
    posted.add(movement);
  }

  private NavigableMap<LocalDate, Integer> changes(Plastic plastic) {
    return changes.computeIfAbsent(
        plastic,
        p -> {
          NavigableMap<LocalDate, Integer> byDate = new TreeMap<>();
          ledger
              .movements(p)
              .forEach(m -> byDate.merge(m.what().date(), m.what().pieces(), Integer::sum));
          return byDate;
        });
  }
}
