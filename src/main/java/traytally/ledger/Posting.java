package traytally.ledger;

import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import traytally.ledger.Fact.Counted;
import traytally.ledger.Fact.Fished;
import traytally.plastic.Plastic;
import traytally.trip.LossCause;
import traytally.trip.Stint;

/**
 * Works out the movements that new counts, stints and purchases call for.
 *
 * <p>Two rules hold whatever is posted. The balance of a plastic is below zero at no date: where it
 * would be, pieces are {@code found} on that date, and taken back when a later word makes them
 * needless. And what the eye counted stands: nothing posted later for an earlier date changes the
 * balance since, because a {@code recount} on the count's date makes up for it.
 *
 * <p>A count speaks of the end of its day and of all that was told by then: what a later batch
 * tells of that same day comes on top, what the same batch tells does not.
 */
public final class Posting {
  private final Ledger ledger;
  private final Map<Plastic, List<Recorded<Counted>>> counts = new HashMap<>();
  private final Map<Plastic, Balance> balances = new HashMap<>();
  private final List<Movement> posted = new ArrayList<>();
  // The posted movements of stints by the stint's number: made when first asked for, since a long
  // log is posted without ever asking.
  private final Map<Long, List<Recorded<Movement>>> postedByStint = new HashMap<>();
  private int indexed;
  private final Set<Plastic> touched = new LinkedHashSet<>();

  /**
   * A posting on top of {@code ledger}.
   *
   * @param counts the counts that stand
   */
  public Posting(Ledger ledger, Collection<Recorded<Counted>> counts) {
    this.ledger = ledger;
    counts.forEach(
        c -> this.counts.computeIfAbsent(c.what().plastic(), p -> new ArrayList<>()).add(c));
  }

  /** What was posted, in order, then what must be recounted and found for it to be possible. */
  public List<Movement> movements() {
    List<Movement> all = new ArrayList<>(posted);
    touched.forEach(plastic -> all.addAll(balance(plastic).due()));
    return List.copyOf(all);
  }

  /** The last day {@code plastic} was counted, if it ever was. */
  public Optional<LocalDate> counted(Plastic plastic) {
    return balance(plastic).counted();
  }

  /** Pieces of {@code plastic} at the end of {@code date}, with what was posted so far. */
  public int balance(Plastic plastic, LocalDate date) {
    return balance(plastic).at(date);
  }

  /**
   * Posts a count: the difference from the book becomes an opening or a recount. A count older than
   * one that stands moves nothing.
   */
  public void count(Counted count) {
    balance(count.plastic()).count(new Recorded<>(Balance.NOW, Balance.NOW, count));
    touched.add(count.plastic());
  }

  /**
   * Posts what a stint used up. A stint that the plastic's last count has seen is history: its
   * losses are in that count already, and nothing moves.
   */
  public void fish(Fished fished) {
    Stint stint = fished.stint();
    if (stint.use() == 0 || isHistory(fished)) {
      return;
    }
    if (stint.lost() > 0) {
      post(use(fished, MovementKind.LOST, stint.lostHow(), stint.lost()));
    }
    if (stint.worn() > 0) {
      post(use(fished, MovementKind.WORN, Optional.empty(), stint.worn()));
    }
  }

  private static Movement use(
      Fished fished, MovementKind kind, Optional<LossCause> how, int pieces) {
    Stint stint = fished.stint();
    return new Movement(
        stint.trip().date(),
        kind,
        how,
        stint.plastic(),
        -pieces,
        OptionalLong.of(fished.number()),
        false,
        stint.trip().water().text());
  }

  /** Whether {@code plastic} was counted after {@code date}. */
  public boolean isHistory(Plastic plastic, LocalDate date) {
    return counted(plastic).filter(counted -> counted.isAfter(date)).isPresent();
  }

  /** Whether the last count has seen what the stint used, however the stint was edited since. */
  private boolean isHistory(Fished fished) {
    Balance balance = balance(fished.stint().plastic());
    long told = ledger.stintTold(fished.number()).orElse(Balance.NOW);
    return balance.isSeen(fished.stint().trip().date(), told);
  }

  /** Whether a stint used pieces that neither a count has seen nor the ledger moved. */
  boolean isOwed(Fished fished) {
    return fished.stint().use() > 0
        && !isHistory(fished)
        && standing(fished.number(), fished.stint().plastic()).isEmpty();
  }

  /**
   * Posts a movement as it is. If a count has seen its date, that count keeps its word.
   *
   * @throws IllegalArgumentException if it is an opening or a recount, which only a count brings
   */
  public void post(Movement movement) {
    if (movement.isWorkedOut()) {
      throw new IllegalArgumentException("worked out, not posted: " + movement);
    }
    add(movement, Balance.NOW);
  }

  /** Takes a recorded movement back. If a count has seen its pieces since, it keeps its word. */
  public void takeBack(Recorded<Movement> recorded, String why) {
    add(recorded.what().reversed(why), ledger.told(recorded));
  }

  /** Takes back all that still stands of what stint {@code number} moved. */
  public void takeBackStint(long number, Plastic plastic, String why) {
    standing(number, plastic).forEach(recorded -> takeBack(recorded, why));
  }

  private List<Recorded<Movement>> standing(long number, Plastic plastic) {
    List<Recorded<Movement>> moved = new ArrayList<>(ledger.ofStint(number));
    moved.addAll(postedOf(number));
    Map<Movement, Deque<Recorded<Movement>>> standing = new LinkedHashMap<>();
    for (Recorded<Movement> recorded : moved) {
      if (recorded.what().plastic().equals(plastic)) {
        // A movement and its reversal differ only in sign, flag and note.
        Movement plain = recorded.what().withNote("");
        if (all(standing, plain.reversed("")).pollLast() == null) {
          all(standing, plain).addLast(recorded);
        }
      }
    }
    return standing.values().stream().flatMap(Deque::stream).toList();
  }

  private List<Recorded<Movement>> postedOf(long stint) {
    for (; indexed < posted.size(); indexed++) {
      Movement movement = posted.get(indexed);
      movement
          .stint()
          .ifPresent(
              number ->
                  postedByStint
                      .computeIfAbsent(number, n -> new ArrayList<>())
                      .add(new Recorded<>(Balance.NOW, Balance.NOW, movement)));
    }
    return postedByStint.getOrDefault(stint, List.of());
  }

  private static Deque<Recorded<Movement>> all(
      Map<Movement, Deque<Recorded<Movement>>> standing, Movement alike) {
    return standing.computeIfAbsent(alike, m -> new ArrayDeque<>());
  }

  /** Works out anew what {@code plastic} comes to: counts of it were withdrawn or put back. */
  void resettle(Plastic plastic) {
    touched.add(plastic);
  }

  private void add(Movement movement, long told) {
    balance(movement.plastic()).move(movement, told);
    posted.add(movement);
    touched.add(movement.plastic());
  }

  private Balance balance(Plastic plastic) {
    return balances.computeIfAbsent(
        plastic, p -> new Balance(p, ledger, counts.getOrDefault(p, List.of())));
  }
}
