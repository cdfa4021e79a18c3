package traytally.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.apache.poi.hssf.record.BOFRecord;
import org.apache.poi.hssf.record.BlankRecord;
import org.apache.poi.hssf.record.BoolErrRecord;
import org.apache.poi.hssf.record.CellValueRecordInterface;
import org.apache.poi.hssf.record.EOFRecord;
import org.apache.poi.hssf.record.FormulaRecord;
import org.apache.poi.hssf.record.LabelRecord;
import org.apache.poi.hssf.record.LabelSSTRecord;
import org.apache.poi.hssf.record.MergeCellsRecord;
import org.apache.poi.hssf.record.NumberRecord;
import org.apache.poi.hssf.record.Record;
import org.apache.poi.hssf.record.RecordFactoryInputStream;
import org.apache.poi.hssf.record.RowRecord;
import org.apache.poi.hssf.record.StringRecord;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.util.CellRangeAddress;

/** The rows of one sheet of an .xls, put together from its cell records. */
final class XlsRows implements Rows.Source {
  private final InputStream in;
  private final RecordFactoryInputStream records;
  private final XlsGlobals globals;
  private final RowBuilder row;
  private final BitSet hidden = new BitSet();
  private Optional<Record> held = Optional.empty();
  private int textColumn; // of the formula whose result, a text, stands in a record to come
  private boolean struck;
  private int depth = 1;
  private final List<CellRange> merges = new ArrayList<>();
  private final Limits limits;

  XlsRows(
      InputStream in,
      RecordFactoryInputStream records,
      XlsGlobals globals,
      RowBuilder row,
      Limits limits) {
    this.limits = limits;
    this.in = in;
    this.records = records;
    this.globals = globals;
    this.row = row;
  }

  /** Whether each row of a sheet stands in one piece and after those above it. */
  static boolean inOrder(RecordFactoryInputStream records) {
    int row = 0;
    int depth = 1;
    while (depth > 0) {
      Record record = records.nextRecord();
      if (record == null) {
        break;
      }
      if (record instanceof BOFRecord) {
        depth++;
      } else if (record instanceof EOFRecord) {
        depth--;
      } else if (depth == 1 && record instanceof CellValueRecordInterface cell) {
        if (cell.getRow() < row) {
          return false;
        }
        row = cell.getRow();
      }
    }
    return true;
  }

  @Override
  public List<CellRange> merges() {
    return merges;
  }

  private static CellRange range(CellRangeAddress area) {
    return CellRange.between(
        new Address(area.getFirstRow() + 1, area.getFirstColumn()),
        new Address(area.getLastRow() + 1, area.getLastColumn()));
  }

  @Override
  public Optional<Row> next() {
    boolean begun = false;
    while (true) {
      Optional<Record> record = held.isPresent() ? held : read();
      held = Optional.empty();
      if (record.isEmpty()) {
        return begun && !row.isEmpty() ? Optional.of(row.finish()) : Optional.empty();
      }
      if (record.get() instanceof CellValueRecordInterface cell
          && !(record.get() instanceof BlankRecord)) {
        int number = cell.getRow() + 1;
        if (begun && number != row.number()) {
          if (!row.isEmpty()) {
            held = record;
            return Optional.of(row.finish());
          }
          begun = false;
        }
        if (!begun) {
          row.start(number, hidden.get(cell.getRow()));
          begun = true;
        }
        struck = globals.isStruck(cell.getXFIndex());
        row.set(cell.getColumn(), read(cell), struck);
      } else if (begun && record.get() instanceof StringRecord result && textColumn >= 0) {
        row.set(textColumn, Cell.text(InertText.read(result.getString())), struck);
        textColumn = -1;
      }
    }
  }

  /** The next record of the sheet itself, leaving out charts within it; empty at its end. */
  private Optional<Record> read() {
    while (depth > 0) {
      Optional<Record> record = Optional.ofNullable(records.nextRecord());
      if (record.isEmpty()) {
        depth = 0;
      } else if (record.get() instanceof BOFRecord) {
        depth++;
      } else if (record.get() instanceof EOFRecord) {
        depth--;
      } else if (depth == 1) {
        if (record.get() instanceof RowRecord about && about.getZeroHeight()) {
          hidden.set(about.getRowNumber());
        } else if (record.get() instanceof MergeCellsRecord merged) {
          for (int i = 0; i < merged.getNumAreas(); i++) {
            XlsxRows.addMerge(merges, range(merged.getAreaAt(i)), limits);
          }
        }
        return record;
      }
    }
    return Optional.empty();
  }

  private Cell read(CellValueRecordInterface cell) {
    if (cell instanceof LabelSSTRecord label) {
      return globals.text(label.getSSTIndex());
    }
    if (cell instanceof NumberRecord number) {
      return globals.number(number.getValue(), number.getXFIndex());
    }
    if (cell instanceof LabelRecord label) {
      return Cell.text(InertText.read(label.getValue()));
    }
    if (cell instanceof BoolErrRecord value) {
      return value.isBoolean()
          ? new Cell.Bool(value.getBooleanValue())
          : error(value.getErrorValue());
    }
    return cell instanceof FormulaRecord formula ? result(formula) : Cell.blank();
  }

  private Cell result(FormulaRecord formula) {
    textColumn = formula.hasCachedResultString() ? formula.getColumn() : -1;
    return switch (formula.getCachedResultTypeEnum()) {
      case NUMERIC -> globals.number(formula.getValue(), formula.getXFIndex());
      case BOOLEAN -> new Cell.Bool(formula.getCachedBooleanValue());
      case ERROR -> error(formula.getCachedErrorValue());
      case STRING, FORMULA, BLANK, _NONE -> Cell.blank();
    };
  }

  private static Cell error(int code) {
    return FormulaError.isValidCode(code)
        ? new Cell.ErrorValue(FormulaError.forInt(code).getString())
        : new Cell.ErrorValue("#" + code);
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
