package traytally.intake;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import traytally.plastic.Name;
import traytally.trip.Fish;

/** What the rows of a log say of the fish. */
final class FishRead {
  /** More fish than a stint can have are slips (an assumption). */
  private static final int MOST_FISH = 1000;

  /** Headers that may tell the fish in words of their own. */
  private static final Pattern MAY_TELL =
      Pattern.compile(".*\\b(?:results?|outcome|score|catch|fish|bag|action)\\b.*");

  private final Table table;
  private final RowReader reader;
  private final boolean fishCounted;

  FishRead(Table table, RowReader reader) {
    this.table = table;
    this.reader = reader;
    this.fishCounted = countsFish();
    if (fishCounted) {
      table.assume("Numbers where the fish is named were read as fish landed.");
    }
    FishOff.say(table);
    sayUntold();
    Unread.say(table);
  }

  /** Numbers under "Fish" are fish landed, not what was fished for. */
  private boolean countsFish() {
    List<String> told =
        table.rows().stream()
            .map(row -> row.text(Field.SPECIES))
            .filter(text -> !text.isEmpty())
            .toList();
    return !table.guess().has(Field.LANDED)
        && !told.isEmpty()
        && told.stream().allMatch(text -> text.matches("\\d{1,3}") || Catch.of(text).isPresent())
        && told.stream().anyMatch(text -> text.matches(".*\\d.*"));
  }

  private void sayUntold() {
    boolean told =
        fishCounted
            || List.of(Field.TAKES, Field.HOOKED, Field.LANDED).stream().anyMatch(table::tells);
    if (!fishCounted
        && table.tells(Field.TAKES)
        && !table.tells(Field.HOOKED)
        && !table.tells(Field.LANDED)) {
      table.assume("Hooked and landed fish are not told: none are entered. Trust goes by takes.");
    }
    if (told || table.rows().isEmpty()) {
      return;
    }
    String header =
        IntStream.range(0, table.headers().size())
            .filter(column -> !table.guess().columns().containsValue(column))
            .mapToObj(table.headers()::get)
            .filter(h -> MAY_TELL.matcher(h.folded()).matches() && !FishOff.is(h.folded()))
            .findFirst()
            .map(ColumnHeader::text)
            .orElse("their header");
    table.assume(
        "No column was read that tells takes or fish: every stint counts as one without a take, and"
            + " trust learns from that. If a column tells them, say which with --map '"
            + header
            + "=takes' or --map '"
            + header
            + "=landed'.");
  }

  /** What was fished for, or what a catch in words names. */
  Name species() {
    if (!fishCounted && !reader.text(Field.SPECIES).isEmpty()) {
      return reader.name(Field.SPECIES);
    }
    Optional<String> named =
        caught().filter(c -> c.species().size() == 1).map(c -> c.species().get(0));
    if (named.isPresent() && !FishByKind.areIn(table.guess())) {
      table.assume("The kind of fish that a catch in words names was read as the species.");
    }
    return named.map(Name::of).orElse(Name.BLANK);
  }

  private Optional<Catch> caught() {
    String text = reader.text(fishCounted ? Field.SPECIES : Field.LANDED);
    return text.isEmpty() || text.chars().allMatch(Character::isDigit)
        ? Optional.empty()
        : Catch.of(text);
  }

  private int landed() {
    Field field = fishCounted ? Field.SPECIES : Field.LANDED;
    Optional<Catch> caught = reader.isDoubted(field) ? Optional.empty() : caught();
    if (caught.isEmpty()) {
      return reader.count(field, MOST_FISH).orElse(0);
    }
    if (FishByKind.areIn(table.guess())) {
      table.assumeOnce(
          "The columns of kinds of fish were added up as fish landed; the species is theirs where"
              + " only one kind was caught.");
    } else if (caught.get().species().size() > 1) {
      table.assume("Fish of several kinds in one cell were counted together.");
    } else {
      table.assume("A catch in words was read as its number of fish landed.");
    }
    return caught.get().fish();
  }

  /** The fish of the row the reader has begun. */
  Fish fish() {
    int follows = reader.count(Field.FOLLOWS, MOST_FISH).orElse(0);
    int landed = landed();
    OptionalInt hookedSaid = reader.count(Field.HOOKED, MOST_FISH);
    OptionalInt takesSaid = reader.count(Field.TAKES, MOST_FISH);
    int hooked = hookedSaid.orElse(landed);
    int takes = takesSaid.orElse(hooked);
    if (hookedSaid.isEmpty() && landed > 0) {
      table.assume("Where hooked fish are not told, as many were taken as hooked as were landed.");
    }
    if (takesSaid.isEmpty() && hooked > 0) {
      table.assume("Where takes are not told, as many were taken as there were hooked fish.");
    }
    if (landed > hooked) {
      reader.problem(
          Field.LANDED, "is more than were hooked (" + hooked + "). Check both numbers.");
      return Fish.NONE;
    }
    if (hooked > takes) {
      reader.problem(
          Field.HOOKED, "is more than there were takes (" + takes + "). Check both numbers.");
      return Fish.NONE;
    }
    return new Fish(follows, takes, hooked, landed);
  }
}
