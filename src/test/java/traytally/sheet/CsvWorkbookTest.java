package traytally.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CsvWorkbookTest {
  @TempDir Path folder;

  private Path write(String text) throws IOException {
    return write(text.getBytes(StandardCharsets.UTF_8));
  }

  private Path write(byte[] bytes) throws IOException {
    return Files.write(folder.resolve("box.txt"), bytes);
  }

  private List<String> shown(String text) throws IOException {
    return Reader.shown(write(text));
  }

  @Test
  void inchMarksAreTextAndNoQuotes() throws IOException {
    assertEquals(
        List.of("1: lure|left", "2: 3\" paddle|4", "3: 3.5\" shad, 4\" worm|6\""),
        shown("lure,left\n3\" paddle,4\n\"3.5\"\" shad, 4\"\" worm\",6\"\n"));
  }

  @Test
  void aQuoteNeverClosedIsText() throws IOException {
    assertEquals(
        List.of("1: lure|left|note", "2: shad|4|\"the good ones", "3: worm|5|x", "4: grub|6|y"),
        shown("lure,left,note\nshad,4,\"the good ones\nworm,5,x\ngrub,6,y\n"));
  }

  @Test
  void aQuoteLeftOpenDoesNotSwallowTheNextRow() throws IOException {
    assertEquals(
        List.of("1: shad|4|\"good", "2: worm|5|x", "3: grub|6|\"old", "4: tail|7"),
        shown("shad,4,\"good\nworm,5,\"x\"\ngrub,6,\"old\n\"tail\",7\n"));
  }

  @Test
  void aQuoteClosedOnlyBeyondACellsLengthIsText() throws IOException {
    String filler = "worm,5,x\n".repeat(5_000);
    List<String> rows = shown("shad,4,\"the good ones\n" + filler + "grub,6,\"old\"\n");
    assertEquals(5_002, rows.size());
    assertEquals("1: shad|4|\"the good ones", rows.get(0));
    assertEquals("5002: grub|6|old", rows.get(5_001));
  }

  @Test
  void wordsAfterAClosingQuoteBelongToTheCell() throws IOException {
    assertEquals(List.of("1: 3 paddle\"|4", "2: D |x"), shown("\"3\" paddle\",4\n\"D\" ,x\n"));
  }

  @Test
  void quotedLinesKeepTheirEndsAndCountAsOneRow() throws IOException {
    assertEquals(
        List.of("1: a|\"two\"\r\nlines, even\n|c", "2: d|e|f"),
        shown("a,\"\"\"two\"\"\r\nlines, even\n\",c\r\nd,e,f\r\n"));
  }

  @Test
  void backslashesAreKept() throws IOException {
    assertEquals(List.of("1: a\\b|\\|c\\"), shown("a\\b,\"\\\",c\\\n"));
  }

  @Test
  void everyLineEndCountsAndBlankLinesAreNumbered() throws IOException {
    assertEquals(List.of("2: a|b", "4: c|d", "5: e|f"), shown("\r\na,b\r\rc,d\ne,f"));
  }

  @Test
  void blankCellsAreBlank() throws IOException {
    Row row = Reader.rows(write("a,,\"\",d,,\n")).get(0);
    assertEquals(List.of(Cell.text("a"), Cell.blank(), Cell.blank(), Cell.text("d")), row.cells());
    assertEquals(List.of("3: x|y"), shown(",,\n,\nx,y\n"));
  }

  @Test
  void theDelimiterIsFound() throws IOException {
    assertEquals(List.of("1: a|b,5", "2: c|1,5"), shown("a;b,5\nc;1,5\n"));
    assertEquals(List.of("1: a, b|b", "2: c|d"), shown("a, b\tb\nc\td\n"));
    assertEquals(List.of("1: a|b", "2: c|d"), shown("a|b\nc|d\n"));
    assertEquals(List.of("1: name|left", "2: shad; big|4"), shown("name,left\nshad; big,4\n"));
    assertEquals(
        List.of("1: My lures", "3: name|left", "4: shad|4,5", "5: worm|2"),
        shown("My lures\n\nname;left\nshad;4,5\nworm;2\n"));
    assertEquals(List.of("1: one column", "2: shad"), shown("one column\nshad\n"));
    assertEquals(List.of("1: a;b|c", "2: d,e"), shown("\"a;b\",c\n\"d,e\n"));
  }

  @Test
  void aDelimiterToldByTheFileOrThePersonStands() throws IOException {
    assertEquals(List.of("1: a,b|c", "2: d,e"), shown("sep=;\r\na,b;c\r\nd,e\r\n"));
    Path file = write("a,b;c\n");
    assertEquals(List.of("1: a,b|c"), Reader.shown(file, Reading.AS_FOUND.withDelimiter(';')));
    assertThrows(IllegalArgumentException.class, () -> Reading.AS_FOUND.withDelimiter('"'));
  }

  @ParameterizedTest
  @ValueSource(strings = {"UTF-8", "UTF-16LE", "UTF-16BE", "UTF-32LE", "UTF-32BE"})
  void aByteOrderMarkNamesTheEncoding(String charset) throws IOException {
    assertEquals(
        List.of("1: färg|3½", "2: crème|4"),
        Reader.shown(write("\uFEFFfärg,3½\ncrème,4\n".getBytes(Charset.forName(charset)))));
  }

  @Test
  void withoutAMarkUtf8IsTriedAndThenWindows() throws IOException {
    assertEquals(List.of("1: 3½|crème €"), shown("3½,crème €\n"));
    byte[] windows = "3½,crème €\n".getBytes(Charset.forName("windows-1252"));
    assertEquals(List.of("1: 3½|crème €"), Reader.shown(write(windows)));
  }

  @Test
  void aBadByteFarDownStillTellsWindows() throws IOException {
    String list = "a,b\n".repeat(40_000) + "é,x\n";
    List<String> rows = Reader.shown(write(list.getBytes(Charset.forName("windows-1252"))));
    assertEquals("40001: é|x", rows.get(40_000));
  }

  @Test
  void aLetterAcrossTwoBlocksIsStillUtf8() throws IOException {
    // 65,535 bytes, then a letter of two
    List<String> rows = shown("abc,\n".repeat(13_107) + "é,x\n");
    assertEquals("13108: é|x", rows.get(13_107));
  }

  @Test
  void anEncodingGivenStands() throws IOException {
    Path file = write("\u0161,x\n".getBytes(Charset.forName("ISO-8859-2")));
    assertEquals(
        List.of("1: \u0161|x"),
        Reader.shown(file, Reading.AS_FOUND.withEncoding(Charset.forName("ISO-8859-2"))));
  }
}
