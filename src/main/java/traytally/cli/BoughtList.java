package traytally.cli;

import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Packs;
import traytally.plastic.Pieces;
import traytally.plastic.Plastic;
import traytally.sheet.Row;
import traytally.sheet.Rows;
import traytally.sheet.UnreadableSheetException;
import traytally.sheet.Workbook;

/**
 * A shopping list that was kept by {@code restock --save}, perhaps with counts changed or rows
 * taken out since.
 *
 * @param lines what it says was bought, in its order
 */
record BoughtList(List<Line> lines) {
  private static final Pattern WHOLE = Pattern.compile("(\\d{1,4})([.,]0*)?");
  private static final Pattern PRICE = Pattern.compile("(\\d{1,6})(?:[.,](\\d{1,2}))?");
  private static final List<String> WANTED =
      List.of("shop", "body", "colour", "packs", "pack_size");
  private static final int MOST_PACK_SIZE = 1000;

  BoughtList {
    lines = List.copyOf(lines);
  }

  /**
   * One row.
   *
   * @param mark what it is known by when the parcel is booked again: the list's day and the shop
   */
  record Line(
      Name shop,
      Plastic plastic,
      Packs packs,
      int packSize,
      Optional<Money> packPrice,
      String mark) {

    Pieces pieces() {
      return packs.opened(packSize);
    }
  }

  /** Reads a list; rows without packs were not bought and are left out. */
  static BoughtList read(Path file) {
    if (!Files.isRegularFile(file)) {
      throw new Refusal(Exit.NO_INPUT, "there is no file " + file + ".");
    }
    try (Workbook workbook = Workbook.open(file)) {
      if (workbook.sheets().isEmpty()) {
        throw refused(file, "it is empty");
      }
      try (Rows rows = workbook.rows(workbook.sheets().get(0))) {
        return read(file, rows);
      }
    } catch (UnreadableSheetException e) {
      throw new Refusal(Exit.DATA, file + ": " + e.getMessage(), e);
    }
  }

  private static BoughtList read(Path file, Rows rows) {
    Map<String, Integer> columns = new HashMap<>();
    List<Line> lines = new ArrayList<>();
    while (rows.hasNext()) {
      Row row = rows.next();
      if (columns.isEmpty()) {
        for (int c = 0; c < row.cells().size(); c++) {
          String key = row.cell(c).shown().strip().toLowerCase(Locale.ROOT).replace(' ', '_');
          columns.put(key, c);
        }
        if (!columns.keySet().containsAll(WANTED)) {
          throw refused(file, "its first row does not name " + String.join(", ", WANTED));
        }
      } else {
        new Reader(file, columns, row).line().ifPresent(lines::add);
      }
    }
    return new BoughtList(lines);
  }

  private static Refusal refused(Path file, String why) {
    return new Refusal(
        Exit.DATA, file + " is not a list kept by traytally restock --save FILE: " + why + ".");
  }

  /** Reads one row. */
  private record Reader(Path file, Map<String, Integer> columns, Row row) {

    private String text(String column) {
      Integer at = columns.get(column);
      return at == null ? "" : row.cell(at).shown().strip();
    }

    private int whole(String column) {
      Matcher number = WHOLE.matcher(text(column));
      if (!number.matches()) {
        throw wrong(column, "a whole number");
      }
      return Integer.parseInt(number.group(1));
    }

    private Refusal wrong(String column, String wanted) {
      return new Refusal(
          Exit.DATA,
          String.format(
              Locale.ROOT,
              "%s, row %d: \"%s\" under %s is not %s. Nothing was booked.",
              file,
              row.number(),
              text(column),
              column,
              wanted));
    }

    Optional<Line> line() {
      if (text("packs").isEmpty() || whole("packs") == 0) {
        return Optional.empty();
      }
      int size = whole("pack_size");
      if (size < 1 || size > MOST_PACK_SIZE) {
        throw wrong("pack_size", "from 1 to 1000 pieces");
      }
      if (text("body").isEmpty() || text("colour").isEmpty()) {
        throw wrong("colour", "a plastic: it takes a body and a colour");
      }
      int length = text("length_mm").isEmpty() ? 0 : whole("length_mm");
      Plastic plastic = Plastic.of(text("maker"), text("body"), text("colour"), length);
      String list = text("list").isEmpty() ? "a shopping list" : "the list of " + text("list");
      Name shop = Name.of(text("shop"));
      return Optional.of(
          new Line(shop, plastic, new Packs(whole("packs")), size, price(), list + ", " + shop));
    }

    private Optional<Money> price() {
      if (text("pack_price").isEmpty() || text("currency").isEmpty()) {
        return Optional.empty();
      }
      Matcher price = PRICE.matcher(text("pack_price"));
      if (!price.matches()) {
        throw wrong("pack_price", "a price such as 5.20");
      }
      String cents = Optional.ofNullable(price.group(2)).orElse("0");
      BigDecimal units = new BigDecimal(price.group(1) + "." + cents);
      return Optional.of(Money.of(units, currency()));
    }

    private Currency currency() {
      try {
        return Currency.getInstance(text("currency").toUpperCase(Locale.ROOT));
      } catch (IllegalArgumentException e) {
        throw wrong("currency", "an ISO 4217 currency such as EUR");
      }
    }
  }
}
