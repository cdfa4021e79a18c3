package traytally.intake;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import traytally.sheet.Cell;

/** Columns of several numbers in one cell, as the header says: {@code Takes/Hooked/Landed}. */
final class SharedHeader {
  private static final Pattern BETWEEN =
      Pattern.compile("\\s*(?:[/|,;:+&>-]|\\band\\b|\\bthen\\b)\\s*|\\s+");
  private static final Pattern MARKS = Pattern.compile("\\s*[/|,;:+&>-]\\s*");

  /** What is counted in a cell. */
  private static final Set<Field> COUNTED =
      EnumSet.of(
          Field.FOLLOWS,
          Field.TAKES,
          Field.HOOKED,
          Field.LANDED,
          Field.LOST,
          Field.PACKS,
          Field.LOOSE,
          Field.HAD,
          Field.LOST_SO_FAR,
          Field.PIECES);

  /** First letters that stand for the whole words where all parts are so short. */
  private static final Map<String, Field> LETTERS =
      Map.of("f", Field.FOLLOWS, "t", Field.TAKES, "h", Field.HOOKED, "l", Field.LANDED);

  private final Table table;
  private final Map<Integer, List<Field>> columns = new LinkedHashMap<>();

  private SharedHeader(Table table) {
    this.table = table;
    for (int column = 0; column < table.headers().size(); column++) {
      List<Field> told = fields(table.headers().get(column).text(), table.kind());
      boolean said = ColumnGuess.AS_SAID.equals(table.guess().why().get(column));
      if (!told.isEmpty() && !said) {
        columns.put(column, told);
      }
    }
  }

  /** Those of {@code table}, if it has such columns. */
  static Optional<SharedHeader> of(Table table) {
    SharedHeader shared = new SharedHeader(table);
    return shared.columns.isEmpty() ? Optional.empty() : Optional.of(shared);
  }

  /** What each part of {@code header} counts; none if it is no such header. */
  private static List<Field> fields(String header, ListKind kind) {
    String[] parts = MARKS.split(header.strip(), -1);
    boolean letters = header.matches("(?i)[fthl](?:\\s*[/|,;:+&>-]?\\s*[fthl])+");
    if (letters && parts.length == 1) {
      parts = header.strip().split("\\s+", -1);
    }
    List<Field> fields = new ArrayList<>();
    for (String part : parts) {
      String folded = ColumnHeader.of(part).folded();
      Optional<Field> field =
          letters && kind == ListKind.TRIPS
              ? Optional.ofNullable(LETTERS.get(folded))
              : COUNTED.stream()
                  .filter(f -> f.isIn(kind) && HeaderWords.isUsual(folded, f, kind))
                  .findFirst();
      field.ifPresent(fields::add);
    }
    boolean all = parts.length > 1 && fields.size() == parts.length;
    return all && new HashSet<>(fields).size() == parts.length ? fields : List.of();
  }

  /** Puts the numbers of each such cell of {@code row} where they belong. */
  void put(ListRow row) {
    columns.forEach(
        (column, fields) -> {
          String[] parts = BETWEEN.split(row.at(column).shown().strip(), -1);
          boolean counts = parts.length == fields.size();
          for (String part : parts) {
            counts &= part.matches("\\d{1,3}");
          }
          for (int i = 0; counts && i < parts.length; i++) {
            row.put(fields.get(i), Cell.text(parts[i]), column);
          }
          if (counts) {
            table.assumeOnce(
                "Each cell under \""
                    + table.headers().get(column).text()
                    + "\" was read as "
                    + String.join(", ", fields.stream().map(Field::word).toList())
                    + ", in this order.");
          }
        });
  }
}
