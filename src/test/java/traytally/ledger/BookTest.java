package traytally.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Pieces;
import traytally.plastic.Plastic;
import traytally.trip.Fish;
import traytally.trip.LossCause;
import traytally.trip.Stint;
import traytally.trip.Trip;

final class BookTest {
  private static final LocalDate DAY = LocalDate.of(2026, 5, 1);
  private static final Plastic PADDLE = Plastic.of("", "paddle", "motor oil", 75);
  private static final Plastic WORM = Plastic.of("", "worm", "black", 120);
  private static final Money PRICE = new Money(695, Currency.getInstance("EUR"));

  private final Shelf shelf = new Shelf();

  private long tell(List<Movement> movements, Fact... facts) {
    return shelf.record(
        new Entry("test", "", OptionalLong.empty(), movements, List.of(facts), List.of()));
  }

  @Test
  void lastDescriptionOfAPlasticHolds() {
    tell(List.of(), described("tray 1"), described("tray 2"));
    assertEquals(Map.of(PADDLE, described("tray 2")), shelf.book().described());
  }

  private static Fact.Described described(String tray) {
    return new Fact.Described(PADDLE, tray, OptionalInt.of(8), Optional.of(PRICE), "");
  }

  @Test
  void lastAgreementOnASpellingHolds() {
    tell(
        List.of(),
        new Fact.Agreed(Name.of("mtr oil"), Name.of("motor")),
        new Fact.Agreed(Name.of("Mtr-Oil"), Name.of("motor oil")));
    assertEquals("motor oil", shelf.book().agreed(Name.of("MTR OIL")).text());
    assertEquals("white", shelf.book().agreed(Name.of("white")).text());
  }

  @Test
  void plasticsAreThoseThatSomethingStandingSpeaksOf() {
    long bought = tell(List.of(Movement.of(DAY, MovementKind.BOUGHT, PADDLE, 8)));
    tell(List.of(), new Fact.Kept(WORM));
    assertEquals(Set.of(PADDLE, WORM), shelf.book().plastics());
    assertEquals(Set.of(WORM), shelf.book().kept());
    long undo = shelf.reverse(bought);
    assertEquals(Set.of(WORM), shelf.book().plastics());
    shelf.reverse(undo);
    assertEquals(Set.of(PADDLE, WORM), shelf.book().plastics());
  }

  @Test
  void stockIsTheSumOfWhatMovedByThatDay() {
    tell(
        List.of(
            Movement.of(DAY, MovementKind.BOUGHT, PADDLE, 8),
            Movement.of(DAY.plusDays(2), MovementKind.LOST, PADDLE, -3),
            Movement.of(DAY.plusDays(1), MovementKind.BOUGHT, WORM, 5)));
    Ledger ledger = shelf.book().ledger();
    assertEquals(Map.of(PADDLE, new Pieces(8), WORM, Pieces.NONE), ledger.stock(DAY));
    assertEquals(new Pieces(5), ledger.stock(PADDLE, DAY.plusDays(2)));
    assertEquals(2, ledger.movements(PADDLE).size());
  }

  @Test
  void movementGoesTheWayOfItsKind() {
    assertThrows(
        IllegalArgumentException.class, () -> Movement.of(DAY, MovementKind.BOUGHT, PADDLE, -1));
    assertThrows(
        IllegalArgumentException.class, () -> Movement.of(DAY, MovementKind.LOST, PADDLE, 1));
    assertThrows(
        IllegalArgumentException.class, () -> Movement.of(DAY, MovementKind.RECOUNT, PADDLE, 0));
    Movement lost = Movement.of(DAY, MovementKind.LOST, PADDLE, -3);
    assertEquals(3, lost.reversed("undone").pieces());
    assertTrue(lost.reversed("undone").reverses());
    assertEquals(lost, lost.reversed("undone").reversed(""));
  }

  @Test
  void onlyALossHasACause() {
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new Movement(
                DAY,
                MovementKind.WORN,
                Optional.of(LossCause.TORN),
                PADDLE,
                -1,
                OptionalLong.empty(),
                false,
                ""));
  }

  @ParameterizedTest
  @CsvSource({
    "units,in,true",
    "units,cm,false",
    "currency,GBP,true",
    "currency,XYZ,false",
    "currency,eur,false",
    "trusted-risk,0.05,true",
    "trusted-risk,.5,true",
    "trusted-risk,1,false",
    "trusted-risk,0.00,false",
    "order-every-days,365,true",
    "order-every-days,366,false",
    "order-every-days,0,false",
    "minutes-per-cast,0.75,true",
    "minutes-per-cast,0.0,false",
    "minutes-per-cast,12,true"
  })
  void settingTakesWhatItSays(String key, String value, boolean accepted) {
    assertEquals(accepted, Setting.parse(key).orElseThrow().accepts(value));
  }

  @Test
  void settingsAreCompleteAndChecked() {
    for (Setting setting : Setting.values()) {
      assertTrue(setting.accepts(setting.standard()), setting.key());
      assertEquals(setting.standard(), Settings.standard().get(setting));
    }
    assertEquals(
        14, new Settings(Map.of(Setting.ORDER_EVERY_DAYS, "14")).days(Setting.ORDER_EVERY_DAYS));
    assertThrows(
        IllegalArgumentException.class, () -> new Settings(Map.of(Setting.UNITS, "cubits")));
    assertEquals(Optional.empty(), Setting.parse("colour"));
  }

  @Test
  void offersAndShopsAreChecked() {
    Name shop = Name.of("The Loft");
    assertThrows(
        IllegalArgumentException.class, () -> new Offer(Name.BLANK, PADDLE, 8, PRICE, true));
    assertThrows(IllegalArgumentException.class, () -> new Offer(shop, PADDLE, 0, PRICE, true));
    assertThrows(
        IllegalArgumentException.class,
        () -> new Offer(shop, PADDLE, 8, Money.zero(PRICE.currency()), true));
    assertThrows(
        IllegalArgumentException.class,
        () -> new Shop(Name.BLANK, Optional.empty(), Optional.empty(), OptionalInt.empty()));
    assertThrows(IllegalArgumentException.class, () -> new Fact.Counted(PADDLE, DAY, -1, true));
  }

  @Test
  void entryThatSaysNothingIsEmpty() {
    Entry empty = new Entry("import", "", OptionalLong.empty(), List.of(), List.of(), List.of());
    assertTrue(empty.isEmpty());
    assertFalse(
        new Entry("undo", "", OptionalLong.of(1), List.of(), List.of(), List.of()).isEmpty());
  }

  @Test
  void entryOfFactsMovesNothingAndUndoesNothing() {
    List<Fact> kept = List.of(new Fact.Kept(WORM));
    assertEquals(
        new Entry("keep", "worm", OptionalLong.empty(), List.of(), kept, List.of()),
        Entry.ofFacts("keep", "worm", kept, List.of()));
  }

  @Test
  void listedPlasticIsOneOfTheBoxWhateverItsTray() {
    Plastic grub = Plastic.of("", "grub", "white", 50);
    tell(List.of(), described("tray 1"), new Fact.Counted(grub, DAY, 0, true));
    tell(List.of(), fished(WORM, 1, 1, 1));
    assertEquals(Set.of(PADDLE, grub, WORM), shelf.book().plastics());
  }

  @Test
  void logIsByTripThenByPlaceInTheTripUpToADay() {
    Fact.Fished later = fished(WORM, 3, 1, 1);
    Fact.Fished second = fished(WORM, 2, 2, 2);
    Fact.Fished first = fished(PADDLE, 2, 1, 3);
    tell(List.of(), later, second, first);
    Book book = shelf.book();
    assertEquals(List.of(second, first), book.fished(DAY.plusDays(1)));
    assertEquals(List.of(first.stint(), second.stint()), book.log(DAY.plusDays(1)));
    assertEquals(List.of(first.stint(), second.stint(), later.stint()), book.log(DAY.plusDays(2)));
  }

  /** A stint on the given day of May. */
  private static Fact.Fished fished(Plastic plastic, int day, int ordinal, long number) {
    Stint stint =
        new Stint(
            new Trip(LocalDate.of(2026, 5, day), Name.of("Gannet Ledge")),
            Name.BLANK,
            Optional.empty(),
            plastic,
            OptionalDouble.of(30),
            OptionalInt.empty(),
            Fish.NONE,
            0,
            Optional.empty(),
            0,
            1,
            "");
    return new Fact.Fished(stint, number, ordinal, "");
  }

  @Test
  void settingsGiveNumbersAndTheCurrency() {
    Settings settings = new Settings(Map.of(Setting.TRUSTED_RISK, "0.07", Setting.CURRENCY, "GBP"));
    assertEquals(0.07, settings.number(Setting.TRUSTED_RISK));
    assertEquals(Currency.getInstance("GBP"), settings.currency());
  }

  @Test
  void settingRefusedSaysWhatItWants() {
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class, () -> new Settings(Map.of(Setting.UNITS, "cubits")));
    assertEquals("units wants mm or in: cubits", refused.getMessage());
  }

  @Test
  void offersGoByShopThenPlasticThenPack() {
    Offer single = offer("The Loft", PADDLE, 1);
    Offer pack = offer("The Loft", PADDLE, 8);
    Offer worms = offer("The Loft", WORM, 1);
    Offer elsewhere = offer("Weir Lane", PADDLE, 1);
    assertEquals(
        List.of(single, pack, worms, elsewhere),
        Stream.of(elsewhere, worms, pack, single).sorted().toList());
  }

  private static Offer offer(String shop, Plastic plastic, int packSize) {
    return new Offer(Name.of(shop), plastic, packSize, PRICE, true);
  }
}
