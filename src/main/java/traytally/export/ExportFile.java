package traytally.export;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.util.MinimalPrettyPrinter;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import traytally.store.Box;
import traytally.store.Part;
import traytally.store.TableColumn;
import traytally.store.TableSink;

/** A box as one JSON object (RFC 8259): its version, then an array of rows for each table. */
final class ExportFile implements Export {
  /** An export of a version not known here is an export all the same. */
  private static final String EVERY_VERSION = "traytally/export/";

  private static final String VERSION = "box_version";

  private final Path file;

  ExportFile(Path file) {
    this.file = file;
  }

  static void write(Box box, Path file) throws IOException {
    Path whole = file.toAbsolutePath().normalize();
    Files.createDirectories(whole.getParent());
    Part.write(whole, out -> write(box, new JsonFactory().createGenerator(out)));
  }

  private static void write(Box box, JsonGenerator generator) throws IOException {
    try (JsonGenerator json = generator) {
      json.setPrettyPrinter(new RowALine());
      json.writeStartObject();
      json.writeStringField("schema", SCHEMA);
      json.writeNumberField(VERSION, Box.version());
      Writing writing = new Writing(json);
      box.export(writing);
      writing.end();
      json.writeEndObject();
      json.writeRaw('\n');
    }
  }

  /** Whether {@code file} begins as an export does; other programs' JSON is not ours to read. */
  static boolean marks(Path file) throws IOException {
    try (JsonParser json = new ExportFile(file).parser()) {
      return json.nextToken() == JsonToken.START_OBJECT
          && "schema".equals(json.nextFieldName())
          && String.valueOf(json.nextTextValue()).startsWith(EVERY_VERSION);
    } catch (JsonProcessingException | CharacterCodingException e) {
      return false; // no JSON at all: the lists' readers say what it is
    }
  }

  @Override
  public int version() throws IOException {
    try (JsonParser json = parser()) {
      if (json.nextToken() == JsonToken.START_OBJECT
          && "schema".equals(json.nextFieldName())
          && SCHEMA.equals(json.nextTextValue())
          && VERSION.equals(json.nextFieldName())
          && json.nextToken() == JsonToken.VALUE_NUMBER_INT) {
        return json.getIntValue();
      }
      throw new IOException(file + " does not begin with schema " + SCHEMA + " and " + VERSION);
    } catch (JsonProcessingException e) {
      throw unreadable(e);
    }
  }

  @Override
  public void pour(Into box) throws IOException {
    try (JsonParser json = parser()) {
      json.nextToken();
      for (String field = json.nextFieldName(); field != null; field = json.nextFieldName()) {
        if (json.nextToken() == JsonToken.START_ARRAY) {
          int number = 0;
          while (json.nextToken() == JsonToken.START_OBJECT) {
            pour(json, field, ++number, box);
          }
        } else {
          json.skipChildren();
        }
      }
      if (json.currentToken() != JsonToken.END_OBJECT) {
        throw new IOException(file + " ends in the middle");
      }
    } catch (JsonProcessingException e) {
      throw unreadable(e);
    }
  }

  private void pour(JsonParser json, String table, int number, Into box) throws IOException {
    List<String> columns = new ArrayList<>();
    List<String> cells = new ArrayList<>();
    for (String column = json.nextFieldName(); column != null; column = json.nextFieldName()) {
      columns.add(column);
      JsonToken value = json.nextToken();
      if (value == null || value.isStructStart()) {
        throw new IOException(file + ": a cell of " + table + ", row " + number + ", is no value");
      }
      cells.add(value == JsonToken.VALUE_NULL ? "" : json.getText());
    }
    box.row(table, columns, cells, file + ", " + table + " " + number);
  }

  private IOException unreadable(JsonProcessingException e) {
    return new IOException(
        file
            + " is not JSON at line "
            + e.getLocation().getLineNr()
            + ": "
            + e.getOriginalMessage(),
        e);
  }

  private JsonParser parser() throws IOException {
    BufferedReader text = Files.newBufferedReader(file, StandardCharsets.UTF_8);
    return new JsonFactory().createParser(text);
  }

  /** Writes an array for each table. */
  private static final class Writing implements TableSink {
    private final JsonGenerator json;
    private String table = "";

    Writing(JsonGenerator json) {
      this.json = json;
    }

    @Override
    public void row(String next, List<TableColumn> columns, List<String> cells) throws IOException {
      if (!next.equals(table)) {
        end();
        table = next;
        json.writeArrayFieldStart(next);
      }
      if (!cells.isEmpty()) {
        json.writeStartObject();
        for (int i = 0; i < cells.size(); i++) {
          json.writeFieldName(columns.get(i).name());
          write(columns.get(i), cells.get(i));
        }
        json.writeEndObject();
      }
    }

    private void write(TableColumn column, String cell) throws IOException {
      if (cell.isEmpty() && column.optional()) {
        json.writeNull();
      } else if (column.kind() == TableColumn.Kind.TEXT) {
        json.writeString(cell);
      } else {
        json.writeNumber(cell);
      }
    }

    void end() throws IOException {
      if (!table.isEmpty()) {
        json.writeEndArray();
      }
    }
  }

  /** A line for each row, so that line tools may look at it. */
  private static final class RowALine extends MinimalPrettyPrinter {
    private static final long serialVersionUID = 1;

    @Override
    public void beforeArrayValues(JsonGenerator json) throws IOException {
      json.writeRaw('\n');
    }

    @Override
    public void writeArrayValueSeparator(JsonGenerator json) throws IOException {
      json.writeRaw(",\n");
    }

    @Override
    public void writeObjectEntrySeparator(JsonGenerator json) throws IOException {
      json.writeRaw(json.getOutputContext().getParent().inRoot() ? ",\n" : ", ");
    }

    @Override
    public void writeObjectFieldValueSeparator(JsonGenerator json) throws IOException {
      json.writeRaw(": ");
    }
  }
}
