package traytally.render;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.FilterWriter;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import traytally.report.Column;
import traytally.report.Report;
import traytally.report.Value;

/** A report as one JSON object. */
final class JsonText implements TextRenderer {
  private static final JsonFactory FACTORY =
      JsonFactory.builder()
          .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
          .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
          .build();

  @Override
  public void render(Report report, Look look, Writer out) throws IOException {
    try (JsonGenerator json = FACTORY.createGenerator(new QuietWriter(out))) {
      json.setPrettyPrinter(layout());
      json.writeStartObject();
      json.writeStringField("schema", "traytally/" + report.command() + "/1");
      json.writeStringField("as_of", report.asOf().toString());
      for (Report.Single fact : report.facts()) {
        write(json, fact.column(), fact.value());
      }
      json.writeFieldName("rows");
      write(json, report.columns(), report.rows());
      json.writeEndObject();
      json.writeRaw('\n');
    }
  }

  private static void write(JsonGenerator json, List<Column> columns, List<List<Value>> rows)
      throws IOException {
    json.writeStartArray();
    for (List<Value> row : rows) {
      json.writeStartObject();
      for (int i = 0; i < row.size(); i++) {
        write(json, columns.get(i), row.get(i));
      }
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private static void write(JsonGenerator json, Column column, Value value) throws IOException {
    if (!column.forMachines()) {
      return;
    }
    json.writeFieldName(column.key());
    if (value instanceof Value.Text text) {
      json.writeString(text.text());
    } else if (value instanceof Value.Whole whole) {
      json.writeNumber(whole.number());
    } else if (value instanceof Value.Decimal decimal) {
      json.writeNumber(MachineNumber.of(decimal.number()));
    } else if (value instanceof Value.Sum sum) {
      json.writeString(sum.money().amount());
    } else if (value instanceof Value.Day day) {
      json.writeString(day.date().toString());
    } else if (value instanceof Value.Tint tint) {
      json.writeString(tint.swatch().toString());
    } else if (value instanceof Value.YesNo answer) {
      json.writeBoolean(answer.yes());
    } else if (value instanceof Value.Rows rows) {
      write(json, rows.columns(), rows.rows());
    } else {
      json.writeNull();
    }
  }

  /** Two spaces a level and LF on every system. */
  private static DefaultPrettyPrinter layout() {
    DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
    DefaultPrettyPrinter layout =
        new DefaultPrettyPrinter(
            Separators.createDefaultInstance()
                .withObjectFieldValueSpacing(Separators.Spacing.AFTER)
                .withArrayEmptySeparator("")
                .withObjectEmptySeparator(""));
    layout.indentArraysWith(indenter);
    layout.indentObjectsWith(indenter);
    return layout;
  }

  /**
   * Escapes the control characters that JSON lets stand (DEL and U+0080 to U+009F), since a
   * terminal may obey them; they can only be part of a string, so the escape is always in place.
   */
  private static final class QuietWriter extends FilterWriter {
    private static final String HEX = "0123456789abcdef";

    QuietWriter(Writer out) {
      super(out);
    }

    @Override
    public void write(int c) throws IOException {
      if (obeyed(c)) {
        out.write("\\u00" + HEX.charAt(c >> 4) + HEX.charAt(c & 0xF));
      } else {
        out.write(c);
      }
    }

    @Override
    public void write(char[] text, int from, int length) throws IOException {
      int start = from;
      for (int i = from; i < from + length; i++) {
        if (obeyed(text[i])) {
          out.write(text, start, i - start);
          write(text[i]);
          start = i + 1;
        }
      }
      out.write(text, start, from + length - start);
    }

    @Override
    public void write(String text, int from, int length) throws IOException {
      write(text.toCharArray(), from, length);
    }

    private static boolean obeyed(int c) {
      return c >= 0x7F && c <= 0x9F;
    }
  }
}
