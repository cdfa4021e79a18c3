package traytally.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import traytally.report.Column.Kind;
import traytally.report.Report;
import traytally.report.Value;

class JsonTextTest {
  private static String json(Report report) throws IOException {
    return Golden.text(report, Format.JSON, Look.PLAIN);
  }

  /** Every value of the JSON as {@code key=token:text}. */
  private static List<String> parse(String json) throws IOException {
    List<String> values = new ArrayList<>();
    JsonFactory factory =
        JsonFactory.builder().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION).build();
    try (JsonParser parser = factory.createParser(json)) {
      for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
        if (token.isScalarValue()) {
          values.add(parser.currentName() + "=" + token + ":" + parser.getText());
        }
      }
    }
    return values;
  }

  @Test
  void aShoppingListIsOneObject() throws IOException {
    Golden.assertSame("restock.json", json(Examples.restock()));
  }

  @Test
  void valuesKeepTheirKinds() throws IOException {
    List<String> values = parse(json(Examples.restock()));
    assertEquals("schema=VALUE_STRING:traytally/restock/1", values.get(0));
    assertEquals("as_of=VALUE_STRING:2026-05-01", values.get(1));
    assertTrue(values.contains("total=VALUE_STRING:31.15"));
    assertTrue(values.contains("takes_saved=VALUE_NUMBER_FLOAT:4.25"));
    assertTrue(values.contains("length_mm=VALUE_NUMBER_INT:75"));
    assertTrue(values.contains("length_mm=VALUE_NULL:null"));
    assertTrue(values.contains("kept=VALUE_TRUE:true"));
    assertTrue(values.contains("pack_price=VALUE_STRING:5.45"));
    assertEquals(4, values.stream().filter(v -> v.startsWith("run_out_chance=")).count());
  }

  @Test
  void textsReadBackUnchangedAndStayQuietOnATerminal() throws IOException {
    String odd = "\u001b[31m\u009b\u007f \"3\\\" \u2028 モー🐟 =1+1";
    String json = json(Examples.single(Kind.TEXT, Value.of(odd)));
    assertTrue(parse(json).contains("it=VALUE_STRING:" + odd), json);
    assertFalse(
        json.codePoints().anyMatch(c -> c != '\n' && Character.getType(c) == Character.CONTROL));
  }

  @ParameterizedTest
  @CsvSource({
    "0.1, 0.1",
    "0.30000000000000004, 0.3",
    "1e-7, 0.0000001",
    "1e-13, 0",
    "123456789.7, 123456790",
    "1e15, 1000000000000000",
    "-2.5, -2.5",
    "3, 3",
    "0.083249999, 0.08325"
  })
  void numbersHaveNoExponentAndNoDust(double number, String text) throws IOException {
    String json = json(Examples.single(Kind.DECIMAL, Value.of(number)));
    assertTrue(json.contains("\"it\": " + text + "\n"), json);
  }

  @Test
  void anEmptyListIsAnEmptyArray() throws IOException {
    assertEquals(
        "{\n  \"schema\": \"traytally/box/1\",\n  \"as_of\": \"2026-05-01\",\n  \"rows\": []\n}\n",
        json(Examples.table(List.of(Examples.column("it", "It", Kind.TEXT)), List.of())));
  }

  @Test
  void theLookOfPeopleChangesNothingForPrograms() throws IOException {
    Look other = Look.PLAIN.withColour(true).withUnit(LengthUnit.IN).withLocale(Locale.GERMANY);
    for (Format format : List.of(Format.CSV, Format.JSON)) {
      assertEquals(
          Golden.text(Examples.restock(), format, Look.PLAIN),
          Golden.text(Examples.restock(), format, other));
    }
  }
}
