package traytally.intake;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Numbers under headers that say nothing, beside something that no column was read to tell. */
final class Unread {
  private static final List<Field> LOST =
      List.of(
          Field.LOST,
          Field.LOST_HOW,
          Field.SNAGGED,
          Field.BITTEN_OFF,
          Field.TORN,
          Field.CAST_OFF,
          Field.WORN);

  private static final List<Field> TIME =
      List.of(Field.MINUTES, Field.CASTS, Field.START, Field.END);

  /** Of fish or pieces of one stint (an assumption). */
  private static final BigDecimal MOST = BigDecimal.valueOf(99);

  private final Table table;
  private final Under under;

  private Unread(Table table) {
    this.table = table;
    this.under = new Under(table.sheet(), table.firstRow());
  }

  /**
   * Says of a log or a list of prices which columns may tell what is taken as none, or as usual.
   */
  static void say(Table table) {
    Unread unread = new Unread(table);
    List<String> untold = unread.untold();
    List<String> headers = untold.isEmpty() ? List.of() : unread.headers();
    if (!headers.isEmpty()) {
      table.assumeOnce(
          "No column was read that tells "
              + String.join(" or ", untold)
              + ", and these were passed over: "
              + String.join(", ", headers.stream().map(h -> "\"" + h + "\"").toList())
              + ". If one of them tells it, pass --map '"
              + headers.get(0)
              + "="
              + untold.get(0)
              + "'.");
    }
  }

  private List<String> untold() {
    List<String> untold = new ArrayList<>();
    if (table.kind() == ListKind.PRICES && !table.tells(Field.IN_STOCK)) {
      untold.add(Field.IN_STOCK.word());
    }
    if (table.kind() == ListKind.TRIPS) {
      if (!table.tells(Field.TAKES)) {
        untold.add(Field.TAKES.word());
      }
      if (!table.tells(Field.LANDED) && !table.tells(Field.HOOKED)) {
        untold.add(Field.LANDED.word());
      }
      if (LOST.stream().noneMatch(table::tells)) {
        untold.add(Field.LOST.word());
      }
      if (TIME.stream().noneMatch(table::tells)) {
        untold.add(Field.MINUTES.word());
      }
    }
    return untold;
  }

  /** Whether a column holds counts as small as those of fish: no pressure of the air. */
  private boolean mayBeFish(int column) {
    return under.counts(column)
        && under.filled(column).stream()
            .map(cell -> Numbers.parse(Numbers.plain(cell.shown())))
            .noneMatch(n -> n.filter(number -> number.compareTo(MOST) > 0).isPresent());
  }

  /** Whether it counts the packs that were bought, as on a receipt. */
  private boolean isPacks(int column) {
    return table.kind() == ListKind.PRICES
        && HeaderWords.isUsual(table.headers().get(column).folded(), Field.PACKS, ListKind.BOX);
  }

  private List<String> headers() {
    return IntStream.range(0, table.headers().size())
        .filter(table.guess()::leaves)
        .filter(column -> !table.headers().get(column).folded().isEmpty())
        .filter(column -> !HeaderWords.isPassedOver(table.headers().get(column).folded()))
        .filter(column -> !isPacks(column))
        .filter(column -> !under.filled(column).isEmpty())
        .filter(column -> under.answers(column) || mayBeFish(column))
        .mapToObj(column -> table.headers().get(column).text())
        .toList();
  }
}
