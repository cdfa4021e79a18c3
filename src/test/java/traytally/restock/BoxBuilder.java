package traytally.restock;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.Ledger;
import traytally.ledger.Movement;
import traytally.ledger.MovementKind;
import traytally.ledger.Offer;
import traytally.ledger.Recorded;
import traytally.ledger.Setting;
import traytally.ledger.Settings;
import traytally.ledger.Shop;
import traytally.plastic.Colour;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.plastic.Swatch;
import traytally.trip.Fish;
import traytally.trip.PlannedTrip;
import traytally.trip.Stint;
import traytally.trip.Trip;

/** A box written down fact by fact. */
final class BoxBuilder {
  static final LocalDate TODAY = LocalDate.of(2026, 5, 1);
  private static final Currency EUR = Currency.getInstance("EUR");

  private final List<Recorded<? extends Fact>> facts = new ArrayList<>();
  private final List<Recorded<Movement>> movements = new ArrayList<>();
  private final Map<Setting, String> settings = new EnumMap<>(Setting.class);

  static LocalDate daysAgo(int days) {
    return TODAY.minusDays(days);
  }

  static Money euros(double euros) {
    return new Money(Math.round(euros * 100), EUR);
  }

  BoxBuilder fact(Fact fact) {
    facts.add(new Recorded<>(facts.size(), 1, fact));
    return this;
  }

  BoxBuilder moved(LocalDate date, MovementKind kind, Plastic plastic, int pieces) {
    movements.add(new Recorded<>(movements.size(), 1, Movement.of(date, kind, plastic, pieces)));
    return this;
  }

  /** A first count. */
  BoxBuilder counted(LocalDate date, Plastic plastic, int pieces) {
    if (pieces > 0) {
      moved(date, MovementKind.OPENING, plastic, pieces);
    }
    return fact(new Fact.Counted(plastic, date, pieces, true));
  }

  BoxBuilder kept(Plastic plastic) {
    return fact(new Fact.Kept(plastic));
  }

  /** A stint of one rod; what it lost is not moved in the ledger. */
  BoxBuilder fished(LocalDate date, Plastic plastic, double minutes, int takes, int lost) {
    return fished(date, "Gull Rocks", plastic, minutes, takes, lost);
  }

  BoxBuilder fished(
      LocalDate date, String water, Plastic plastic, double minutes, int takes, int lost) {
    Stint stint =
        new Stint(
            new Trip(date, Name.of(water)),
            Name.BLANK,
            Optional.empty(),
            plastic,
            OptionalDouble.of(minutes),
            OptionalInt.empty(),
            new Fish(takes, takes, 0, 0),
            lost,
            Optional.empty(),
            0,
            1,
            "");
    return fact(new Fact.Fished(stint, facts.size(), 1, ""));
  }

  BoxBuilder planned(int daysAhead, double hours) {
    return planned(daysAhead, "Gull Rocks", hours);
  }

  BoxBuilder planned(int daysAhead, String water, double hours) {
    return fact(
        new Fact.Planned(
            new PlannedTrip(
                TODAY.plusDays(daysAhead),
                Name.of(water),
                Name.BLANK,
                Optional.empty(),
                hours,
                1,
                ""),
            ""));
  }

  BoxBuilder offered(String shop, Plastic plastic, int packSize, double euros) {
    return fact(new Fact.Offered(new Offer(Name.of(shop), plastic, packSize, euros(euros), true)));
  }

  BoxBuilder soldOut(String shop, Plastic plastic) {
    return fact(new Fact.Offered(new Offer(Name.of(shop), plastic, 8, euros(5), false)));
  }

  BoxBuilder postage(String shop, double postage, double freeOver) {
    return fact(
        new Fact.Traded(
            new Shop(
                Name.of(shop),
                Optional.of(euros(postage)),
                Optional.of(euros(freeOver)),
                OptionalInt.empty())));
  }

  BoxBuilder swatch(String colour, String hex) {
    return fact(
        new Fact.Coloured(
            new Colour(Name.of(colour), Swatch.parse(hex), Optional.empty(), Optional.empty())));
  }

  BoxBuilder set(Setting setting, String value) {
    settings.put(setting, value);
    return this;
  }

  Book book() {
    return new Book(List.of(), new Ledger(movements), facts, new Settings(settings), 1_000_000);
  }
}
