package traytally.intake;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/** The first rows under a header: what a column holds may tell what its header leaves open. */
final class Under {
  /** As many rows tell a column's habit (an assumption). */
  private static final int LOOKED_AT = 60;

  /** The share of a column's cells that must be of one kind: more than half (an assumption). */
  private static final double MOST = 0.5;

  /** Fewer lines may be remarks below a list that is empty (an assumption). */
  private static final int FEWEST_LINES = 3;

  private static final Pattern MONEY =
      Pattern.compile("[€£$]\\s*\\d+(?:[.,]\\d{2})?|\\d+(?:[.,]\\d{2})?\\s*[€£$]|\\d{1,3}p");

  /** The one of several dollars or crowns that a sign stands for is of no matter here. */
  private static final Currency EURO = Currency.getInstance("EUR");

  private final GivenSheet sheet;
  private final int first;
  private int next;
  // Looked at when first asked for: most rows that may be a header are none.
  private final List<Row> rows = new ArrayList<>();

  /** The rows of {@code sheet} from the one at {@code first} on. */
  Under(GivenSheet sheet, int first) {
    this.sheet = sheet;
    this.first = first;
    this.next = first;
  }

  private List<Row> rows() {
    for (; next < sheet.rows().size() && rows.size() < LOOKED_AT; next++) {
      Row row = sheet.rows().get(next);
      // Headings and remarks stand alone in their rows and say nothing of the columns.
      if (row.cells().stream().filter(c -> !c.isBlank()).count() > 1) {
        rows.add(row);
      }
    }
    return rows;
  }

  /** Whether a few rows at least follow, and none of more than one cell. */
  boolean isOfLines() {
    return rows().isEmpty() && sheet.rows().size() - first >= FEWEST_LINES;
  }

  /** The cells of a column that hold something. */
  List<Cell> filled(int column) {
    return rows().stream().map(row -> row.cell(column)).filter(c -> !c.isBlank()).toList();
  }

  /** Whether a column holds counts. */
  boolean counts(int column) {
    List<Cell> cells = filled(column);
    long counts = cells.stream().filter(Under::isCount).count();
    return counts > MOST * cells.size();
  }

  /** Whether a cell holds a count of pieces. */
  static boolean isCount(Cell cell) {
    if (cell instanceof Cell.Numeric number) {
      return Quantities.whole(BigDecimal.valueOf(number.value())).value().isPresent();
    }
    return cell instanceof Cell.Text text
        && Quantities.parse(text.text(), OptionalInt.of(1)).value().isPresent();
  }

  /** Whether a column holds bare numbers and nothing else. */
  boolean numbers(int column) {
    return filled(column).stream()
        .allMatch(c -> c instanceof Cell.Numeric || c.shown().strip().matches("\\d{1,6}\\.?"));
  }

  /** Whether a column holds sums of money, by their marks. */
  boolean money(int column) {
    List<Cell> cells = filled(column);
    long sums = cells.stream().filter(Under::isMoney).count();
    return sums > MOST * cells.size();
  }

  private static boolean isMoney(Cell cell) {
    return cell instanceof Cell.Numeric number
        ? Amounts.ofFormat(number.format(), EURO).isPresent()
        : MONEY.matcher(cell.shown().strip()).matches();
  }

  /** Whether a column holds lengths with their units. */
  boolean lengths(int column) {
    List<Cell> cells = filled(column);
    long lengths = cells.stream().filter(Square::isLengthWithUnit).count();
    return lengths > MOST * cells.size();
  }

  /** Whether a column holds days. */
  boolean dates(int column) {
    List<Cell> cells = filled(column);
    long dates =
        cells.stream().filter(c -> c instanceof Cell.DateTime || Dates.isDate(c.shown())).count();
    return dates > MOST * cells.size();
  }

  /** Whether a column says yes and no, and counts nothing. */
  boolean answers(int column) {
    List<Cell> cells = filled(column);
    long answers = cells.stream().filter(Under::isAnswer).count();
    return answers > MOST * cells.size();
  }

  private static boolean isAnswer(Cell cell) {
    return cell instanceof Cell.Text
        && !cell.shown().matches(".*\\d.*")
        && Words.yesNo(cell.shown()).value().isPresent();
  }

  /** Whether a column holds words. */
  boolean words(int column) {
    List<Cell> cells = filled(column);
    long words =
        cells.stream()
            .filter(c -> c instanceof Cell.Text && c.shown().matches(".*\\p{L}.*"))
            .count();
    return words > MOST * cells.size();
  }
}
