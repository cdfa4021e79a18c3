package traytally.intake;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/**
 * Plastics that a log calls by their colour or their body style alone, where the box holds one such
 * plastic and no other.
 */
final class ShortNames {
  private final Table table;
  private final RowReader reader;
  private final KnownPlastics known;
  private final boolean bodiless;
  private final boolean colourless;
  private final Map<Name, List<Plastic>> called = new HashMap<>();

  ShortNames(Table table, RowReader reader, KnownPlastics known) {
    this.table = table;
    this.reader = reader;
    this.known = known;
    this.bodiless = !table.tells(Field.BODY);
    this.colourless = !table.tells(Field.COLOUR);
  }

  /**
   * The one plastic that the row's one word may mean; empty if it says more, or may mean several.
   */
  Optional<Plastic> plastic() {
    if (bodiless == colourless) {
      return Optional.empty();
    }
    Field told = bodiless ? Field.COLOUR : Field.BODY;
    Name word = known.agreed(reader.name(told));
    List<Plastic> fitting =
        word.isBlank() ? List.of() : called.computeIfAbsent(word, known::called);
    if (fitting.size() == 1) {
      Field untold = bodiless ? Field.BODY : Field.COLOUR;
      table.assumeOnce(
          "The log tells no "
              + untold.word()
              + ": each lure was taken for the one plastic of the box that is called so.");
      return Optional.of(fitting.get(0));
    }
    if (fitting.size() > 1) {
      reader.problem(
          told,
          "may be any of "
              + KnownPlastics.several(fitting)
              + ". Write the body style and the colour.");
    }
    return Optional.empty();
  }
}
