package traytally.sheet;

import java.io.IOException;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.xml.stream.XMLStreamException;

/** The rows of one sheet part of an .xlsx (ECMA-376 part 1, 18.3.1). */
final class XlsxRows implements Rows.Source {
  /** Numbers remembered: a few hundred KB. */
  private static final int REMEMBERED = 4096;

  private final XmlPull xml;
  private final XlsxWorkbook.Tables tables;
  private final RowBuilder row;
  private final Limits limits;
  private final Map<String, Map<String, Cell>> numbers = new HashMap<>();
  private final List<CellRange> merges = new ArrayList<>();
  private int remembered;

  XlsxRows(XmlPull xml, XlsxWorkbook.Tables tables, RowBuilder row, Limits limits) {
    this.xml = xml;
    this.tables = tables;
    this.row = row;
    this.limits = limits;
  }

  static void addMerge(List<CellRange> merges, CellRange merge, Limits limits) {
    if (merges.size() >= limits.merges()) {
      throw new UnreadableSheetException(
          "A sheet of this file has too many merged cells. Unmerge them and import it again.");
    }
    merges.add(merge);
  }

  @Override
  public Optional<Row> next() throws XMLStreamException {
    while (xml.next()) {
      if (xml.isStart("row")) {
        readRow();
        if (!row.isEmpty()) {
          return Optional.of(row.finish());
        }
      } else if (xml.isStart("mergeCell")) {
        addMerge(merges, CellRange.parse(xml.attribute("ref", "")), limits);
      }
    }
    return Optional.empty();
  }

  @Override
  public List<CellRange> merges() {
    return merges;
  }

  private void readRow() throws XMLStreamException {
    String number = xml.attribute("r", "");
    row.start(
        number.isEmpty() ? row.number() + 1 : Integer.parseInt(number.strip()), xml.flag("hidden"));
    int column = 0;
    while (xml.next() && !xml.isEnd("row")) {
      if (xml.isStart("c")) {
        String address = xml.attribute("r", "");
        column = address.isEmpty() ? column : columnOf(address);
        readCell(column);
        column++;
      }
    }
  }

  /** The column alone; the row has said where it is. */
  private static int columnOf(String address) {
    int column = 0;
    for (int i = 0; i < address.length() && i < 8; i++) {
      char c = address.charAt(i);
      if (c >= '0' && c <= '9') {
        break;
      }
      column = column * 26 + (Character.toUpperCase(c) - 'A' + 1);
    }
    return column - 1;
  }

  private void readCell(int column) throws XMLStreamException {
    String type = xml.attribute("t", "n");
    String style = xml.attribute("s", "");
    Cell cell = Cell.blank();
    while (xml.next() && !xml.isEnd("c")) {
      if (xml.isStart("v")) {
        cell = value(type, style, xml.text(limits));
      } else if (xml.isStart("is")) {
        cell = Cell.text(InertText.read(XlsxTexts.item(xml, "is", limits)));
      } else if (xml.isStart()) {
        xml.skip();
      }
    }
    row.set(column, cell, isStruck(style));
  }

  private boolean isStruck(String style) {
    BitSet struck = tables.styles().struck();
    return !struck.isEmpty()
        && !style.isBlank()
        && struck.get(Math.max(0, Integer.parseInt(style.strip())));
  }

  private Cell value(String type, String style, String stored) {
    return switch (type) {
      case "s" -> shared(stored.strip());
      case "str", "inlineStr" -> Cell.text(InertText.read(XlsxTexts.unescaped(stored)));
      case "b" ->
          stored.isBlank()
              ? Cell.blank()
              : new Cell.Bool(stored.strip().equals("1") || stored.strip().equals("true"));
      case "e" -> stored.isBlank() ? Cell.blank() : new Cell.ErrorValue(stored.strip());
      case "d" -> isoDate(stored.strip());
      default -> once(style, stored);
    };
  }

  private Cell shared(String stored) {
    if (stored.isEmpty()) {
      return Cell.blank();
    }
    int place = Integer.parseInt(stored);
    if (place < 0 || place >= tables.texts().size()) {
      throw new UnreadableSheetException(
          "This file is damaged: the text of a cell in row "
              + row.number()
              + " is missing. "
              + RowBuilder.SAVE_AGAIN);
    }
    return tables.texts().get(place);
  }

  /** The number, worked out once: lists repeat few counts and dates many times. */
  private Cell once(String style, String stored) {
    Map<String, Cell> known = numbers.computeIfAbsent(style, s -> new HashMap<>());
    Cell cell = known.get(stored);
    if (cell == null) {
      cell = number(style, stored.strip());
      if (remembered < REMEMBERED) {
        known.put(stored, cell);
        remembered++;
      }
    }
    return cell;
  }

  private Cell number(String style, String stored) {
    if (stored.isEmpty()) {
      return Cell.blank();
    }
    double value;
    try {
      value = Double.parseDouble(stored);
    } catch (NumberFormatException e) {
      return Cell.text(stored); // shown as it is, for the person to judge
    }
    if (!Double.isFinite(value)) {
      return Cell.text(stored);
    }
    int place = style.isBlank() ? 0 : Integer.parseInt(style.strip());
    CellFormat format =
        place >= 0 && place < tables.styles().formats().size()
            ? tables.styles().formats().get(place)
            : CellFormat.GENERAL;
    return format.cell(value, tables.from1904());
  }

  /** A date written out, as the strict form of the standard and some programs do (18.18.11). */
  static Cell isoDate(String stored) {
    if (stored.isEmpty()) {
      return Cell.blank();
    }
    try {
      if (stored.indexOf('-') < 0) {
        return new Cell.Time(Duration.between(LocalTime.MIN, LocalTime.parse(stored)));
      }
      if (stored.indexOf('T') < 0) {
        return new Cell.DateTime(LocalDate.parse(stored).atStartOfDay());
      }
      boolean zoned = stored.endsWith("Z") || stored.lastIndexOf('+') > 0;
      return new Cell.DateTime(
          zoned ? OffsetDateTime.parse(stored).toLocalDateTime() : LocalDateTime.parse(stored));
    } catch (DateTimeException e) {
      return Cell.text(stored); // shown as it is, for the person to judge
    }
  }

  @Override
  public void close() throws IOException, XMLStreamException {
    xml.close();
  }
}
