package traytally.ledger;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import traytally.plastic.Colour;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.plastic.Swatch;
import traytally.trip.Leaning;
import traytally.trip.Months;
import traytally.trip.PlannedTrip;
import traytally.trip.Stint;

/**
 * Something the angler told the box, beside the movements of pieces.
 *
 * <p>A fact is added by one batch and may be withdrawn by a later one; it is never edited, so that
 * {@code undo} can always put back what was.
 */
public sealed interface Fact {

  /**
   * What the eye saw in the tray.
   *
   * @param pieces at the end of {@code date}
   * @param listed whether a list said so (a list says the same again without meaning a new count)
   */
  record Counted(Plastic plastic, LocalDate date, int pieces, boolean listed) implements Fact {
    public Counted {
      if (pieces < 0) {
        throw new IllegalArgumentException("count must not be negative: " + pieces);
      }
    }
  }

  /**
   * A stint of a trip.
   *
   * @param number names the stint for good: an edited stint keeps it, its movements carry it
   * @param ordinal its place in the trip, from 1
   * @param source the list it came from ({@code trips.xlsx, Trips}), or blank if typed in
   */
  record Fished(Stint stint, long number, int ordinal, String source) implements Fact {}

  /** A trip to come. */
  record Planned(PlannedTrip trip, String source) implements Fact {}

  /** What a shop asks for a plastic. */
  record Offered(Offer offer) implements Fact {}

  /** What a shop asks beside its prices. */
  record Traded(Shop shop) implements Fact {}

  /** A colour's swatches and finish. */
  record Coloured(Colour colour) implements Fact {}

  /**
   * What an everyday word for a colour stands for where a colour has no swatch.
   *
   * @param swatch empty where the word is not to be used
   */
  record ColourWord(Name word, Optional<Swatch> swatch) implements Fact {}

  /** A leaning of the starting guide, in place of the one for the same case. */
  record Guided(Leaning leaning) implements Fact {}

  /**
   * What the list says of a plastic beside its count.
   *
   * @param packSize pieces to a pack, if known
   * @param packPrice last price of a pack, if known
   * @param tray where it lies; blank if not said
   */
  record Described(
      Plastic plastic, String tray, OptionalInt packSize, Optional<Money> packPrice, String note)
      implements Fact {}

  /** The angler vouches for a plastic by hand; its withdrawal ends that. */
  record Kept(Plastic plastic) implements Fact {}

  /** A spelling the angler agreed stands for a name. */
  record Agreed(Name spelling, Name name) implements Fact {}

  /**
   * How the columns of a list were read.
   *
   * @param headers the list's headers, folded, one a line
   * @param reading what was decided, one {@code header=field} a line
   */
  record Mapped(String headers, String reading) implements Fact {}

  /** The months in which the angler will not fish a water; its withdrawal ends that. */
  record Closed(Name water, Months months) implements Fact {
    public Closed {
      if (water.isBlank()) {
        throw new IllegalArgumentException("closed months need a water");
      }
    }
  }

  /** A setting changed from its default. */
  record Chosen(Setting setting, String value) implements Fact {}
}
