package traytally.render;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.DataValidationConstraint;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFDataValidation;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import traytally.plastic.Finish;
import traytally.report.Value;
import traytally.trip.Clarity;
import traytally.trip.LossCause;

class TemplateTest {
  private static final Path KEPT = Path.of("templates");
  private static final LocalDate DAY = LocalDate.of(2026, 5, 1);

  private static byte[] blank(Template template, Format format) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    template.write(format, bytes);
    return bytes.toByteArray();
  }

  private static XSSFWorkbook open(byte[] bytes) throws IOException {
    return new XSSFWorkbook(new ByteArrayInputStream(bytes));
  }

  /** The parts of a workbook by name: how they are squeezed differs between systems. */
  private static Map<String, String> parts(byte[] workbook) throws IOException {
    Map<String, String> parts = new TreeMap<>();
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(workbook))) {
      for (ZipEntry part = zip.getNextEntry(); part != null; part = zip.getNextEntry()) {
        parts.put(part.getName(), new String(zip.readAllBytes(), StandardCharsets.UTF_8));
      }
    }
    return parts;
  }

  @ParameterizedTest
  @EnumSource
  void theKeptTemplatesAreWhatIsHandedOut(Template template) throws IOException {
    byte[] workbook = blank(template, Format.XLSX);
    byte[] csv = blank(template, Format.CSV);
    if (Golden.UPDATE) {
      Files.createDirectories(KEPT);
      Files.write(KEPT.resolve(template.word() + ".xlsx"), workbook);
      Files.write(KEPT.resolve(template.word() + ".csv"), csv);
    }
    assertEquals(
        parts(Files.readAllBytes(KEPT.resolve(template.word() + ".xlsx"))), parts(workbook));
    assertArrayEquals(Files.readAllBytes(KEPT.resolve(template.word() + ".csv")), csv);
  }

  @ParameterizedTest
  @EnumSource
  void twoRunsGiveTheSameBytes(Template template) throws IOException {
    byte[] first = blank(template, Format.XLSX);
    // Several times: an order that is left to chance is often the same twice.
    for (int i = 0; i < 8; i++) {
      assertArrayEquals(first, blank(template, Format.XLSX));
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "box|Maker, Body style*, Colour*, Length (mm)*, Pieces*, Pack size, Pack price, Tray,"
            + " Base swatch, Flake swatch, Finish, Kept, Note",
        "trips|Date*, Water, Species, Clarity, Maker, Body style*, Colour*, Length (mm), Minutes,"
            + " Casts, Follows, Takes, Hooked, Landed, Lost, Lost how, Worn, Rods, Note",
        "plan|Date*, Water, Species, Clarity, Hours*, Rods, Note",
        "prices|Shop*, Maker, Body style*, Colour*, Length (mm)*, Pack size*, Pack price*,"
            + " Currency, In stock, Postage, Free postage over, Delivery days"
      })
  void headingsAreTheAgreedWordsWithTheNeededOnesBold(String word, String agreed)
      throws IOException {
    Template template = Template.parse(word).orElseThrow();
    List<String> words = Arrays.asList(agreed.split(", ", -1));
    try (XSSFWorkbook book = open(blank(template, Format.XLSX))) {
      Row row = book.getSheetAt(0).getRow(0);
      assertEquals(words.size(), row.getLastCellNum());
      for (int i = 0; i < words.size(); i++) {
        boolean needed = words.get(i).endsWith("*");
        String heading = words.get(i).replace("*", "");
        assertEquals(heading, row.getCell(i).getStringCellValue());
        assertEquals(
            needed,
            book.getFontAt(row.getCell(i).getCellStyle().getFontIndex()).getBold(),
            heading);
      }
    }
    assertEquals(
        agreed.replace("*", "").replace(", ", ",") + "\n",
        new String(blank(template, Format.CSV), StandardCharsets.UTF_8));
  }

  @Test
  void choicesAreTheWordsTheProgramKnows() throws IOException {
    try (XSSFWorkbook book = open(blank(Template.TRIPS, Format.XLSX))) {
      assertEquals(
          List.of(
              Arrays.stream(Clarity.values()).map(Clarity::word).toList(),
              Arrays.stream(LossCause.values()).map(LossCause::word).toList()),
          choices(book.getSheetAt(0)));
    }
    try (XSSFWorkbook book = open(blank(Template.BOX, Format.XLSX))) {
      assertEquals(
          List.of(Arrays.stream(Finish.values()).map(Finish::word).toList(), List.of("yes", "no")),
          choices(book.getSheetAt(0)));
    }
  }

  private static List<List<String>> choices(XSSFSheet sheet) {
    return sheet.getDataValidations().stream()
        .map(XSSFDataValidation::getValidationConstraint)
        .filter(c -> c.getValidationType() == DataValidationConstraint.ValidationType.LIST)
        .map(c -> List.of(c.getExplicitListValues()))
        .toList();
  }

  @ParameterizedTest
  @EnumSource
  void theInstructionsSpeakOfEveryColumn(Template template) throws IOException {
    try (XSSFWorkbook book = open(blank(template, Format.XLSX))) {
      assertEquals(2, book.getNumberOfSheets());
      assertEquals(1, book.getSheetAt(0).getPaneInformation().getHorizontalSplitPosition());
      XSSFSheet sheet = book.getSheet("Instructions");
      int first = sheet.getLastRowNum() - template.headings().size() + 1;
      for (int i = 0; i < template.headings().size(); i++) {
        Row row = sheet.getRow(first + i);
        assertEquals(template.headings().get(i), row.getCell(0).getStringCellValue());
        assertTrue(row.getCell(2).getStringCellValue().endsWith("."));
      }
    }
  }

  private static List<Value> planned() {
    return List.of(
        Value.of(DAY),
        Value.of("=Gull's Reach"),
        Value.of("'-bass"),
        Value.UNKNOWN,
        Value.of(4.5),
        Value.of(2),
        Value.of(""));
  }

  @Test
  void rowsToGoOnFromStandBelowTheHeadings() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    Template.PLAN.write(List.of(planned()), DAY, Format.XLSX, bytes);
    try (XSSFWorkbook book = open(bytes.toByteArray())) {
      Row row = book.getSheetAt(0).getRow(1);
      assertEquals(DAY.atStartOfDay(), row.getCell(0).getLocalDateTimeCellValue());
      assertEquals(CellType.STRING, row.getCell(1).getCellType());
      assertEquals("=Gull's Reach", row.getCell(1).getStringCellValue());
      assertTrue(row.getCell(1).getCellStyle().getQuotePrefixed());
      // Read back, the first apostrophe is taken for a guard: the text has one of its own.
      assertEquals("''-bass", row.getCell(2).getStringCellValue());
      assertEquals(CellType.BLANK, row.getCell(3).getCellType());
      assertEquals(4.5, row.getCell(4).getNumericCellValue());
      assertEquals(CellType.BLANK, row.getCell(6).getCellType());
    }
    ByteArrayOutputStream csv = new ByteArrayOutputStream();
    Template.PLAN.write(List.of(planned()), DAY, Format.CSV, csv);
    assertEquals(
        "Date,Water,Species,Clarity,Hours,Rods,Note\n2026-05-01,'=Gull's Reach,''-bass,,4.5,2,\n",
        csv.toString(StandardCharsets.UTF_8));
  }

  @Test
  void keptIsSaidInWords() throws IOException {
    List<Value> row = new ArrayList<>(Collections.nCopies(13, Value.UNKNOWN));
    row.set(11, Value.of(true));
    ByteArrayOutputStream csv = new ByteArrayOutputStream();
    Template.BOX.write(List.of(row), DAY, Format.CSV, csv);
    assertTrue(csv.toString(StandardCharsets.UTF_8).endsWith("\n,,,,,,,,,,,yes,\n"));
  }

  @Test
  void otherFormatsAndShortRowsAreRefused() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    assertThrows(IllegalArgumentException.class, () -> Template.BOX.write(Format.JSON, out));
    assertThrows(
        IllegalArgumentException.class,
        () -> Template.BOX.write(List.of(planned()), DAY, Format.CSV, out));
  }
}
