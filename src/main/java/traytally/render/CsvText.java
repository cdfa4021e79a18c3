package traytally.render;

import com.opencsv.CSVWriter;
import com.opencsv.ICSVWriter;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import traytally.report.Column;
import traytally.report.Report;
import traytally.report.Value;
import traytally.sheet.InertText;

/**
 * A report as comma-separated values for programs, quoted as RFC 4180 says.
 *
 * <p>Lines end in LF, not in that RFC's CRLF: every spreadsheet reads both, and line tools on the
 * other end of a pipe would carry the CR along in the last column.
 */
final class CsvText implements TextRenderer {
  @Override
  public void render(Report report, Look look, Writer out) throws IOException {
    List<Column> columns = report.columns().stream().filter(Column::forMachines).toList();
    boolean[] wanted = new boolean[report.columns().size()];
    for (int i = 0; i < wanted.length; i++) {
      wanted[i] = report.columns().get(i).forMachines();
    }
    Lines lines = new Lines(out, columns.size());
    lines.add(columns.stream().map(Column::key).toArray(String[]::new));
    for (List<Value> row : report.rows()) {
      String[] cells = new String[columns.size()];
      int next = 0;
      for (int i = 0; i < wanted.length; i++) {
        if (wanted[i]) {
          cells[next++] = cell(report.columns().get(i).kind(), row.get(i));
        }
      }
      lines.add(cells);
    }
    lines.finish();
  }

  /** The text of a cell for programs; an unknown is empty. */
  static String cell(Column.Kind kind, Value value) {
    if (value instanceof Value.Text text) {
      return InertText.write(text.text());
    } else if (value instanceof Value.Whole whole) {
      return Long.toString(whole.number());
    } else if (value instanceof Value.Decimal decimal) {
      return (kind == Column.Kind.CHANCE
              ? MachineNumber.ofChance(decimal.number())
              : MachineNumber.of(decimal.number()))
          .toPlainString();
    } else if (value instanceof Value.Sum sum) {
      return sum.money().amount();
    } else if (value instanceof Value.Day day) {
      return day.date().toString();
    } else if (value instanceof Value.Tint tint) {
      return tint.swatch().toString();
    } else if (value instanceof Value.YesNo answer) {
      return Boolean.toString(answer.yes());
    }
    return "";
  }

  /** The lines of one csv text. */
  static final class Lines {
    private final ICSVWriter csv;
    private final boolean quoteAll;

    /**
     * @param columns a single one is always quoted: an empty cell would else be an empty line,
     *     which readers skip
     */
    Lines(Writer out, int columns) {
      csv = new CSVWriter(out, ',', '"', '"', "\n");
      quoteAll = columns == 1;
    }

    void add(String[] cells) {
      csv.writeNext(cells, quoteAll);
    }

    /** Hands everything on, and tells if some of it could not be written. */
    void finish() throws IOException {
      csv.flush();
      IOException failure = csv.getException();
      if (failure != null) {
        throw failure;
      }
    }
  }
}
