package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import traytally.cli.Ran;

/** The tray written as a sheet, edited and saved by a spreadsheet program, and read back. */
class RoundTripTest {
  private static final String TRAY =
      """
      Maker,Body style,Colour,Length (mm),Pieces,Pack size,Pack price,Tray,Base swatch,Kept,Note
      Brackwell,paddle tail,motor oil,75,10,8,5.25,A,#5b4a1e,yes,"best, at dusk"
      ,curl tail,chalk,90,6,,,B,,,'=1+1
      ,シャッドテール,モーターオイル,65,4,,,B,,,
      ,זנב,ירוק,65,5,,,,,,3-1
      ,grub,ink,50,2,,,,,,"''-2, or so"
      """;
  private static final String LOG =
      """
      Date,Body style,Colour,Length (mm),Minutes,Lost
      2026-04-20,paddle tail,motor oil,75,60,7
      """;

  /** 44 comma, 34 quote, 76 UTF-8, from row 1, texts as shown. */
  private static final String TEXT = "Text - txt - csv (StarCalc):44,34,76,1";

  @TempDir Path folder;

  @BeforeEach
  void aTrayOfWhichSevenWereLost() throws IOException {
    Files.writeString(folder.resolve("tray.csv"), TRAY);
    Files.writeString(folder.resolve("log.csv"), LOG);
    assertEquals(0, run("import", path("tray.csv"), "--count-date", "2026-03-01").code());
    assertEquals(0, run("import", path("log.csv")).code());
  }

  private Ran run(String... args) {
    return Ran.in(folder, args);
  }

  private String path(String name) {
    return folder.resolve(name).toString();
  }

  /** What the box holds, a line a plastic, without what is worked out from all of it. */
  private String box() {
    return run("box", "--format", "csv")
        .out()
        .lines()
        .map(line -> line.replaceFirst("(,[^,]*){4}$", ""))
        .collect(Collectors.joining("\n"));
  }

  private Json imported(String name) {
    Ran ran = run("import", path(name), "--format", "json");
    assertEquals(0, ran.code(), ran.err());
    return Json.parse(ran.out());
  }

  @ParameterizedTest
  @ValueSource(strings = {"sheet.xlsx", "sheet.csv"})
  void aSheetLeftAloneChangesNothing(String name) {
    assertEquals(0, run("sheet", "box", "--out", path(name)).code());
    String before = box();
    Json report = imported(name);
    assertTrue(report.isNull("batch"));
    assertEquals(5, report.number("rows_taken"));
    assertEquals(before, box());
  }

  /** Edits two counts and a note, as a person does, and saves the sheet under another name. */
  private void edit(String from, String to) throws IOException {
    try (InputStream in = Files.newInputStream(folder.resolve(from));
        XSSFWorkbook book = new XSSFWorkbook(in);
        OutputStream out = Files.newOutputStream(folder.resolve(to))) {
      Sheet sheet = book.getSheetAt(0);
      for (Row row : sheet) {
        String colour = row.getCell(2).getStringCellValue();
        if (colour.equals("motor oil")) {
          row.getCell(4).setCellValue(10);
        } else if (colour.equals("モーターオイル")) {
          row.getCell(4).setCellValue(1);
        } else if (colour.equals("ירוק")) {
          row.getCell(7).setCellValue("C");
        }
      }
      book.write(out);
    }
  }

  /** The edits, and nothing else; the same file again changes nothing. */
  private void assertTaken(String name) {
    List<String> before = box().lines().toList();
    imported(name);
    List<String> after = box().lines().toList();
    assertEquals(before.size(), after.size());
    List<String> changed = new ArrayList<>(after);
    changed.removeAll(before);
    assertEquals(3, changed.size(), changed.toString());
    assertTrue(changed.get(0).startsWith("Brackwell,paddle tail,motor oil,75,10,"), changed + "");
    assertTrue(changed.toString().contains("זנב,ירוק,65,5,,,C,"), changed.toString());
    assertTrue(changed.toString().contains("シャッドテール,モーターオイル,65,1,"), changed.toString());
    Json ledger = Json.parse(run("ledger", "--format", "json").out());
    long recounts =
        ledger.rows().stream().filter(row -> row.text("kind").equals("recount")).count();
    assertEquals(2, recounts);
    String now = box();
    assertTrue(imported(name).isNull("batch"));
    assertEquals(now, box());
  }

  @Test
  void onlyEditsCountBackToAnOldNumberToo() throws IOException {
    run("sheet", "box", "--out", path("sheet.xlsx"));
    edit("sheet.xlsx", "edited.xlsx");
    assertTaken("edited.xlsx");
  }

  /** One start of the program for each kind it saves, since starting is most of the time. */
  @Test
  void aSpreadsheetProgramMaySaveItAsWhatItLikes() throws IOException, InterruptedException {
    run("sheet", "box", "--out", path("sheet.xlsx"));
    run("sheet", "box", "--out", path("text.csv"));
    edit("sheet.xlsx", "edited.xlsx");
    Program.convert(folder, "ods", folder, "edited.xlsx");
    Files.move(folder.resolve("edited.ods"), folder.resolve("open.ods"));
    Program.convert(folder, "xls", folder, "edited.xlsx");
    Program.convert(folder, "csv:" + TEXT, folder, "edited.xlsx");
    Path saved = folder.resolve("saved");
    Program.convert(folder, "xlsx", saved, "edited.xlsx", "open.ods");
    Program.convert(folder, "xlsx", saved, "--infilter=" + TEXT, "text.csv");
    textSavedAsAWorkbookIsNoFormulaAndChangesNothing("saved/text.xlsx");
    byte[] before = Files.readAllBytes(folder.resolve("tray.box"));
    for (String name :
        List.of("edited.xls", "edited.csv", "saved/edited.xlsx", "saved/open.xlsx")) {
      Files.write(folder.resolve("tray.box"), before);
      assertTaken(name);
    }
  }

  private void textSavedAsAWorkbookIsNoFormulaAndChangesNothing(String name) throws IOException {
    DataFormatter formatter = new DataFormatter(Locale.ROOT);
    try (InputStream in = Files.newInputStream(folder.resolve(name));
        XSSFWorkbook book = new XSSFWorkbook(in)) {
      Row row = book.getSheetAt(0).getRow(1);
      assertEquals("chalk", formatter.formatCellValue(row.getCell(2)));
      assertTrue(formatter.formatCellValue(row.getCell(12)).contains("=1+1"));
    }
    assertTrue(imported(name).isNull("batch"), "a guard was read as an edit");
  }
}
