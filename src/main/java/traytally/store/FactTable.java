package traytally.store;

import java.sql.SQLException;
import java.util.Collections;
import java.util.List;
import traytally.ledger.Fact;
import traytally.ledger.Offer;
import traytally.ledger.Setting;
import traytally.ledger.Shop;
import traytally.plastic.Colour;
import traytally.plastic.Finish;
import traytally.plastic.Tone;
import traytally.trip.Clarity;
import traytally.trip.Fish;
import traytally.trip.Leaning;
import traytally.trip.LossCause;
import traytally.trip.Months;
import traytally.trip.PlannedTrip;
import traytally.trip.Stint;
import traytally.trip.Trip;

/**
 * How one kind of fact lies in its table.
 *
 * @param columns its own columns, in the order that {@code writer} fills and {@code reader} reads
 */
record FactTable<F extends Fact>(
    String name, Class<F> kind, List<String> columns, Writer<F> writer, Reader<F> reader) {

  /** Of the name alone: a table is looked up for each of a million facts. */
  @Override
  public int hashCode() {
    return name.hashCode();
  }

  /** Fills a fact's own columns. */
  interface Writer<F> {
    void write(F fact, Slots slots) throws SQLException;
  }

  /** Reads a fact from its own columns. */
  interface Reader<F> {
    F read(Cells cells) throws SQLException;
  }

  private static final FactTable<Fact.Counted> COUNTED =
      new FactTable<>(
          "counted",
          Fact.Counted.class,
          List.of("plastic", "date", "pieces", "listed"),
          (c, s) -> s.plastic(c.plastic()).date(c.date()).whole(c.pieces()).flag(c.listed()),
          c -> new Fact.Counted(c.plastic(), c.date(), c.whole(), c.flag()));

  static final FactTable<Fact.Fished> STINT =
      new FactTable<>(
          "stint",
          Fact.Fished.class,
          List.of(
              "number",
              "ordinal",
              "source",
              "date",
              "water",
              "species",
              "clarity",
              "plastic",
              "minutes",
              "casts",
              "follows",
              "takes",
              "hooked",
              "landed",
              "lost",
              "lost_how",
              "worn",
              "rods",
              "note"),
          FactTable::writeStint,
          FactTable::readStint);

  private static final FactTable<Fact.Planned> PLAN =
      new FactTable<>(
          "plan",
          Fact.Planned.class,
          List.of("date", "water", "species", "clarity", "hours", "rods", "note", "source"),
          FactTable::writePlan,
          c ->
              new Fact.Planned(
                  new PlannedTrip(
                      c.date(),
                      c.name(),
                      c.name(),
                      c.wordIfAny(Clarity.class),
                      c.real(),
                      c.whole(),
                      c.text()),
                  c.text()));

  private static final FactTable<Fact.Offered> OFFER =
      new FactTable<>(
          "offer",
          Fact.Offered.class,
          List.of(
              "shop",
              "plastic",
              "pack_size",
              "pack_price_cents",
              "pack_price_currency",
              "in_stock"),
          (o, s) ->
              s.name(o.offer().shop())
                  .plastic(o.offer().plastic())
                  .whole(o.offer().packSize())
                  .money(o.offer().packPrice())
                  .flag(o.offer().inStock()),
          c -> new Fact.Offered(new Offer(c.name(), c.plastic(), c.whole(), c.money(), c.flag())));

  private static final FactTable<Fact.Traded> SHOP =
      new FactTable<>(
          "shop",
          Fact.Traded.class,
          List.of(
              "name",
              "postage_cents",
              "postage_currency",
              "free_over_cents",
              "free_over_currency",
              "delivery_days"),
          (t, s) ->
              s.name(t.shop().name())
                  .money(t.shop().postage())
                  .money(t.shop().freePostageOver())
                  .whole(t.shop().deliveryDays()),
          c -> new Fact.Traded(new Shop(c.name(), c.moneyIfAny(), c.moneyIfAny(), c.wholeIfAny())));

  private static final FactTable<Fact.Coloured> COLOUR =
      new FactTable<>(
          "colour",
          Fact.Coloured.class,
          List.of("name", "base", "flake", "finish"),
          FactTable::writeColour,
          FactTable::readColour);

  private static final FactTable<Fact.ColourWord> COLOUR_WORD =
      new FactTable<>(
          "colour_word",
          Fact.ColourWord.class,
          List.of("word", "swatch"),
          (w, s) -> s.name(w.word()).swatch(w.swatch()),
          c -> new Fact.ColourWord(c.name(), c.swatchIfAny()));

  private static final FactTable<Fact.Guided> GUIDED =
      new FactTable<>(
          "guided",
          Fact.Guided.class,
          List.of("species", "clarity", "months", "tone", "strength"),
          FactTable::writeLeaning,
          c ->
              new Fact.Guided(
                  new Leaning(
                      c.name(),
                      c.wordIfAny(Clarity.class),
                      Months.parse(c.text()),
                      c.word(Tone.class),
                      c.whole())));

  private static final FactTable<Fact.Described> DESCRIBED =
      new FactTable<>(
          "described",
          Fact.Described.class,
          List.of(
              "plastic", "tray", "pack_size", "pack_price_cents", "pack_price_currency", "note"),
          (d, s) ->
              s.plastic(d.plastic())
                  .text(d.tray())
                  .whole(d.packSize())
                  .money(d.packPrice())
                  .text(d.note()),
          c -> new Fact.Described(c.plastic(), c.text(), c.wholeIfAny(), c.moneyIfAny(), c.text()));

  private static final FactTable<Fact.Kept> KEPT =
      new FactTable<>(
          "kept",
          Fact.Kept.class,
          List.of("plastic"),
          (k, s) -> s.plastic(k.plastic()),
          c -> new Fact.Kept(c.plastic()));

  private static final FactTable<Fact.Agreed> AGREED =
      new FactTable<>(
          "agreed",
          Fact.Agreed.class,
          List.of("spelling", "name"),
          (a, s) -> s.name(a.spelling()).name(a.name()),
          c -> new Fact.Agreed(c.name(), c.name()));

  private static final FactTable<Fact.Mapped> MAPPED =
      new FactTable<>(
          "mapped",
          Fact.Mapped.class,
          List.of("headers", "reading"),
          (m, s) -> s.text(m.headers()).text(m.reading()),
          c -> new Fact.Mapped(c.text(), c.text()));

  static final FactTable<Fact.Chosen> CHOSEN =
      new FactTable<>(
          "chosen",
          Fact.Chosen.class,
          List.of("setting", "value"),
          (x, s) -> s.word(x.setting()).text(x.value()),
          c -> new Fact.Chosen(c.word(Setting.class), c.text()));

  private static final FactTable<Fact.Closed> CLOSED =
      new FactTable<>(
          "closed",
          Fact.Closed.class,
          List.of("water", "months"),
          (x, s) -> s.name(x.water()).text(x.months().text()),
          c -> new Fact.Closed(c.name(), c.months()));

  /** One of each kind. */
  static final List<FactTable<? extends Fact>> ALL =
      List.of(
          COUNTED,
          STINT,
          PLAN,
          OFFER,
          SHOP,
          COLOUR,
          DESCRIBED,
          KEPT,
          AGREED,
          MAPPED,
          CHOSEN,
          CLOSED,
          COLOUR_WORD,
          GUIDED);

  /** The table of a fact's kind. */
  static FactTable<? extends Fact> of(Fact fact) {
    for (FactTable<? extends Fact> table : ALL) {
      if (table.kind.isInstance(fact)) {
        return table;
      }
    }
    throw new IllegalArgumentException("no table keeps " + fact);
  }

  void write(Fact fact, Slots slots) throws SQLException {
    writer.write(kind.cast(fact), slots);
  }

  String insert() {
    return "INSERT INTO %s (added_by, %s) VALUES (?%s)"
        .formatted(
            name,
            String.join(", ", columns),
            String.join("", Collections.nCopies(columns.size(), ", ?")));
  }

  /** Its rows as id, first batch, withdrawing batch, own columns; {@code where} picks them. */
  String select(String where) {
    return "SELECT id, added_by, withdrawn_by, %s FROM %s WHERE %s ORDER BY id"
        .formatted(String.join(", ", columns), name, where);
  }

  String withdraw() {
    return "UPDATE %s SET withdrawn_by = ? WHERE id = ? AND withdrawn_by IS NULL".formatted(name);
  }

  String putBack() {
    return "UPDATE %s SET withdrawn_by = NULL WHERE id = ?".formatted(name);
  }

  private static void writeStint(Fact.Fished fished, Slots slots) throws SQLException {
    Stint stint = fished.stint();
    slots.whole(fished.number()).whole(fished.ordinal()).text(fished.source());
    slots.date(stint.trip().date()).name(stint.trip().water()).name(stint.species());
    slots.word(stint.clarity()).plastic(stint.plastic());
    slots.real(stint.minutes()).whole(stint.casts());
    Fish fish = stint.fish();
    slots.whole(fish.follows()).whole(fish.takes()).whole(fish.hooked()).whole(fish.landed());
    slots.whole(stint.lost()).word(stint.lostHow()).whole(stint.worn());
    slots.whole(stint.rods()).text(stint.note());
  }

  private static Fact.Fished readStint(Cells cells) throws SQLException {
    long number = cells.id();
    int ordinal = cells.whole();
    String source = cells.note();
    Stint stint =
        new Stint(
            new Trip(cells.date(), cells.name()),
            cells.name(),
            cells.wordIfAny(Clarity.class),
            cells.plastic(),
            cells.realIfAny(),
            cells.wholeIfAny(),
            new Fish(cells.whole(), cells.whole(), cells.whole(), cells.whole()),
            cells.whole(),
            cells.wordIfAny(LossCause.class),
            cells.whole(),
            cells.whole(),
            cells.note());
    return new Fact.Fished(stint, number, ordinal, source);
  }

  private static void writePlan(Fact.Planned planned, Slots slots) throws SQLException {
    PlannedTrip trip = planned.trip();
    slots.date(trip.date()).name(trip.water()).name(trip.species()).word(trip.clarity());
    slots.real(trip.hours()).whole(trip.rods()).text(trip.note()).text(planned.source());
  }

  private static void writeColour(Fact.Coloured coloured, Slots slots) throws SQLException {
    Colour colour = coloured.colour();
    slots.name(colour.name());
    slots.swatch(colour.base()).swatch(colour.flake()).word(colour.finish());
  }

  private static Fact.Coloured readColour(Cells cells) throws SQLException {
    return new Fact.Coloured(
        new Colour(
            cells.name(), cells.swatchIfAny(), cells.swatchIfAny(), cells.wordIfAny(Finish.class)));
  }

  private static void writeLeaning(Fact.Guided guided, Slots slots) throws SQLException {
    Leaning leaning = guided.leaning();
    slots.name(leaning.species()).word(leaning.clarity());
    slots
        .text(leaning.months().map(Months::text).orElse(""))
        .word(leaning.tone())
        .whole(leaning.strength());
  }
}
