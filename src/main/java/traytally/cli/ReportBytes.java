package traytally.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import traytally.plastic.Money;
import traytally.plastic.Swatch;
import traytally.report.Column;
import traytally.report.Report;
import traytally.report.Report.Section;
import traytally.report.Report.Single;
import traytally.report.Value;

/** A report as bytes, from which the very same report is read again. */
final class ReportBytes {
  private ReportBytes() {}

  /** Writes an element of a list. */
  private interface Writer<T> {
    void write(T element) throws IOException;
  }

  /** Reads an element of a list. */
  private interface Reader<T> {
    T read() throws IOException;
  }

  static byte[] of(Report report) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      new Out(new DataOutputStream(bytes)).report(report);
    } catch (IOException e) {
      throw new UncheckedIOException(e); // which memory never throws
    }
    return bytes.toByteArray();
  }

  /**
   * Reads {@code bytes} again.
   *
   * @throws IOException or IllegalArgumentException if they are not those of a report
   */
  static Report read(byte[] bytes) throws IOException {
    return new In(new DataInputStream(new ByteArrayInputStream(bytes))).report();
  }

  private record Out(DataOutputStream to) {
    void report(Report report) throws IOException {
      text(report.command());
      text(report.title());
      to.writeLong(report.asOf().toEpochDay());
      list(
          report.facts(),
          fact -> {
            column(fact.column());
            value(fact.value());
          });
      table(report.columns(), report.rows());
      list(
          report.sections(),
          section -> {
            text(section.heading());
            to.writeInt(section.from());
            to.writeInt(section.to());
            text(section.summary());
          });
      list(report.notes(), this::text);
    }

    private void table(List<Column> columns, List<List<Value>> rows) throws IOException {
      list(columns, this::column);
      list(rows, row -> list(row, this::value));
    }

    private void column(Column column) throws IOException {
      text(column.key());
      text(column.label());
      text(column.kind().name());
      text(column.room().name());
    }

    private void value(Value value) throws IOException {
      if (value instanceof Value.Text text) {
        to.writeByte('t');
        text(text.text());
      } else if (value instanceof Value.Whole whole) {
        to.writeByte('w');
        to.writeLong(whole.number());
      } else if (value instanceof Value.Decimal decimal) {
        to.writeByte('d');
        to.writeDouble(decimal.number());
      } else if (value instanceof Value.Sum sum) {
        to.writeByte('m');
        to.writeLong(sum.money().cents());
        text(sum.money().currency().getCurrencyCode());
      } else if (value instanceof Value.Day day) {
        to.writeByte('y');
        to.writeLong(day.date().toEpochDay());
      } else if (value instanceof Value.Tint tint) {
        to.writeByte('c');
        to.writeInt(tint.swatch().rgb());
        to.writeBoolean(tint.assumed());
      } else if (value instanceof Value.YesNo yesNo) {
        to.writeByte('b');
        to.writeBoolean(yesNo.yes());
      } else if (value instanceof Value.Rows rows) {
        to.writeByte('r');
        table(rows.columns(), rows.rows());
      } else {
        to.writeByte('?');
      }
    }

    private void text(String text) throws IOException {
      byte[] letters = text.getBytes(StandardCharsets.UTF_8);
      to.writeInt(letters.length);
      to.write(letters);
    }

    private <T> void list(List<T> list, Writer<T> writer) throws IOException {
      to.writeInt(list.size());
      for (T element : list) {
        writer.write(element);
      }
    }
  }

  private record In(DataInputStream from) {
    Report report() throws IOException {
      return new Report(
          text(),
          text(),
          LocalDate.ofEpochDay(from.readLong()),
          list(() -> new Single(column(), value())),
          list(this::column),
          rows(),
          list(() -> new Section(text(), from.readInt(), from.readInt(), text())),
          list(this::text));
    }

    private List<List<Value>> rows() throws IOException {
      return list(() -> list(this::value));
    }

    private Column column() throws IOException {
      return new Column(text(), text(), Column.Kind.valueOf(text()), Column.Room.valueOf(text()));
    }

    private Value value() throws IOException {
      return switch (from.readByte()) {
        case 't' -> new Value.Text(text());
        case 'w' -> new Value.Whole(from.readLong());
        case 'd' -> new Value.Decimal(from.readDouble());
        case 'm' -> new Value.Sum(new Money(from.readLong(), Currency.getInstance(text())));
        case 'y' -> new Value.Day(LocalDate.ofEpochDay(from.readLong()));
        case 'c' -> new Value.Tint(new Swatch(from.readInt()), from.readBoolean());
        case 'b' -> new Value.YesNo(from.readBoolean());
        case 'r' -> new Value.Rows(list(this::column), rows());
        case '?' -> Value.UNKNOWN;
        default -> throw new IOException("no such kind of value");
      };
    }

    private String text() throws IOException {
      byte[] letters = from.readNBytes(count());
      return new String(letters, StandardCharsets.UTF_8);
    }

    private <T> List<T> list(Reader<T> reader) throws IOException {
      int size = count();
      List<T> list = new ArrayList<>();
      for (int i = 0; i < size; i++) {
        list.add(reader.read());
      }
      return list;
    }

    /** How many follow; never more than there are bytes left. */
    private int count() throws IOException {
      int count = from.readInt();
      if (count < 0 || count > from.available()) {
        throw new IOException("cut short");
      }
      return count;
    }
  }
}
