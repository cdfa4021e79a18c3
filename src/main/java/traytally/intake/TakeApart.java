package traytally.intake;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.intake.ListRow.Place;
import traytally.sheet.Cell;

/** Takes cells apart that tell more than their header says. */
final class TakeApart {
  /** Of the rows, the share that must come apart alike: all but one in five (an assumption). */
  private static final double AGREE = 0.8;

  private static final Pattern POSTAGE_AND_FREE =
      Pattern.compile(
          "(.*?)[\\s,;(-]*\\bfree\\b[a-z &]*?\\b(?:over|above|from)\\s+([^()]*\\d[^()]*?)\\)?",
          Pattern.CASE_INSENSITIVE);

  private final Table table;
  private final Map<String, Anatomy> anatomies = new HashMap<>();
  private final Map<String, Optional<Anatomy>> within = new HashMap<>();

  TakeApart(Table table) {
    this.table = table;
  }

  /** Lengths out of body styles and colours, and plastics told in one breath. */
  void run() {
    new LinesInCells(table).run();
    if (table.kind() == ListKind.TRIPS) {
      new LuresAcross(table).run();
      new SeveralInOne(table).run();
      new ToldInWords(table).run();
      new LossesInRemarks(table).run();
    }
    if (table.kind() == ListKind.PRICES) {
      postageWithin();
    }
    if (table.kind() == ListKind.BOX) {
      new CountsOverTime(table).run();
    }
    wholePlastics();
    lengthsWithin(Field.BODY);
    lengthsWithin(Field.COLOUR);
    new MakersWithin(table).run();
    new TwoColours(table).run();
  }

  /** {@code £3.20, free over £30} under Postage tells both. */
  private void postageWithin() {
    for (ListRow row : table.rows()) {
      Place place = row.place(Field.POSTAGE);
      Matcher both = POSTAGE_AND_FREE.matcher(row.text(Field.POSTAGE));
      if (both.matches()) {
        row.put(Field.POSTAGE, Cell.text(both.group(1)), place.column());
        putIfBlank(row, Field.FREE_OVER, both.group(2), place.column());
        table.assumeOnce("What makes postage free was taken out of the postage.");
      }
    }
  }

  /** Where only one of body and colour is told, both may stand in that one cell. */
  private void wholePlastics() {
    List<ListRow> rows = table.rows();
    boolean noBody =
        !table.guess().has(Field.BODY) && rows.stream().allMatch(r -> r.isBlank(Field.BODY));
    boolean noColour = !table.guess().has(Field.COLOUR);
    if (rows.isEmpty() || noBody == noColour) {
      return;
    }
    Field told = noBody ? Field.COLOUR : Field.BODY;
    List<ListRow> filled =
        rows.stream()
            .filter(r -> !r.isBlank(told) && (r.isBlank(Field.BODY) || r.isBlank(Field.COLOUR)))
            .toList();
    long whole = filled.stream().filter(r -> anatomy(r, told).isWhole()).count();
    if (whole == 0 || whole < AGREE * filled.size()) {
      return;
    }
    boolean counts =
        table.kind() == ListKind.BOX && rows.stream().allMatch(r -> r.isBlank(Field.PIECES));
    Optional<String> example = Optional.empty();
    for (ListRow row : rows) {
      Place place = row.place(told);
      Anatomy parts = anatomy(row, told);
      if (parts.isWhole() && (row.isBlank(Field.BODY) || row.isBlank(Field.COLOUR))) {
        if (example.isEmpty()) {
          example = Optional.of(shown(row.text(told), parts));
        }
        row.put(Field.BODY, Cell.text(parts.body()), place.column());
        row.put(Field.COLOUR, Cell.text(parts.colour()), place.column());
        putIfBlank(row, Field.LENGTH, parts.length(), place.column());
        if (table.kind() == ListKind.PRICES) {
          putIfBlank(row, Field.PACK_SIZE, packSize(parts.quantity()), place.column());
        }
        if (counts) {
          putIfBlank(row, Field.PIECES, parts.quantity(), place.column());
        }
      }
    }
    example.ifPresent(table::assume);
  }

  /** {@code (6 pk)} behind a name in a list of prices is what a pack holds. */
  private static String packSize(String quantity) {
    return quantity.replaceFirst(
        "(?i)^(?:packs? of |x ?)?(\\d+)(?: ?(?:pks?|packs?|pcs|pieces))?$", "$1");
  }

  private static String shown(String text, Anatomy parts) {
    return "One column tells the whole plastic: \""
        + text
        + "\" was read as body style \""
        + parts.body()
        + "\", colour \""
        + parts.colour()
        + "\""
        + (parts.length().isEmpty() ? "" : ", length " + parts.length())
        + (parts.quantity().isEmpty() ? "" : ", pieces " + parts.quantity())
        + ", and the others alike.";
  }

  private static void putIfBlank(ListRow row, Field field, String text, int column) {
    if (row.isBlank(field) && !text.isEmpty()) {
      row.put(field, Cell.text(text), column);
    }
  }

  private Anatomy anatomy(ListRow row, Field field) {
    return anatomies.computeIfAbsent(row.text(field), Anatomy::of);
  }

  /**
   * A bare number behind a body style is its length; behind a colour it may be part of its name.
   */
  private static Optional<Anatomy> lengthWithin(Field field, String words) {
    return Anatomy.lengthWithin(words)
        .or(() -> field == Field.BODY ? Anatomy.bareLengthWithin(words) : Optional.empty());
  }

  private void lengthsWithin(Field field) {
    for (ListRow row : table.rows()) {
      Place place = row.place(field);
      if (row.isBlank(Field.LENGTH) && place.cell() instanceof Cell.Text text) {
        within
            .computeIfAbsent(text.text(), words -> lengthWithin(field, words))
            .ifPresent(
                parts -> {
                  row.put(field, Cell.text(parts.body()), place.column());
                  row.put(Field.LENGTH, Cell.text(parts.length()), place.column());
                  table.assume("Lengths were taken out of the " + field.word() + ".");
                });
      }
    }
  }
}
