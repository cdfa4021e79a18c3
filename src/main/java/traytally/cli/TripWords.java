package traytally.cli;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.intake.Spelling;
import traytally.ledger.Book;
import traytally.ledger.ClosedWaters;
import traytally.ledger.Fact.Fished;
import traytally.ledger.Fact.Planned;
import traytally.plastic.Name;
import traytally.trip.Clarity;
import traytally.trip.PlannedTrip;
import traytally.trip.Stint;

/**
 * A trip's head as typed: {@code 2026-05-02 "Gannet Stack" pollack clear 5h 2r}.
 *
 * @param water where; blank if not said
 * @param species the fish sought; blank if not said
 * @param hours planned, if said
 * @param slips questions about names that are nearly known ones
 */
record TripWords(
    LocalDate date,
    Name water,
    Name species,
    Optional<Clarity> clarity,
    Optional<Double> hours,
    Optional<Integer> rods,
    List<String> slips) {
  TripWords {
    slips = List.copyOf(slips);
  }

  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|'([^']*)'|([^\\s,]+)");
  private static final Pattern HOURS =
      Pattern.compile("(\\d{1,3}(?:\\.\\d{1,2})?)(?:h|hours?|hrs?)");
  private static final Pattern RODS = Pattern.compile("(\\d{1,2})(?:r|rods?)");

  /** A word of the head; one in quotes may hold spaces. */
  private record Word(String text, boolean quoted) {}

  /** Words as one line again: what the shell took for one word stands in quotes. */
  static String joined(List<String> words) {
    List<String> line = new ArrayList<>();
    for (String word : words) {
      boolean name = words.size() > 1 && word.contains(" ") && !word.matches("(?s).*[:;\"].*");
      line.add(name ? '"' + word + '"' : word);
    }
    return String.join(" ", line);
  }

  static TripWords parse(String head, Book book, LocalDate today) {
    List<Word> words = words(head);
    if (words.isEmpty()) {
      throw new Refusal(Exit.USAGE, "begin with the date, such as " + today + " or today.");
    }
    LocalDate date = date(words.remove(0).text(), today);
    Optional<Clarity> clarity = Optional.empty();
    Optional<Double> hours = Optional.empty();
    Optional<Integer> rods = Optional.empty();
    for (Word word : List.copyOf(words)) {
      String text = word.text().toLowerCase(Locale.ROOT);
      Matcher hour = HOURS.matcher(text);
      Matcher rod = RODS.matcher(text);
      if (word.quoted()) {
        continue;
      } else if (Clarity.parse(text).isPresent()) {
        clarity = once(clarity, Clarity.parse(text).get(), "clarity");
      } else if (hour.matches()) {
        hours = once(hours, Double.valueOf(hour.group(1)), "hours");
      } else if (rod.matches()) {
        rods = once(rods, Integer.valueOf(rod.group(1)), "rods");
      } else {
        continue;
      }
      words.remove(word);
    }
    Set<Name> waters = waters(book);
    Set<Name> fish = species(book);
    int split = split(words, waters, fish);
    Name water = known(book.agreed(name(words.subList(0, split))), waters);
    Name species = known(book.agreed(name(words.subList(split, words.size()))), fish);
    List<String> slips = new ArrayList<>();
    slip(water, waters).ifPresent(slips::add);
    slip(species, fish).ifPresent(slips::add);
    return new TripWords(date, water, species, clarity, hours, rods, slips);
  }

  /** The words without "4 hours" and "2 rods" in two pieces. */
  private static List<Word> words(String head) {
    String tidy = head.replaceAll("(?i)(\\d)\\s+(h|hours?|hrs?|r|rods?)(?![\\w])", "$1$2");
    List<Word> words = new ArrayList<>();
    Matcher word = WORD.matcher(tidy);
    while (word.find()) {
      boolean quoted = word.group(3) == null;
      String inner = word.group(1) == null ? word.group(2) : word.group(1);
      words.add(new Word(quoted ? inner.strip() : word.group(3), quoted));
    }
    return words;
  }

  private static <T> Optional<T> once(Optional<T> before, T now, String what) {
    if (before.isPresent()) {
      throw new Refusal(Exit.USAGE, "the " + what + " is said twice. Say it once.");
    }
    return Optional.of(now);
  }

  static LocalDate date(String text, LocalDate today) {
    try {
      return switch (text.toLowerCase(Locale.ROOT)) {
        case "today" -> today;
        case "yesterday" -> today.minusDays(1);
        case "tomorrow" -> today.plusDays(1);
        default -> LocalDate.parse(text);
      };
    } catch (DateTimeParseException e) {
      throw new Refusal(
          Exit.USAGE,
          "\"" + text + "\" is not a date. Write the year first, as in " + today + ", or today.",
          e);
    }
  }

  /** How many of the words name the water; the fish has the rest. */
  private static int split(List<Word> words, Set<Name> waters, Set<Name> fish) {
    if (!words.isEmpty() && words.get(0).quoted()) {
      return 1;
    }
    for (int i = words.size(); i > 0; i--) {
      if (waters.contains(name(words.subList(0, i)))) {
        return i;
      }
    }
    for (int i = 0; i < words.size(); i++) {
      if (fish.contains(name(words.subList(i, words.size())))) {
        return i;
      }
    }
    if (words.size() > 2) {
      throw new Refusal(
          Exit.USAGE,
          "\""
              + name(words)
              + "\": which is the water, which the fish? Put the water in quotes,"
              + " and the whole line in the other kind: '2026-05-02 \"Gannet Stack\" pollack'");
    }
    return Math.min(1, words.size());
  }

  private static Name name(List<Word> words) {
    return Name.of(String.join(" ", words.stream().map(Word::text).toList()));
  }

  /** {@code name} as it was written before, if it was. */
  static Name known(Name name, Set<Name> known) {
    return known.stream().filter(name::equals).findFirst().orElse(name);
  }

  static Optional<String> slip(Name name, Set<Name> known) {
    return near(name, known)
        .map(k -> "\"" + name + "\" is new, but nearly \"" + k + "\". Did you mean that?");
  }

  /** The known name that a new one is nearly spelt as, if there is one. */
  static Optional<Name> near(Name name, Set<Name> known) {
    return known.contains(name) || name.isBlank()
        ? Optional.empty()
        : known.stream().filter(k -> Spelling.near(name, k)).findFirst();
  }

  static Set<Name> waters(Book book) {
    Set<Name> waters = told(book, stint -> stint.trip().water(), PlannedTrip::water);
    waters.addAll(ClosedWaters.of(book).months().keySet());
    return waters;
  }

  static Set<Name> species(Book book) {
    return told(book, Stint::species, PlannedTrip::species);
  }

  private static Set<Name> told(
      Book book, Function<Stint, Name> logged, Function<PlannedTrip, Name> planned) {
    Set<Name> names = new TreeSet<>();
    book.facts(Fished.class).forEach(f -> names.add(logged.apply(f.stint())));
    book.facts(Planned.class).forEach(p -> names.add(planned.apply(p.trip())));
    names.remove(Name.BLANK);
    return names;
  }

  /** The head as it is typed, every name in quotes; what is odd about it was agreed to. */
  String text() {
    List<String> text = new ArrayList<>(List.of(date.toString()));
    text.add(quoted(water));
    if (!species.isBlank()) {
      text.add(quoted(species));
    }
    clarity.ifPresent(c -> text.add(c.word()));
    rods.ifPresent(r -> text.add(r + "r"));
    return String.join(" ", text);
  }

  private static String quoted(Name name) {
    return '"' + name.text().replace('"', ' ') + '"';
  }

  /** The same head, its names taken as they are. */
  TripWords withoutSlips() {
    return new TripWords(date, water, species, clarity, hours, rods, List.of());
  }

  /** The head in words: {@code 2026-05-02, Gannet Stack, pollack, clear}. */
  String said() {
    List<String> said = new ArrayList<>(List.of(date.toString()));
    if (!water.isBlank()) {
      said.add(water.text());
    }
    said.add(species.isBlank() ? "any fish" : species.text());
    clarity.ifPresent(c -> said.add(c.word()));
    return String.join(", ", said);
  }
}
