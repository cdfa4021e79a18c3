package traytally.cli;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Fact.Counted;
import traytally.ledger.Fact.Fished;
import traytally.ledger.Movement;
import traytally.ledger.MovementKind;
import traytally.ledger.Posting;
import traytally.plastic.Plastic;
import traytally.report.Words;
import traytally.trip.Stint;
import traytally.trip.Trip;

/** A whole trip in one line: its head, a colon, its stints with semicolons between them. */
final class TripLine {
  static final String EXAMPLE =
      "traytally trips log '2026-05-02 \"Gannet Stack\" pollack clear:"
          + " paddle 75 motor oil 60m 3t 2h 2l -1 snag; curl 90 chalk 25m'";

  /** The colon after the head; that of a time of day stands between digits. */
  private static final Pattern COLON = Pattern.compile(":(?!\\d)");

  private static final Pattern BETWEEN = Pattern.compile("(?<!\\S)\"[^\"]*\"|(;|\\s/\\s|\\R)");

  private final Traytally root;
  private final Book book;
  private final TripWords trip;
  private final List<Fact> fished = new ArrayList<>();
  private final List<String> said = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();
  private final List<String> odd = new ArrayList<>();
  private final Set<Plastic> used = new LinkedHashSet<>();

  TripLine(Traytally root, Book book, TripWords trip) {
    this.root = root;
    this.book = book;
    this.trip = trip;
    odd.addAll(trip.slips());
  }

  /** What the line tells, worked out against the book. */
  static HandChange change(Traytally root, Book book, String line) {
    Matcher colon = COLON.matcher(line);
    if (!colon.find()) {
      throw new Refusal(
          Exit.USAGE,
          "write a colon after the water's conditions, then the stints, and put the line in quotes:"
              + System.lineSeparator()
              + "  "
              + EXAMPLE);
    }
    TripWords trip = head(root, book, line.substring(0, colon.start()));
    return new TripLine(root, book, trip).change(stints(line.substring(colon.end())));
  }

  /** The head of a trip that was made. */
  static TripWords head(Traytally root, Book book, String text) {
    TripWords trip = TripWords.parse(text, book, root.today());
    HandDate.past(trip.date(), root);
    if (trip.hours().isPresent()) {
      throw new Refusal(Exit.USAGE, "a logged trip has no hours: say each stint's minutes, 60m.");
    }
    return trip;
  }

  /** The stints of a text, each as typed; what stands in quotes is not taken apart. */
  static List<String> stints(String text) {
    List<String> stints = new ArrayList<>();
    int from = 0;
    Matcher between = BETWEEN.matcher(text);
    while (between.find()) {
      if (between.group(1) != null) {
        stints.add(text.substring(from, between.start()));
        from = between.end();
      }
    }
    stints.add(text.substring(from));
    stints.removeIf(String::isBlank);
    return stints;
  }

  /** What the stints tell, each as typed. */
  HandChange change(List<String> texts) {
    Posting posting = new Posting(book.ledger(), book.recorded(Counted.class));
    List<Fished> before = new ArrayList<>(book.facts(Fished.class));
    before.removeIf(f -> !f.stint().trip().equals(new Trip(trip.date(), trip.water())));
    int ordinal = before.stream().mapToInt(Fished::ordinal).max().orElse(0);
    for (String text : texts) {
      take(text.strip(), before, ++ordinal);
    }
    if (fished.isEmpty()) {
      throw new Refusal(Exit.USAGE, "no stint stands after the colon. Example: " + EXAMPLE);
    }
    fished.forEach(fact -> posting.fish((Fished) fact));
    afterwards(posting);
    String stints = Words.count(fished.size(), "stint");
    return new HandChange(
        "Understood: "
            + trip.said()
            + System.lineSeparator()
            + String.join(System.lineSeparator(), said),
        List.copyOf(used),
        notes,
        odd.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", odd)),
        new Entry(
            "trips log",
            trip.said() + ": " + stints,
            OptionalLong.empty(),
            posting.movements(),
            fished,
            List.of()));
  }

  private void take(String text, List<Fished> before, int ordinal) {
    int number = fished.size() + 1;
    try {
      StintWords words = StintWords.parse(text);
      Plastic plastic = PlasticNames.one(root, book, words.plastic());
      Stint stint = words.stint(trip, plastic);
      said.add("  " + number + ". " + plastic + ": " + words.said());
      if (before.stream().anyMatch(f -> f.stint().equals(stint))) {
        odd.add("Stint " + number + " is in the log of that trip already.");
      }
      if (stint.minutes().isEmpty() && stint.casts().isEmpty()) {
        notes.add("Stint " + number + " has no minutes: as long as the others is assumed.");
      }
      if (stint.use() > 0) {
        used.add(plastic);
      }
      fished.add(new Fished(stint, book.nextStint() + fished.size(), ordinal, ""));
    } catch (Refusal e) {
      throw new Refusal(e.code(), "stint " + number + ", \"" + text + "\": " + e.getMessage(), e);
    }
  }

  /** What the posting brought to light. */
  private void afterwards(Posting posting) {
    for (Plastic plastic : used) {
      if (posting.isHistory(plastic, trip.date())) {
        notes.add(
            plastic
                + " was counted on "
                + posting.counted(plastic).orElseThrow()
                + ", after this trip: that count stands.");
      }
    }
    for (Movement movement : posting.movements()) {
      if (movement.kind() == MovementKind.FOUND && !movement.reverses()) {
        notes.add(
            "The book held too few of "
                + movement.plastic()
                + ": "
                + HandWords.pieces(movement.pieces())
                + " must have been there. Count that one: traytally count");
      }
    }
  }
}
