package traytally.cli;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import traytally.ledger.Book;
import traytally.ledger.Fact.Fished;
import traytally.ledger.Fact.Planned;
import traytally.plastic.Name;
import traytally.trip.Clarity;
import traytally.trip.PlannedTrip;
import traytally.trip.Stint;
import traytally.trip.Trip;

/**
 * Asks for the head of a trip, question after question. {@code back} goes to the question before;
 * Enter takes what stands in brackets; a hyphen says that it is not known.
 */
final class TripHead {
  private static final String NOT_KNOWN = "-";
  private static final String BACK = "back";

  private final Traytally root;
  private final Book book;
  private final Keyboard keyboard;
  private LocalDate date;
  private Name water = Name.BLANK;
  private Name species = Name.BLANK;
  private Optional<Clarity> clarity = Optional.empty();
  private int rods = 1;
  private Optional<TripWords> whole = Optional.empty();

  private TripHead(Traytally root, Book book, Keyboard keyboard) {
    this.root = root;
    this.book = book;
    this.keyboard = keyboard;
    this.date = root.today();
  }

  /** One question; false to go back. */
  @FunctionalInterface
  private interface Question {
    boolean ask();
  }

  /** Asks for a head. */
  static TripWords ask(Traytally root, Book book, Keyboard keyboard) {
    return new TripHead(root, book, keyboard).ask();
  }

  private TripWords ask() {
    List<Question> questions =
        List.of(this::askDate, this::askWater, this::askSpecies, this::askClarity, this::askRods);
    int at = 0;
    while (at < questions.size() && whole.isEmpty()) {
      at = questions.get(at).ask() ? at + 1 : Math.max(0, at - 1);
    }
    return whole.orElseGet(
        () ->
            new TripWords(
                date, water, species, clarity, Optional.empty(), Optional.of(rods), List.of()));
  }

  private boolean askDate() {
    String said =
        keyboard.ask("date [" + date + "]: ", "", Completion.ofWords("today", "yesterday"));
    if (said.equalsIgnoreCase(BACK)) {
      return false;
    }
    try {
      if (said.contains(" ")) {
        whole = Optional.of(agreed(TripLine.head(root, book, said.replaceFirst(":$", ""))));
        return true;
      }
      date = HandDate.past(said.isEmpty() ? date : TripWords.date(said, root.today()), root);
    } catch (Refusal e) {
      keyboard.say(e.sentence());
      return askDate();
    }
    suggest();
    return true;
  }

  /** The names of a head given in one line, slips asked after. */
  private TripWords agreed(TripWords told) {
    return new TripWords(
        told.date(),
        settled(told.water(), TripWords.waters(book)),
        settled(told.species(), TripWords.species(book)),
        told.clarity(),
        Optional.empty(),
        told.rods(),
        List.of());
  }

  /** What the plan says of that day, else where and for what the last trip was. */
  private void suggest() {
    Optional<PlannedTrip> planned =
        book.facts(Planned.class).stream()
            .map(Planned::trip)
            .filter(trip -> trip.date().equals(date))
            .findFirst();
    Optional<Stint> last =
        book.fished(date).stream()
            .max(
                Comparator.comparing((Fished f) -> f.stint().trip().date())
                    .thenComparing(Fished::ordinal))
            .map(Fished::stint);
    water =
        planned
            .map(PlannedTrip::water)
            .or(() -> last.map(Stint::trip).map(Trip::water))
            .orElse(Name.BLANK);
    species = planned.map(PlannedTrip::species).or(() -> last.map(Stint::species)).orElse(species);
    clarity = planned.flatMap(PlannedTrip::clarity);
    rods = planned.map(PlannedTrip::rods).orElse(1);
  }

  private boolean askWater() {
    Optional<Name> said = name("water", water, TripWords.waters(book));
    said.ifPresent(name -> water = name);
    return said.isPresent();
  }

  private boolean askSpecies() {
    Optional<Name> said = name("fish", species, TripWords.species(book));
    said.ifPresent(name -> species = name);
    return said.isPresent();
  }

  /** A name, known or new; empty to go back. */
  private Optional<Name> name(String what, Name standard, Set<Name> known) {
    String said = keyboard.ask(prompt(what, standard.text()), "", Completion.of(known));
    if (said.equalsIgnoreCase(BACK)) {
      return Optional.empty();
    }
    if (said.isEmpty()) {
      return Optional.of(standard);
    }
    return Optional.of(
        said.equals(NOT_KNOWN) ? Name.BLANK : settled(book.agreed(Name.of(said)), known));
  }

  /** A name as it was first written, or the known one it nearly is, if the person says so. */
  private Name settled(Name name, Set<Name> known) {
    Optional<Name> near = TripWords.near(name, known);
    return near.isPresent()
            && keyboard.agrees(name + " is new. Did you mean " + near.get() + "?", true)
        ? near.get()
        : TripWords.known(name, known);
  }

  private boolean askClarity() {
    List<String> words = Stream.of(Clarity.values()).map(Clarity::word).toList();
    while (true) {
      String said =
          keyboard.ask(
              prompt("clarity", clarity.map(Clarity::word).orElse("")),
              "",
              Completion.ofWords(words.toArray(String[]::new)));
      if (said.equalsIgnoreCase(BACK)) {
        return false;
      }
      if (said.isEmpty()) {
        return true;
      }
      List<Clarity> fitting =
          Stream.of(Clarity.values())
              .filter(c -> c.word().startsWith(said.toLowerCase(Locale.ROOT)))
              .toList();
      if (said.equals(NOT_KNOWN) || fitting.size() == 1) {
        clarity = fitting.stream().findFirst();
        return true;
      }
      keyboard.say(
          "Say " + words.stream().collect(Collectors.joining(", ")) + ", or - if unknown.");
    }
  }

  private boolean askRods() {
    while (true) {
      String said = keyboard.ask(prompt("rods", String.valueOf(rods)), "", Completion.NONE);
      if (said.equalsIgnoreCase(BACK)) {
        return false;
      }
      if (said.isEmpty()) {
        return true;
      }
      if (said.matches("[1-9]\\d?r?")) {
        rods = Integer.parseInt(said.replace("r", ""));
        return true;
      }
      keyboard.say("How many rods fished at once? Say a number from 1 to 99.");
    }
  }

  private static String prompt(String what, String standard) {
    return what + (standard.isEmpty() ? ": " : " [" + standard + "]: ");
  }
}
