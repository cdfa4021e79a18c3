package traytally.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HostileFileTest {
  private static final String SHEET = "xl/worksheets/sheet1.xml";
  private static final String TOO_LARGE = "This file is too large to be read.";

  @TempDir Path folder;

  private Path file() {
    return folder.resolve("box.xlsx");
  }

  private static void assertStarts(String start, String message) {
    assertTrue(message.startsWith(start), message);
  }

  @Test
  void aSheetThatUnfoldsWithoutEndIsStopped() throws IOException {
    byte[] blanks = new byte[1 << 20];
    Arrays.fill(blanks, (byte) ' ');
    Path bomb =
        HandmadeXlsx.ofSheet("")
            .writeTo(
                file(),
                SHEET,
                out -> {
                  out.write("<worksheet><sheetData>".getBytes(StandardCharsets.UTF_8));
                  for (int mebibyte = 0; mebibyte < 80; mebibyte++) {
                    out.write(blanks);
                  }
                  out.write("</sheetData></worksheet>".getBytes(StandardCharsets.UTF_8));
                });
    assertTrue(Files.size(bomb) < 200_000);
    assertStarts(TOO_LARGE, Reader.refusal(bomb));
  }

  @Test
  void partsTogetherMayNotUnfoldPastTheLimit() throws IOException {
    Path file =
        HandmadeXlsx.ofSheet("<row><c><v>1</v></c></row>")
            .texts("<si><t>x</t></si>".repeat(1000))
            .writeTo(file());
    assertEquals(List.of("1: 1"), Reader.shown(file));
    assertStarts(TOO_LARGE, Reader.refusal(file, with(new LimitChange().unfoldedBytes(10_000))));
  }

  @Test
  void sharedTextsMayNotFillTheMemory() throws IOException {
    Path file =
        HandmadeXlsx.ofSheet("<row><c t='s'><v>0</v></c></row>")
            .texts("<si><t>shad</t></si>".repeat(1000))
            .writeTo(file());
    assertEquals(List.of("1: shad"), Reader.shown(file));
    assertStarts(TOO_LARGE, Reader.refusal(file, with(new LimitChange().sharedCharacters(20_000))));
  }

  /** 30,000 characters a million times over would be the 30 billion a small file can claim. */
  @Test
  void oneLongTextMayNotBeGivenOutForever() throws IOException {
    Path file =
        HandmadeXlsx.ofSheet("<row>" + "<c t='s'><v>0</v></c>".repeat(16_000) + "</row>")
            .texts("<si><t>" + "x".repeat(30_000) + "</t></si>")
            .writeTo(file());
    assertTrue(Files.size(file) < 10_000);
    assertStarts("This file holds more text than can be read.", Reader.refusal(file));
  }

  @Test
  void aTextLongerThanACellIsRefused() throws IOException {
    String start = "A cell of this file holds more text";
    String text = "x".repeat(32_768);
    assertStarts(
        start,
        Reader.refusal(
            HandmadeXlsx.ofSheet("<row><c><v>" + text + "</v></c></row>").writeTo(file())));
    assertStarts(
        start,
        Reader.refusal(
            HandmadeXlsx.ofSheet("")
                .part(
                    SHEET,
                    HandmadeXlsx.sheet("<sheetData><row><c t='s'><v>0</v></c></row></sheetData>"))
                .texts(
                    "<si><r><t>"
                        + text.substring(9)
                        + "</t></r><r><t>"
                        + "y".repeat(99)
                        + "</t></r></si>")
                .writeTo(file())));
    assertStarts(start, Reader.refusal(Files.writeString(folder.resolve("a.csv"), "a,b\n" + text)));
  }

  @Test
  void definitionsOfCharactersAreRefused() throws IOException {
    String harm = "This file was made to do harm";
    String definition = "<!DOCTYPE x [<!ENTITY a 'lol'>]>";
    String sheet =
        HandmadeXlsx.sheet("<sheetData><row><c t='str'><v>&a;</v></c></row></sheetData>");
    assertStarts(
        harm,
        Reader.refusal(HandmadeXlsx.ofSheet("").part(SHEET, definition + sheet).writeTo(file())));
    assertStarts(
        harm,
        Reader.refusal(
            HandmadeXlsx.ofSheet("<row><c><v>1</v></c></row>")
                .part("xl/sharedStrings.xml", definition + "<sst><si><t>&a;</t></si></sst>")
                .writeTo(file())));
  }

  @Test
  void otherFilesAreNeverFetched() throws IOException {
    Path secret = Files.writeString(folder.resolve("secret.txt"), "<row><c><v>7</v></c></row>");
    String definition = "<!DOCTYPE x [<!ENTITY a SYSTEM '" + secret.toUri() + "'>]>";
    String sheet = HandmadeXlsx.sheet("<sheetData>&a;</sheetData>");
    assertStarts(
        "This file was made to do harm",
        Reader.refusal(HandmadeXlsx.ofSheet("").part(SHEET, definition + sheet).writeTo(file())));
  }

  @Test
  void aLoneCellInTheFarthestCornerIsRead() throws IOException {
    Path file =
        HandmadeXlsx.ofSheet("<row r='1048576'><c r='XFD1048576'><v>1</v></c></row>")
            .writeTo(file());
    Row row = Reader.rows(file).get(0);
    assertEquals("XFD1048576", row.address(row.cells().size() - 1).toString());
  }

  @Test
  void cellsBeyondTheFarthestCornerAreRefused() throws IOException {
    assertStarts(
        "This file has more columns",
        Reader.refusal(
            HandmadeXlsx.ofSheet("<row><c r='XFE1'><v>1</v></c></row>").writeTo(file())));
    assertStarts(
        "This file has more rows",
        Reader.refusal(
            HandmadeXlsx.ofSheet("<row r='1048577'><c><v>1</v></c></row>").writeTo(file())));
    assertStarts(
        "This file is damaged",
        Reader.refusal(HandmadeXlsx.ofSheet("<row r='0'><c><v>1</v></c></row>").writeTo(file())));
  }

  @Test
  void farCellsInEveryRowAreStopped() throws IOException {
    Path file =
        HandmadeXlsx.ofSheet("<row><c r='XFD1'><v>1</v></c></row>".repeat(1_300)).writeTo(file());
    assertStarts("This file has more cells", Reader.refusal(file));
  }

  @Test
  void fiftyThousandMergesAreRefused() throws IOException {
    StringBuilder merges = new StringBuilder("<sheetData/><mergeCells>");
    for (int row = 1; row <= 50_000; row++) {
      merges.append("<mergeCell ref='A").append(row).append(":B").append(row).append("'/>");
    }
    Path file =
        HandmadeXlsx.ofSheet("")
            .part(SHEET, HandmadeXlsx.sheet(merges + "</mergeCells>"))
            .writeTo(file());
    assertStarts("A sheet of this file has too many merged cells.", Reader.refusal(file));
  }

  @Test
  void tooManySheetsStylesOrPartsAreRefused() throws IOException {
    HandmadeXlsx xlsx =
        HandmadeXlsx.ofSheet("<row><c><v>1</v></c></row>")
            .part(
                "xl/styles.xml",
                "<styleSheet><cellXfs>" + "<xf/>".repeat(9) + "</cellXfs></styleSheet>")
            .part(
                "xl/workbook.xml",
                "<workbook xmlns:r='urn:r'>"
                    + "<sheet r:id='s1' name='a'/>".repeat(9)
                    + "</workbook>");
    Path file = xlsx.writeTo(file());
    assertEquals(9, Reader.rows(file).size());
    assertStarts(
        "This file has too many sheets.", Reader.refusal(file, with(new LimitChange().sheets(8))));
    assertStarts(
        "This file has more cell styles", Reader.refusal(file, with(new LimitChange().styles(8))));
    assertStarts(
        "This file is packed from more", Reader.refusal(file, with(new LimitChange().parts(4))));
  }

  @Test
  void twoPartsOfOneNameAreRefused() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      for (String name : List.of("xl/workbook.xml", "XL/workbook.xml")) {
        zip.putNextEntry(new ZipEntry(name));
        zip.write("<workbook/>".getBytes(StandardCharsets.UTF_8));
        zip.closeEntry();
      }
    }
    Path file = Files.write(file(), bytes.toByteArray());
    assertStarts("This file is damaged: it holds two parts of one name.", Reader.refusal(file));
  }

  @Test
  void aFileCutShortIsRefusedWherever() throws IOException {
    byte[] whole =
        Files.readAllBytes(
            HandmadeXlsx.ofSheet("<row><c><v>1</v></c></row>".repeat(50)).writeTo(file()));
    for (int length = 4; length < whole.length; length += 7) {
      Files.write(file(), Arrays.copyOf(whole, length));
      assertStarts("This file is damaged", Reader.refusal(file()));
    }
  }

  @Test
  void aPartThatBreaksOffHalfWayGivesItsRowsAndThenTheSentence() throws IOException {
    Path file =
        HandmadeXlsx.ofSheet("")
            .part(SHEET, "<worksheet><sheetData><row><c><v>1</v></c></row><row><c><v>2</v>")
            .writeTo(file());
    try (Workbook workbook = Workbook.open(file);
        Rows rows = workbook.rows(workbook.sheets().get(0))) {
      assertEquals("1", rows.next().cell(0).shown());
      UnreadableSheetException e =
          org.junit.jupiter.api.Assertions.assertThrows(
              UnreadableSheetException.class, rows::hasNext);
      assertStarts("This file is damaged", e.getMessage());
      assertTrue(e.getCause() instanceof javax.xml.stream.XMLStreamException);
    }
  }

  @Test
  void whatCellsPointAtMustBeThere() throws IOException {
    assertStarts(
        "This file is damaged: the text of a cell in row 1 is missing.",
        Reader.refusal(HandmadeXlsx.ofSheet("<row><c t='s'><v>3</v></c></row>").writeTo(file())));
    assertStarts(
        "This file is damaged: a part of it is missing.",
        Reader.refusal(HandmadeXlsx.ofSheet("").without(SHEET).writeTo(file())));
  }

  /** An .xls can show 256 columns; a small one can claim thirty thousand. */
  @Test
  void columnsNoOldSheetHasAreRefused() throws IOException {
    Path file = folder.resolve("box.xls");
    try (HSSFWorkbook workbook = new HSSFWorkbook();
        OutputStream out = Files.newOutputStream(file)) {
      workbook.createSheet("Box").createRow(0).createCell(255).setCellValue(7.25);
      workbook.write(out);
    }
    byte[] bytes = Files.readAllBytes(file);
    int number = find(bytes, new byte[] {3, 2, 14, 0, 0, 0, (byte) 255, 0});
    bytes[number + 6] = (byte) (30_210 & 0xFF);
    bytes[number + 7] = (byte) (30_210 >> 8);
    Files.write(file, bytes);
    assertStarts("This file has more columns", Reader.refusal(file));
  }

  static int find(byte[] bytes, byte[] wanted) {
    for (int i = 0; i < bytes.length - wanted.length; i++) {
      if (Arrays.equals(bytes, i, i + wanted.length, wanted, 0, wanted.length)) {
        return i;
      }
    }
    throw new IllegalStateException("no such record");
  }

  @Test
  void aTextFileWithoutLinesOrWithTooManyIsRefused() throws IOException {
    Path file = Files.writeString(folder.resolve("a.csv"), " ".repeat(3 << 20));
    assertStarts("A line of this file is too long for a list", Reader.refusal(file));
    Files.writeString(file, "\n".repeat((1 << 20) + 1) + "a,b\n");
    assertStarts("This file has more rows", Reader.refusal(file));
    Files.writeString(file, ",".repeat(20_000) + "a\n");
    assertStarts("This file has more columns", Reader.refusal(file));
  }

  @Test
  void aFileTooLargeIsNotEvenOpened() throws IOException {
    Path file = Files.writeString(folder.resolve("a.csv"), "a,b\n".repeat(1000));
    assertStarts(TOO_LARGE, Reader.refusal(file, with(new LimitChange().fileBytes(3999))));
  }

  /**
   * Each line opens a quote that none closes, so each is looked ahead from: that must not add up.
   */
  @Test
  void quotesOpenedOnEveryLineDoNotAddUp() throws IOException {
    Path file = Files.writeString(folder.resolve("a.csv"), "\"a\n".repeat(100_001));
    List<Row> rows = Reader.rows(file);
    assertEquals("\"a", rows.get(0).cell(0).shown());
    assertEquals(100_001, rows.get(rows.size() - 1).number());
  }

  private static Reading with(LimitChange change) {
    return Reading.AS_FOUND.withLimits(change.limits());
  }
}
