package traytally.store;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Movement;
import traytally.ledger.MovementKind;
import traytally.ledger.Offer;
import traytally.ledger.Setting;
import traytally.ledger.Shop;
import traytally.plastic.Colour;
import traytally.plastic.Finish;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.plastic.Swatch;
import traytally.plastic.Tone;
import traytally.trip.Clarity;
import traytally.trip.Fish;
import traytally.trip.Leaning;
import traytally.trip.LossCause;
import traytally.trip.Months;
import traytally.trip.PlannedTrip;
import traytally.trip.Stint;
import traytally.trip.Trip;

/** Facts and movements of every kind, with every field filled once and empty once. */
final class Sample {
  static final LocalDate MAY = LocalDate.of(2026, 5, 1);
  static final Plastic PADDLE = Plastic.of("Plimwick", "paddle", "motor oil", 75);
  static final Plastic WORM = Plastic.of("", "Wurm", "grün-weiß ✨", 0);
  private static final Currency EUR = Currency.getInstance("EUR");

  private Sample() {}

  static Entry entry(List<Movement> movements, List<Fact> added) {
    return new Entry("import", "sample", OptionalLong.empty(), movements, added, List.of());
  }

  /** An opening of {@code pieces} paddles. */
  static Entry opening(int pieces) {
    return entry(
        List.of(Movement.of(MAY, MovementKind.OPENING, PADDLE, pieces)),
        List.of(new Fact.Counted(PADDLE, MAY, pieces, true)));
  }

  static Stint fullStint() {
    return new Stint(
        new Trip(MAY.plusDays(2), Name.of("Møllebukt")),
        Name.of("pollack"),
        Optional.of(Clarity.STAINED),
        PADDLE,
        OptionalDouble.of(42.5),
        OptionalInt.of(60),
        new Fish(4, 3, 2, 1),
        2,
        Optional.of(LossCause.BITTEN_OFF),
        1,
        2,
        "slack water; \"big one\" lost");
  }

  static Stint bareStint() {
    return new Stint(
        new Trip(MAY.plusDays(3), Name.BLANK),
        Name.BLANK,
        Optional.empty(),
        WORM,
        OptionalDouble.empty(),
        OptionalInt.empty(),
        Fish.NONE,
        0,
        Optional.empty(),
        0,
        1,
        "");
  }

  /** All of them. */
  static List<Fact> facts() {
    return facts(Schema.VERSION);
  }

  /** Those that a box of one version of the schema could hold. */
  static List<Fact> facts(int version) {
    List<Fact> facts = new ArrayList<>(firstFacts());
    if (version >= 2) {
      Optional<Months> dark = Months.parse("11-1,4");
      facts.addAll(
          List.of(
              new Fact.Closed(Name.of("Gannet Ledge"), dark.orElseThrow()),
              new Fact.ColourWord(Name.of("old faithful"), Optional.of(new Swatch(0x123456))),
              new Fact.ColourWord(Name.of("clear"), Optional.empty()),
              new Fact.Guided(
                  new Leaning(
                      Name.of("pollack"), Optional.of(Clarity.CLOUDY), dark, Tone.DARK_MUTED, -1)),
              new Fact.Guided(
                  new Leaning(
                      Name.BLANK, Optional.empty(), Optional.empty(), Tone.PALE_BRIGHT, 2))));
    }
    return facts;
  }

  private static List<Fact> firstFacts() {
    Money price = Money.of(new BigDecimal("6.95"), EUR);
    return List.of(
        new Fact.Counted(PADDLE, MAY, 12, true),
        new Fact.Counted(WORM, MAY, 0, false),
        new Fact.Counted(WORM, MAY.plusDays(5), 1, false),
        new Fact.Fished(fullStint(), 1, 1, "trips.xlsx, Trips"),
        new Fact.Fished(bareStint(), 2, 1, ""),
        new Fact.Planned(
            new PlannedTrip(
                MAY.plusDays(9),
                Name.of("Gannet Ledge"),
                Name.of("bass"),
                Optional.of(Clarity.CLEAR),
                3.5,
                2,
                "with Ann"),
            "plan.csv"),
        new Fact.Planned(
            new PlannedTrip(MAY.plusDays(16), Name.BLANK, Name.BLANK, Optional.empty(), 2, 1, ""),
            ""),
        new Fact.Offered(new Offer(Name.of("Köder & Co"), PADDLE, 8, price, true)),
        new Fact.Offered(new Offer(Name.of("The Loft"), WORM, 1, price, false)),
        new Fact.Traded(
            new Shop(
                Name.of("Köder & Co"),
                Optional.of(Money.zero(EUR)),
                Optional.of(Money.of(new BigDecimal("60"), Currency.getInstance("GBP"))),
                OptionalInt.of(3))),
        new Fact.Traded(
            new Shop(Name.of("The Loft"), Optional.empty(), Optional.empty(), OptionalInt.empty())),
        new Fact.Coloured(
            new Colour(
                Name.of("motor oil"),
                Optional.of(new Swatch(0x4A4B1E)),
                Optional.of(new Swatch(0)),
                Optional.of(Finish.FLAKE))),
        new Fact.Coloured(
            new Colour(Name.of("white"), Optional.empty(), Optional.empty(), Optional.empty())),
        new Fact.Described(PADDLE, "tray 1", OptionalInt.of(8), Optional.of(price), "slow sinker"),
        new Fact.Described(WORM, "", OptionalInt.empty(), Optional.empty(), ""),
        new Fact.Kept(PADDLE),
        new Fact.Agreed(Name.of("mtr oil"), Name.of("motor oil")),
        new Fact.Mapped("qty\ncolour", "qty=Pieces\ncolour=Colour"),
        new Fact.Chosen(Setting.ORDER_EVERY_DAYS, "14"));
  }

  static List<Movement> movements() {
    return List.of(
        Movement.of(MAY, MovementKind.OPENING, PADDLE, 12),
        Movement.of(MAY.plusDays(1), MovementKind.BOUGHT, PADDLE, 8).withNote("Köder & Co"),
        new Movement(
            MAY.plusDays(2),
            MovementKind.LOST,
            Optional.of(LossCause.BITTEN_OFF),
            PADDLE,
            -2,
            OptionalLong.of(1),
            false,
            "Møllebukt"),
        new Movement(
            MAY.plusDays(2),
            MovementKind.WORN,
            Optional.empty(),
            PADDLE,
            -1,
            OptionalLong.of(1),
            false,
            ""),
        Movement.of(MAY.plusDays(3), MovementKind.GIVEN, PADDLE, -3),
        Movement.of(MAY.plusDays(3), MovementKind.GIVEN, PADDLE, -3).reversed("not given"),
        Movement.of(MAY.plusDays(4), MovementKind.FOUND, WORM, 2),
        Movement.of(MAY.plusDays(5), MovementKind.RECOUNT, WORM, -1));
  }
}
