package traytally.intake;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.ledger.Book;
import traytally.ledger.Fact.Offered;
import traytally.ledger.Fact.Traded;
import traytally.ledger.Offer;
import traytally.ledger.Recorded;
import traytally.ledger.Shop;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.sheet.Cell;

/** A list of shops' prices; an offer replaces the last one for the same pack of the same shop. */
final class PriceList {
  private static final int SLOWEST_DAYS = 365;

  private static final Set<String> LARGE_UNITS =
      Set.of("EUR", "GBP", "USD", "CHF", "AUD", "CAD", "NZD");

  /** No pack of soft plastics costs more in such a currency (an assumption). */
  private static final BigDecimal DEAREST = new BigDecimal("300");

  /** Headers of a price for one piece. */
  static final Set<String> EACH =
      Set.of(
          "each",
          "ea",
          "price ea",
          "price each",
          "each price",
          "cost each",
          "per piece",
          "price per piece",
          "price a piece",
          "a piece",
          "each piece");

  private record Key(Name shop, Plastic plastic, int packSize) {}

  /** One row as read, its sums without a currency where it states none. */
  private record Line(
      ListRow row,
      Name shop,
      Plastic plastic,
      int packSize,
      Amounts.Written price,
      boolean inStock) {}

  /** A shop's terms as one row states them; the row's price may be another matter. */
  private record Terms(
      Name shop,
      Optional<Amounts.Written> postage,
      Optional<Amounts.Written> freeOver,
      OptionalInt days) {}

  private final Table table;
  private final Book book;
  private final KnownPlastics known;
  private final RowReader reader;
  private final Currency own;
  private final List<Line> lines = new ArrayList<>();
  private final Map<Name, List<Terms>> terms = new LinkedHashMap<>();
  private int termsAlone;
  private Optional<Currency> listed = Optional.empty();
  private final Map<Name, Currency> ofShop = new HashMap<>();

  PriceList(Table table, Book book, ImportOptions options, KnownPlastics known, LocalDate today) {
    this.table = table;
    this.book = book;
    this.known = known;
    this.own = book.settings().currency();
    this.reader = new RowReader(table, ColumnHabits.of(table, options, today), today);
    Unread.say(table);
  }

  void read() {
    for (ListRow row : table.rows()) {
      reader.begin(row);
      line(row).ifPresent(lines::add);
    }
    currencies();
  }

  int taken() {
    return lines.size() + termsAlone;
  }

  private static final Pattern DEAL =
      Pattern.compile("(\\d{1,3})\\s*(?:pcs|pieces)?\\s*(?:for|@|at|=|/)\\s*(\\D{0,3}\\d.*)");

  private Optional<Line> line(ListRow row) {
    Name shop = known.agreed(reader.nameNeeded(Field.SHOP));
    if (!shop.isBlank()) {
      terms
          .computeIfAbsent(shop, s -> new ArrayList<>())
          .add(
              new Terms(
                  shop,
                  reader.amountWritten(Field.POSTAGE, own),
                  reader.amountWritten(Field.FREE_OVER, own),
                  reader.countLightly(Field.DELIVERY_DAYS, SLOWEST_DAYS)));
    }
    if (table.guess().tellsTermsAlone()) {
      termsAlone += reader.failed() ? 0 : 1;
      return Optional.empty();
    }
    apart(row);
    Name body = known.agreed(reader.nameNeeded(Field.BODY));
    Name colour = known.agreed(reader.nameNeeded(Field.COLOUR));
    Name maker = known.agreed(reader.name(Field.MAKER));
    int lengthMm = reader.lengthMm();
    OptionalInt packSize = reader.pieces(Field.PACK_SIZE, OptionalInt.of(1));
    if (!reader.failed() && packSize.orElse(0) < 1) {
      reader.problem(
          Field.PACK_SIZE,
          packSize.isEmpty()
              ? "The pack size is missing. Write how many pieces a pack holds."
              : "is no pack size. Write how many pieces a pack holds.");
    }
    Optional<Amounts.Written> price =
        reader
            .amount(Field.PACK_PRICE, own)
            .map(this::inCurrency)
            .map(sum -> ofThePack(sum, packSize.orElse(1)));
    if (!reader.failed() && price.isEmpty()) {
      reader.problem(Field.PACK_PRICE, "The price is missing. Write the price of one pack.");
    }
    if (price.filter(PriceList::isTooDear).isPresent()) {
      reader.problem(Field.PACK_PRICE, "is more than any pack costs. Write the price of one pack.");
    }
    if (price.filter(p -> Money.of(p.units(), own).cents() <= 0).isPresent()) {
      reader.problem(Field.PACK_PRICE, "is no price. Write the price of one pack, above 0.");
    }
    if (reader.failed()) {
      return Optional.empty();
    }
    Plastic words = new Plastic(maker, body, colour, lengthMm);
    List<Plastic> fitting = known.fittingRoughly(words);
    sayUnless(fitting, words);
    return Optional.of(
        new Line(
            row,
            shop,
            fitting.size() == 1 ? fitting.get(0) : words,
            packSize.orElseThrow(),
            price.orElseThrow(),
            reader.word(Field.IN_STOCK, Words::yesNo).orElse(true)));
  }

  /** {@code 8 for £4.40} tells the pieces and the price. */
  private void apart(ListRow row) {
    Matcher deal = DEAL.matcher(row.text(Field.PACK_PRICE));
    if (row.isBlank(Field.PACK_SIZE) && deal.matches()) {
      int column = row.place(Field.PACK_PRICE).column();
      row.put(Field.PACK_SIZE, Cell.text(deal.group(1)), column);
      row.put(Field.PACK_PRICE, Cell.text(deal.group(2)), column);
      table.assumeOnce("The pieces of a pack were read from the price: 8 for £4.40.");
    }
  }

  /** Whether a sum in a currency of coins worth about a euro is a slip of the decimal mark. */
  private static boolean isTooDear(Amounts.Written sum) {
    return sum.currency().map(Currency::getCurrencyCode).filter(LARGE_UNITS::contains).isPresent()
        && sum.units().compareTo(DEAREST) > 0;
  }

  /** The price of the whole pack where the column tells that of a piece. */
  private Amounts.Written ofThePack(Amounts.Written sum, int packSize) {
    if (table.header(Field.PACK_PRICE).filter(h -> EACH.contains(h.folded())).isEmpty()) {
      return sum;
    }
    if (countsPacks()) {
      table.assume("Packs are counted beside the prices: each was taken as that of a pack.");
      return sum;
    }
    table.assume("Prices are of a piece: each was taken times the pieces of its pack.");
    return new Amounts.Written(sum.units().multiply(BigDecimal.valueOf(packSize)), sum.currency());
  }

  /** Whether the packs bought are counted, as on a receipt: each is then a pack. */
  private boolean countsPacks() {
    return table.headers().stream()
        .anyMatch(header -> HeaderWords.isUsual(header.folded(), Field.PACKS, ListKind.BOX));
  }

  /** A price of nothing in the box is of use if it is to be tried, and may be a slip. */
  private void sayUnless(List<Plastic> fitting, Plastic words) {
    if (fitting.isEmpty()) {
      known
          .slip(words)
          .ifPresent(
              slip ->
                  reader.note(
                      slip.field(),
                      "("
                          + words
                          + ") is not in the box list; its price was taken. "
                          + slip.question()));
    } else if (fitting.size() > 1) {
      reader.note(
          Field.BODY,
          "may be any of "
              + KnownPlastics.several(fitting)
              + ". Its price was taken for none of them: write the maker and the length.");
    }
  }

  /** The sum with the currency of its own mark, else of its row's or its column's. */
  private Amounts.Written inCurrency(Amounts.Written sum) {
    String word = reader.text(Field.CURRENCY);
    Optional<Currency> column = Amounts.currency(word, own);
    if (!word.isEmpty() && column.isEmpty()) {
      reader.problem(Field.CURRENCY, "is no currency known here. Write its code, such as EUR.");
    }
    Optional<Currency> header =
        table
            .header(Field.PACK_PRICE)
            .flatMap(ColumnHeader::unit)
            .flatMap(unit -> Amounts.currency(unit, own));
    return new Amounts.Written(sum.units(), sum.currency().or(() -> column).or(() -> header));
  }

  /** Settles the currency of prices that state none, or refuses them where it may be several. */
  private void currencies() {
    List<Currency> stated =
        lines.stream().flatMap(line -> line.price().currency().stream()).distinct().toList();
    for (Line line : lines) {
      line.price().currency().ifPresent(currency -> ofShop.putIfAbsent(line.shop(), currency));
    }
    boolean untold =
        lines.stream()
            .anyMatch(l -> l.price().currency().isEmpty() && !ofShop.containsKey(l.shop()));
    if (stated.size() > 1 && untold) {
      throw new ListRefusedException(
          table.sheet().source()
              + ": some prices are in "
              + String.join(
                  " and ", stated.stream().map(Currency::getCurrencyCode).sorted().toList())
              + ", and others say no currency. Write it beside each, or in a column Currency.");
    }
    Optional<Currency> titled =
        table.titles().stream().flatMap(t -> Amounts.ofFormat(t, own).stream()).findFirst();
    listed = stated.stream().findFirst().or(() -> titled);
    if (lines.stream().anyMatch(line -> line.price().currency().isEmpty())) {
      String code = listed.orElse(own).getCurrencyCode();
      table.assume(
          stated.size() > 1
              ? "Prices without a currency were read in that of their shop's others."
              : "Prices without a currency were read as "
                  + code
                  + (!stated.isEmpty()
                      ? ", like the others."
                      : titled.isPresent()
                          ? ", as the title says."
                          : ", the currency of the settings."));
    }
  }

  private Money money(Amounts.Written sum, Name shop) {
    Currency usual = ofShop.getOrDefault(shop, listed.orElse(own));
    return Money.of(sum.units(), sum.currency().orElse(usual));
  }

  void apply(Changes changes) {
    Map<Key, Offer> offers = new LinkedHashMap<>();
    for (Line line : lines) {
      Offer offer =
          new Offer(
              line.shop(),
              line.plastic(),
              line.packSize(),
              money(line.price(), line.shop()),
              line.inStock());
      Offer other = offers.getOrDefault(key(offer), offer);
      if (!other.equals(offer)) {
        reader.begin(line.row());
        reader.note(
            Field.PACK_PRICE, "differs from a row further up for the same pack; this one counts.");
      }
      offers.put(key(offer), offer);
    }
    Map<Key, List<Recorded<Offered>>> before = new HashMap<>();
    for (Recorded<Offered> offered : book.recorded(Offered.class)) {
      before.computeIfAbsent(key(offered.what().offer()), k -> new ArrayList<>()).add(offered);
    }
    int changed = 0;
    for (Map.Entry<Key, Offer> entry : offers.entrySet()) {
      List<Recorded<Offered>> old = before.getOrDefault(entry.getKey(), List.of());
      if (old.stream().noneMatch(o -> o.what().offer().equals(entry.getValue()))) {
        old.forEach(changes::withdraw);
        changes.add(new Offered(entry.getValue()));
        changed++;
      }
    }
    trade(changes);
    if (changed > 0) {
      changes.summarise(table.sheet().source(), changed, "price", "noted");
    }
  }

  private static Key key(Offer offer) {
    return new Key(offer.shop(), offer.plastic(), offer.packSize());
  }

  private void trade(Changes changes) {
    Map<Name, Recorded<Traded>> before = new HashMap<>();
    book.recorded(Traded.class).forEach(t -> before.put(t.what().shop().name(), t));
    terms.forEach(
        (name, rows) -> {
          Optional<Recorded<Traded>> old = Optional.ofNullable(before.get(name));
          Shop nothing = new Shop(name, Optional.empty(), Optional.empty(), OptionalInt.empty());
          Shop was = old.map(t -> t.what().shop()).orElse(nothing);
          Shop now = terms(name, rows, was);
          if (!now.equals(was)) {
            old.ifPresent(changes::withdraw);
            changes.add(new Traded(now));
          }
        });
  }

  /** A shop's terms as first stated in the list; what it does not state stays as it was. */
  private Shop terms(Name name, List<Terms> rows, Shop was) {
    List<Money> postages = stated(name, rows.stream().flatMap(l -> l.postage().stream()).toList());
    List<Money> frees = stated(name, rows.stream().flatMap(l -> l.freeOver().stream()).toList());
    List<Integer> days =
        rows.stream()
            .filter(l -> l.days().isPresent())
            .map(l -> l.days().getAsInt())
            .distinct()
            .toList();
    if (postages.size() > 1 || frees.size() > 1 || days.size() > 1) {
      table.assume(name + " states its terms in several ways: the first counts.");
    }
    return new Shop(
        name,
        postages.stream().findFirst().or(was::postage),
        frees.stream().findFirst().or(was::freePostageOver),
        days.isEmpty() ? was.deliveryDays() : OptionalInt.of(days.get(0)));
  }

  private List<Money> stated(Name shop, List<Amounts.Written> sums) {
    return sums.stream().map(sum -> money(sum, shop)).distinct().toList();
  }
}
