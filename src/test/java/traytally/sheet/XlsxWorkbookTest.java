package traytally.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class XlsxWorkbookTest {
  @TempDir Path folder;

  private Cell only(String cellXml) throws IOException {
    List<Row> rows = Reader.rows(write(HandmadeXlsx.ofSheet("<row r='1'>" + cellXml + "</row>")));
    return rows.isEmpty() ? Cell.blank() : rows.get(0).cell(0);
  }

  private Path write(HandmadeXlsx xlsx) throws IOException {
    return xlsx.writeTo(folder.resolve("box.xlsx"));
  }

  @Test
  void eachKindOfCellIsTold() throws IOException {
    assertEquals(new Cell.Numeric(7.5, "General"), only("<c r='A1'><v>7.5</v></c>"));
    assertEquals(new Cell.Bool(true), only("<c r='A1' t='b'><v>1</v></c>"));
    assertEquals(new Cell.ErrorValue("#DIV/0!"), only("<c r='A1' t='e'><v>#DIV/0!</v></c>"));
    assertEquals(new Cell.Text("six"), only("<c r='A1' t='str'><f>X1</f><v>six</v></c>"));
    assertEquals(new Cell.Text("six"), only("<c r='A1' t='inlineStr'><is><t>six</t></is></c>"));
    assertEquals(
        new Cell.DateTime(LocalDateTime.of(2024, 5, 3, 6, 40)),
        only("<c r='A1' t='d'><v>2024-05-03T06:40:00Z</v></c>"));
    assertEquals(
        new Cell.DateTime(LocalDateTime.of(2024, 5, 3, 0, 0)),
        only("<c r='A1' t='d'><v>2024-05-03</v></c>"));
    assertEquals(
        new Cell.Time(Duration.ofMinutes(90)), only("<c r='A1' t='d'><v>01:30:00</v></c>"));
    assertEquals(new Cell.Text("soon"), only("<c r='A1' t='d'><v>soon</v></c>"));
  }

  @Test
  void aFormulaIsReadAsItsStoredResultAndNeverWorkedOut() throws IOException {
    assertEquals(new Cell.Numeric(5, "General"), only("<c r='A1'><f>2+2</f><v>5</v></c>"));
    assertEquals(Cell.blank(), only("<c r='A1'><f>2+2</f></c>"));
  }

  @Test
  void aCellWithoutAValueIsBlank() throws IOException {
    for (String type : List.of("s", "n", "b", "e", "str", "d")) {
      assertEquals(Cell.blank(), only("<c r='A1' t='" + type + "'/>"), type);
      assertEquals(Cell.blank(), only("<c r='A1' t='" + type + "'><v/></c>"), type);
    }
  }

  @Test
  void runsOfOneTextAreJoinedAndReadingAidsLeftOut() throws IOException {
    Path file =
        write(
            HandmadeXlsx.ofSheet("<row><c t='s'><v>0</v></c><c t='s'><v>1</v></c></row>")
                .texts(
                    "<si><r><t>motor </t></r><r><rPr><b/></rPr><t>oil</t></r>"
                        + "<rPh sb='0' eb='1'><t>aloud</t></rPh></si>"
                        + "<si><t>two_x000A_lines _x005F_x000A_</t></si>"));
    assertEquals(List.of("1: motor oil|two\nlines _x000A_"), Reader.shown(file));
  }

  @Test
  void rowsAndCellsWithoutAddressesFollowEachOther() throws IOException {
    Path file =
        write(
            HandmadeXlsx.ofSheet(
                "<row><c><v>1</v></c><c r='D1'><v>2</v></c><c><v>3</v></c></row>"
                    + "<row r='5'/><row><c><v>4</v></c></row>"));
    assertEquals(List.of("1: 1|||2|3", "6: 4"), Reader.shown(file));
  }

  @Test
  void blankCellsAfterTheLastAreDropped() throws IOException {
    Path file =
        write(HandmadeXlsx.ofSheet("<row r='2'><c r='B2'><v>1</v></c><c r='Z2' s='0'/></row>"));
    Row row = Reader.rows(file).get(0);
    assertEquals(2, row.cells().size());
    assertEquals(Cell.blank(), row.cell(25));
    assertEquals("B2", row.address(1).toString());
  }

  @Test
  void hiddenRowsAreReadAndMarked() throws IOException {
    Path file =
        write(
            HandmadeXlsx.ofSheet(
                "<row hidden='1'><c><v>1</v></c></row><row hidden='true'><c><v>2</v></c></row>"
                    + "<row hidden='0'><c><v>3</v></c></row>"));
    assertEquals(List.of(true, true, false), Reader.rows(file).stream().map(Row::hidden).toList());
  }

  @Test
  void prefixesAndTheStrictFormAreReadAlike() throws IOException {
    String strict = "http://purl.oclc.org/ooxml/spreadsheetml/main";
    String type = "http://purl.oclc.org/ooxml/officeDocument/relationships/";
    String link = "<k:Relationship Id='s1' Type='%s' Target='%s'/>";
    String links =
        "<k:Relationships xmlns:k='http://schemas.openxmlformats.org/package/2006/relationships'>"
            + link
            + "</k:Relationships>";
    Path file =
        write(
            HandmadeXlsx.ofSheet("")
                .part("_rels/.rels", links.formatted(type + "officeDocument", "/xl/workbook.xml"))
                .part(
                    "xl/workbook.xml",
                    "<x:workbook xmlns:x='%s' xmlns:q='urn:q'><x:workbookPr date1904='1'/><x:sheets>"
                            .formatted(strict)
                        + "<x:sheet name='Box' q:id='s1'/></x:sheets></x:workbook>")
                .part(
                    "xl/_rels/workbook.xml.rels",
                    links.formatted(type + "worksheet", "/xl/../xl/worksheets/sheet1.xml"))
                .part(
                    "xl/worksheets/sheet1.xml",
                    "<x:worksheet xmlns:x='%s'><x:sheetData><x:row r='1'><x:c r='A1'><x:v>4</x:v></x:c></x:row></x:sheetData></x:worksheet>"
                        .formatted(strict)));
    assertEquals(List.of("1: 4"), Reader.shown(file));
  }

  /**
   * The second workbookPr is what newer programs leave in an extension; it says nothing of dates.
   */
  @ParameterizedTest
  @CsvSource({"'', 2024-05-03", "date1904='1', 2028-05-04", "date1904='false', 2024-05-03"})
  void datesCountFromWhereTheWorkbookSays(String setting, String day) throws IOException {
    Path file =
        write(
            HandmadeXlsx.ofSheet("<row><c s='1'><v>45415</v></c><c s='2'><v>0.0625</v></c></row>")
                .part(
                    "xl/workbook.xml",
                    "<workbook xmlns:r='urn:r'><workbookPr %s/><sheets><sheet name='Box' r:id='s1'/></sheets><extLst><workbookPr x='0'/></extLst></workbook>"
                        .formatted(setting))
                .part(
                    "xl/styles.xml",
                    "<styleSheet><numFmts><numFmt numFmtId='164' formatCode='h:mm'/></numFmts>"
                        + "<cellStyleXfs><xf numFmtId='9'/></cellStyleXfs>"
                        + "<cellXfs><xf/><xf numFmtId='14'/><xf numFmtId='164'/></cellXfs></styleSheet>"));
    assertEquals(List.of("1: " + day + "|1:30"), Reader.shown(file));
  }

  @Test
  void mergedAreasAreKnownAfterTheLastRow() throws IOException {
    Path file =
        write(
            HandmadeXlsx.ofSheet("")
                .part(
                    "xl/worksheets/sheet1.xml",
                    HandmadeXlsx.sheet(
                        "<sheetData><row><c><v>1</v></c></row></sheetData>"
                            + "<mergeCells><mergeCell ref='A1:C2'/><mergeCell ref='E9'/></mergeCells>")));
    try (Workbook workbook = Workbook.open(file);
        Rows rows = workbook.rows(workbook.sheets().get(0))) {
      rows.next();
      assertThrows(IllegalStateException.class, rows::merges);
      assertFalse(rows.hasNext());
      assertEquals(List.of(CellRange.parse("A1:C2"), CellRange.parse("E9")), rows.merges());
    }
  }

  @Test
  void mergedAreasAreFoundInAnotherEncoding() throws IOException {
    String sheet =
        HandmadeXlsx.sheet(
            "<sheetData><row><c><v>1</v></c></row></sheetData><mergeCells><mergeCell ref='A1:B1'/></mergeCells>");
    Path file =
        HandmadeXlsx.ofSheet("")
            .writeTo(
                folder.resolve("box.xlsx"),
                "xl/worksheets/sheet1.xml",
                out -> out.write(sheet.getBytes(StandardCharsets.UTF_16)));
    try (Workbook workbook = Workbook.open(file);
        Rows rows = workbook.rows(workbook.sheets().get(0))) {
      rows.forEachRemaining(row -> {});
      assertEquals(List.of(CellRange.parse("A1:B1")), rows.merges());
    }
  }

  @Test
  void chartsAreNoSheetsAndHiddenOnesAreMarked() throws IOException {
    Path file =
        write(
            HandmadeXlsx.ofSheet("<row><c><v>1</v></c></row>")
                .part(
                    "xl/workbook.xml",
                    "<workbook xmlns:r='urn:r'><sheets><sheet name='Pie' r:id='c'/>"
                        + "<sheet name='Box' r:id='s1' state='visible'/><sheet name='Old' r:id='s1' state='veryHidden'/>"
                        + "</sheets></workbook>")
                .part(
                    "xl/_rels/workbook.xml.rels",
                    HandmadeXlsx.links(
                        HandmadeXlsx.link("c", "chartsheet", "chartsheets/sheet1.xml"),
                        HandmadeXlsx.link("s1", "worksheet", "worksheets/sheet1.xml"))));
    try (Workbook workbook = Workbook.open(file)) {
      assertEquals(
          List.of(new Sheet(0, "Box", false), new Sheet(1, "Old", true)), workbook.sheets());
      assertThrows(IllegalArgumentException.class, () -> workbook.rows(new Sheet(0, "Pie", false)));
    }
  }

  @Test
  void aSheetMayBeReadTwice() throws IOException {
    Path file = write(HandmadeXlsx.ofSheet("<row><c><v>1</v></c></row>"));
    try (Workbook workbook = Workbook.open(file)) {
      for (int time = 0; time < 2; time++) {
        try (Rows rows = workbook.rows(workbook.sheets().get(0))) {
          assertEquals("1", rows.next().cell(0).shown());
        }
      }
    }
  }
}
