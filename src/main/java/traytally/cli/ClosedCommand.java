package traytally.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.ledger.ClosedWaters;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Fact.Closed;
import traytally.ledger.Fact.Planned;
import traytally.ledger.Recorded;
import traytally.plastic.Name;
import traytally.report.ClosedReport;
import traytally.store.Box;
import traytally.trip.Months;
import traytally.trip.PlannedTrip;

/** {@code plan closed}: the months in which the angler will not fish a water. */
@Command(
    name = "closed",
    description = {
      "Notes the months in which a water is closed to you; lists what is noted.",
      "A trip planned inside them is flagged wherever it shows. It is your own note: this tool"
          + " knows no rules, so ask the authority for the water."
    },
    footer = {
      "",
      "Example: traytally plan closed \"Gannet Stack\" 2-4",
      "Example: traytally plan closed \"Gannet Stack\" nov-jan, may",
      "Example: traytally plan closed \"Gannet Stack\" --off"
    })
final class ClosedCommand implements Callable<Integer> {
  @ParentCommand private PlanCommand parent;
  @Mixin private Output output;
  @Mixin private HandOptions hand;

  @Parameters(
      arity = "0..*",
      paramLabel = "WATER MONTHS",
      description = "The water, then its closed months: 2-4, feb-apr or 2,3,11-1. Nothing lists.")
  private List<String> words = List.of();

  @Option(names = "--off", description = "No longer closed.")
  private boolean off;

  @Override
  public Integer call() {
    Traytally root = parent.root();
    if (!words.isEmpty()) {
      return hand.record(root, !off, this::change);
    }
    if (off) {
      throw new Refusal(Exit.USAGE, "--off wants the water: plan closed \"Gannet Stack\" --off");
    }
    try (Box box = root.openBox()) {
      output.print(root, ClosedReport.of(box.book(), root.today()));
    }
    return Exit.OK;
  }

  private HandChange change(Book book) {
    Set<Name> waters = TripWords.waters(book);
    int named = off ? words.size() : waterWords();
    Name told =
        TripWords.known(book.agreed(Name.of(String.join(" ", words.subList(0, named)))), waters);
    List<Recorded<? extends Fact>> before = new ArrayList<>();
    book.recorded(Closed.class).stream()
        .filter(closed -> closed.what().water().equals(told))
        .forEach(before::add);
    if (off) {
      return ended(told, before);
    }
    Months months = Months.parse(months(named)).orElseThrow();
    Closed closed = new Closed(told, months);
    boolean same = before.stream().anyMatch(fact -> fact.what().equals(closed));
    String said = "closed: " + told + ", " + months.words();
    return new HandChange(
        "Understood: " + said + ".",
        List.of(),
        notes(book, closed),
        TripWords.slip(told, waters),
        Entry.ofFacts(
            "plan closed", said, same ? List.of() : List.of(closed), same ? List.of() : before));
  }

  private static HandChange ended(Name water, List<Recorded<? extends Fact>> before) {
    if (before.isEmpty()) {
      throw new Refusal(
          Exit.DATA,
          "no closed months of \"" + water + "\" are noted. traytally plan closed lists them.");
    }
    String said = "no longer closed: " + water;
    return new HandChange(
        "Understood: " + said + ".",
        List.of(),
        List.of(),
        Optional.empty(),
        Entry.ofFacts("plan closed", said, List.of(), before));
  }

  private List<String> notes(Book book, Closed closed) {
    List<PlannedTrip> coming =
        book.facts(Planned.class).stream()
            .map(Planned::trip)
            .filter(trip -> !trip.date().isBefore(parent.root().today()))
            .toList();
    return ClosedWaters.NONE.with(closed).notes(coming);
  }

  /** How many of the words name the water: the months have as many of the last ones as they can. */
  private int waterWords() {
    for (int i = 1; i < words.size(); i++) {
      if (Months.parse(months(i)).isPresent()) {
        return i;
      }
    }
    throw new Refusal(
        Exit.USAGE,
        "write the water, then its closed months as numbers or names: plan closed"
            + " \"Gannet Stack\" 2-4");
  }

  private String months(int from) {
    return String.join(" ", words.subList(from, words.size()));
  }
}
