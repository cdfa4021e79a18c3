package traytally.export;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Random;
import traytally.ledger.Batch;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Movement;
import traytally.ledger.MovementKind;
import traytally.ledger.Offer;
import traytally.ledger.Posting;
import traytally.ledger.Recorded;
import traytally.ledger.Setting;
import traytally.ledger.Shop;
import traytally.ledger.Undo;
import traytally.plastic.Colour;
import traytally.plastic.Finish;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.plastic.Swatch;
import traytally.store.Box;
import traytally.trip.Clarity;
import traytally.trip.Fish;
import traytally.trip.LossCause;
import traytally.trip.Months;
import traytally.trip.PlannedTrip;
import traytally.trip.Stint;
import traytally.trip.Trip;

/** A box in which anything that can be told was told, and some of it taken back. */
final class RandomBox {
  static final Clock CLOCK = Clock.fixed(Instant.parse("2026-05-01T12:00:00Z"), ZoneOffset.UTC);
  private static final LocalDate MAY = LocalDate.of(2026, 5, 1);
  private static final List<String> WORDS =
      List.of(
          "chalk",
          "=SUM(A1)",
          "'-2 oil",
          "''",
          "a,b;c",
          "say \"when\"",
          "grün ✨",
          "+44",
          "@x",
          "-",
          "7",
          "true",
          "null",
          "\u200fעברית",
          "墨",
          "line\r\nbreak",
          " lead",
          "tab\tbed",
          "\\n");

  private final Random random;
  private final Box box;
  private long nextStint = 1;

  private RandomBox(Random random, Box box) {
    this.random = random;
    this.box = box;
  }

  /** Fills a new box with {@code batches} batches. */
  static void fill(Path file, long seed, int batches) {
    try (Box box = Box.open(file, CLOCK)) {
      RandomBox filled = new RandomBox(new Random(seed), box);
      for (int i = 0; i < batches; i++) {
        filled.step();
      }
    }
  }

  private void step() {
    Book book = box.book();
    List<Batch> standing = book.batches().stream().filter(Batch::stands).toList();
    if (!standing.isEmpty() && random.nextInt(4) == 0) {
      Undo undo = box.undo(standing.get(random.nextInt(standing.size())).id());
      if (undo.blockers(book).isEmpty()) {
        box.record(undo.entry(book));
        return;
      }
    }
    nextStint = Math.max(nextStint, book.nextStint());
    Posting posting = new Posting(book.ledger(), book.recorded(Fact.Counted.class));
    List<Fact> facts = new ArrayList<>();
    for (int i = 0; i <= random.nextInt(4); i++) {
      Fact fact = fact();
      facts.add(fact);
      if (fact instanceof Fact.Counted count) {
        posting.count(count);
      } else if (fact instanceof Fact.Fished fished) {
        posting.fish(fished);
      }
    }
    posting.post(
        Movement.of(day(), MovementKind.BOUGHT, plastic(), 1 + random.nextInt(9)).withNote(text()));
    List<Recorded<? extends Fact>> gone = new ArrayList<>();
    if (!book.recorded(Fact.Planned.class).isEmpty()) {
      gone.add(book.recorded(Fact.Planned.class).get(0));
    }
    box.record(new Entry(text(), text(), OptionalLong.empty(), posting.movements(), facts, gone));
  }

  private Fact fact() {
    return switch (random.nextInt(13)) {
      case 0 -> new Fact.Counted(plastic(), day(), random.nextInt(9), random.nextBoolean());
      case 1 -> new Fact.Fished(stint(), nextStint++, 1 + random.nextInt(3), text());
      case 2 ->
          new Fact.Planned(
              new PlannedTrip(
                  day(), name(), name(), clarity(), 0.1 + random.nextDouble(), 2, text()),
              text());
      case 3 -> new Fact.Offered(new Offer(named(), plastic(), 8, money(), random.nextBoolean()));
      case 4 ->
          new Fact.Traded(
              new Shop(
                  named(),
                  maybe(money()),
                  maybe(money()),
                  random.nextBoolean() ? OptionalInt.empty() : OptionalInt.of(3)));
      case 5 ->
          new Fact.Coloured(
              new Colour(
                  named(),
                  maybe(new Swatch(random.nextInt(0x1000000))),
                  maybe(new Swatch(0)),
                  maybe(random.nextBoolean() ? Finish.SOLID : Finish.FLAKE)));
      case 6 -> new Fact.Described(plastic(), text(), OptionalInt.of(6), maybe(money()), text());
      case 7 -> new Fact.Kept(plastic());
      case 8 -> new Fact.Agreed(named(), named());
      case 9 -> new Fact.Mapped(text(), text());
      case 10 -> new Fact.Chosen(Setting.DELIVERY_DAYS, String.valueOf(1 + random.nextInt(300)));
      default ->
          new Fact.Closed(
              named(), Months.parse(String.valueOf(1 + random.nextInt(12))).orElseThrow());
    };
  }

  private Stint stint() {
    return new Stint(
        new Trip(day(), name()),
        name(),
        clarity(),
        plastic(),
        random.nextBoolean() ? OptionalDouble.empty() : OptionalDouble.of(random.nextDouble() * 99),
        random.nextBoolean() ? OptionalInt.empty() : OptionalInt.of(random.nextInt(99)),
        new Fish(4, 3, 2, 1),
        random.nextInt(3),
        maybe(LossCause.TORN),
        random.nextInt(2),
        1,
        text());
  }

  private <T> Optional<T> maybe(T value) {
    return random.nextBoolean() ? Optional.empty() : Optional.of(value);
  }

  private Optional<Clarity> clarity() {
    return maybe(random.nextBoolean() ? Clarity.CLEAR : Clarity.DIRTY);
  }

  private Money money() {
    return Money.of(BigDecimal.valueOf(random.nextInt(10_000), 2), Currency.getInstance("GBP"));
  }

  private LocalDate day() {
    return MAY.minusDays(random.nextInt(60));
  }

  private String text() {
    return random.nextInt(4) == 0 ? "" : WORDS.get(random.nextInt(WORDS.size()));
  }

  private Name name() {
    return Name.of(text());
  }

  private Name named() {
    return Name.of("n" + WORDS.get(random.nextInt(WORDS.size())));
  }

  private Plastic plastic() {
    return Plastic.of(
        random.nextInt(3) == 0 ? "" : "Plimwick",
        "paddle" + random.nextInt(2),
        "c " + WORDS.get(random.nextInt(WORDS.size())),
        random.nextInt(3) * 50);
  }
}
