package traytally.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import traytally.report.Column.Kind;
import traytally.report.Report;
import traytally.report.Value;
import traytally.sheet.InertText;

class CsvTextTest {
  private static final Pattern FIELD =
      Pattern.compile("(?:\"((?:[^\"]|\"\")*)\"|([^\",\r\n]*))([,\n])");

  /** Texts that spreadsheets took for formulas: OWASP, "CSV Injection". */
  private static final List<String> HOSTILE =
      List.of(
          "=1+1",
          "=cmd|' /C calc'!A0",
          "+1",
          "-2+3",
          "@SUM(1)",
          "\t=1",
          "\r=1",
          "\n=1",
          " =1",
          "\u00a0=1",
          "\ufeff=1",
          "'=1",
          "''=1",
          "' =1",
          "＝1+1",
          "＋1",
          "－1",
          "＠SUM(1)",
          "-",
          "=\"a\",\"b\"");

  private static final List<String> HARMLESS =
      List.of(
          "", "'", "'neath", "''", "3\" paddle", "a,b", "a\\b", "a\nb", "1-2", " pale ", "#5b4a1e");

  private static String csv(Report report) throws IOException {
    return Golden.text(report, Format.CSV, Look.PLAIN);
  }

  /**
   * Records as RFC 4180, section 2, defines them. OpenCSV's own reader is no judge: it gives up at
   * an empty line inside a quoted cell.
   */
  private static List<List<String>> parse(String csv) {
    List<List<String>> records = new ArrayList<>();
    List<String> record = new ArrayList<>();
    Matcher field = FIELD.matcher(csv);
    while (field.lookingAt()) {
      String quoted = field.group(1);
      record.add(quoted == null ? field.group(2) : quoted.replace("\"\"", "\""));
      if (field.group(3).equals("\n")) {
        records.add(record);
        record = new ArrayList<>();
      }
      field.region(field.end(), csv.length());
    }
    assertTrue(field.hitEnd() && record.isEmpty(), "stuck after " + records);
    return records;
  }

  @Test
  void aShoppingListIsWrittenForPrograms() throws IOException {
    Golden.assertSame("restock.csv", csv(Examples.restock()));
  }

  @Test
  void everyTextIsInertAndReadsBackUnchanged() throws IOException {
    List<String> texts = new ArrayList<>(HOSTILE);
    texts.addAll(HARMLESS);
    Random random = new Random(20260501);
    String letters = "'=+-@＝＋ \t\r\n\"a,1\u00a0\\";
    for (int i = 0; i < 2_000; i++) {
      StringBuilder text = new StringBuilder();
      for (int n = random.nextInt(6); n >= 0; n--) {
        text.append(letters.charAt(random.nextInt(letters.length())));
      }
      texts.add(text.toString());
    }
    List<List<Value>> rows = texts.stream().map(t -> List.of(Value.of(t), Value.of(-1))).toList();
    List<List<String>> read =
        parse(
            csv(
                Examples.table(
                    List.of(
                        Examples.column("colour", "Colour", Kind.TEXT),
                        Examples.column("pieces", "Pieces", Kind.WHOLE)),
                    rows)));
    assertEquals(texts.size() + 1, read.size());
    for (int i = 0; i < texts.size(); i++) {
      String written = read.get(i + 1).get(0);
      assertFalse(written.strip().matches("(?s)[=+\\-@＝＋－＠].*"), written);
      assertEquals(texts.get(i), InertText.read(written));
      assertEquals("-1", read.get(i + 1).get(1));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"'neath", "motor oil", "3-1", "'"})
  void harmlessTextStaysAsItIs(String text) {
    assertEquals(text, InertText.write(text));
    assertEquals(text, InertText.read(text));
  }

  @ParameterizedTest
  @CsvSource({
    "CHANCE, 0.08315, 0.0832",
    "CHANCE, 1, 1",
    "CHANCE, 0.00001, 0",
    "DECIMAL, 7.40, 7.4",
    "DECIMAL, 1234567.8, 1234568",
    "DECIMAL, -0.0, 0",
    "DECIMAL, 0.000012345678, 0.0000123457"
  })
  void numbersArePlain(Kind kind, double number, String text) throws IOException {
    assertEquals("\"it\"\n\"" + text + "\"\n", csv(Examples.single(kind, Value.of(number))));
  }

  @Test
  void theOtherKindsAreWrittenForPrograms() {
    assertEquals("", CsvText.cell(Kind.WHOLE, Value.UNKNOWN));
    assertEquals("1234567", CsvText.cell(Kind.WHOLE, Value.of(1_234_567)));
    assertEquals("2026-05-01", CsvText.cell(Kind.DATE, Value.of(Examples.DAY)));
    assertEquals("4.90", CsvText.cell(Kind.MONEY, Examples.sum("4.9")));
    assertEquals("true", CsvText.cell(Kind.YES_NO, Value.of(true)));
  }

  @Test
  void bytesAreUtf8() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    Rendering.write(Examples.names(), Format.CSV, Look.PLAIN, bytes);
    assertEquals(csv(Examples.names()), bytes.toString(StandardCharsets.UTF_8));
    assertTrue(bytes.toString(StandardCharsets.UTF_8).contains("モーターオイル,12\n"));
  }

  @Test
  void aFullDiskIsNotPassedOverInSilence() {
    Writer full =
        new Writer() {
          @Override
          public void write(char[] text, int from, int length) throws IOException {
            throw new IOException("disk full");
          }

          @Override
          public void flush() {}

          @Override
          public void close() {}
        };
    for (Format format : List.of(Format.TABLE, Format.CSV, Format.JSON)) {
      assertThrows(
          IOException.class, () -> Rendering.write(Examples.restock(), format, Look.PLAIN, full));
    }
  }
}
