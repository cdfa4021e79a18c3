package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** The shopping list where one writes 4,40: people see commas, and programs what they always do. */
class CommaCountryTest {
  private static final String BOX =
      "Body style,Colour,Length (mm),Pieces,Kept\npaddle,ink,75,0,yes\npaddle,olive,75,1,yes\n";
  private static final String TRIPS =
      """
      Date,Water,Body style,Colour,Length (mm),Minutes,Takes,Hooked,Landed,Lost
      2026-04-01,Gull Rocks,paddle,ink,75,120,4,2,1,3
      2026-04-12,Gull Rocks,paddle,olive,75,120,3,2,1,2
      2026-04-20,Gull Rocks,paddle,ink,75,120,4,2,1,3
      """;
  private static final String PRICES =
      """
      Shop,Body style,Colour,Length (mm),Pack size,Pack price,Currency,In stock,Postage
      Quay,paddle,ink,75,20,9.25,EUR,yes,3.50
      """;

  private static final String SUM = "Goods 18,50, postage 3,50: 22,00 EUR";

  /** A figure with a point, no date and no thousands. */
  private static final Pattern POINT = Pattern.compile("(?<![\\w.])\\d+\\.\\d{1,2}(?![\\w.])");

  private static final Locale BEFORE = Locale.getDefault(Locale.Category.FORMAT);

  @TempDir static Path folder;

  @BeforeAll
  static void goThere() throws IOException {
    Locale.setDefault(Locale.Category.FORMAT, Locale.GERMANY);
    for (String list : List.of(BOX, TRIPS, PRICES)) {
      Path file = Files.writeString(folder.resolve("list.csv"), list);
      Ran ran = Ran.in(folder, "import", file.toString());
      assertEquals(0, ran.code(), ran.err());
    }
  }

  @AfterAll
  static void comeBack() {
    Locale.setDefault(Locale.Category.FORMAT, BEFORE);
  }

  private static byte[] written(String name, String... command) throws IOException {
    Path file = folder.resolve(name);
    String[] args = new String[command.length + 2];
    System.arraycopy(command, 0, args, 0, command.length);
    args[command.length] = "--out";
    args[command.length + 1] = file.toString();
    Ran ran = Ran.in(folder, args);
    assertEquals(0, ran.code(), ran.err());
    return Files.readAllBytes(file);
  }

  private static void assertCommas(String text) {
    assertTrue(text.contains(SUM), text);
    assertFalse(POINT.matcher(text).find(), text);
  }

  @Test
  void aTableHasCommasInItsSentencesToo() {
    assertCommas(Ran.in(folder, "restock", "--trips", "6").out());
    Ran why = Ran.in(folder, "why", "paddle ink 75");
    assertTrue(why.out().contains("takes an hour; all you fish has"), why.out() + why.err());
    assertFalse(POINT.matcher(why.out()).find(), why.out());
  }

  @Test
  void aPageAndPaperHaveThem() throws IOException, InterruptedException {
    String page = Files.readString(folder.resolve(name("list.html")));
    assertTrue(page.contains(SUM), page);
    String text = Program.named("pdftotext").run(folder, "-layout", name("list.pdf"), "-");
    assertCommas(text);
  }

  private static String name(String name) throws IOException {
    written(name, "restock", "--trips", "6");
    return name;
  }

  @Test
  void aWorkbookHoldsNumbersAndSaysThemInItsSentences() throws IOException {
    int numbers = 0;
    StringBuilder text = new StringBuilder();
    written("list.xlsx", "restock", "--trips", "6");
    try (InputStream in = Files.newInputStream(folder.resolve("list.xlsx"));
        XSSFWorkbook book = new XSSFWorkbook(in)) {
      DataFormatter formatter = new DataFormatter(Locale.GERMANY);
      for (Row row : book.getSheetAt(0)) {
        for (var cell : row) {
          numbers += cell.getCellType() == CellType.NUMERIC ? 1 : 0;
          text.append(formatter.formatCellValue(cell)).append('\n');
        }
      }
    }
    assertCommas(text.toString());
    assertTrue(numbers > 5, "numbers that a spreadsheet can add up: " + numbers);
  }

  @Test
  void programsGetTheSameBytesAsAnywhere() throws IOException {
    for (String kind : new String[] {"list.csv", "list.json"}) {
      byte[] here = written(kind, "restock", "--trips", "6");
      Locale.setDefault(Locale.Category.FORMAT, Locale.ROOT);
      try {
        assertArrayEquals(here, written("elsewhere-" + kind, "restock", "--trips", "6"));
      } finally {
        Locale.setDefault(Locale.Category.FORMAT, Locale.GERMANY);
      }
    }
  }

  @Test
  void whatIsEnteredByHandIsSaidWithCommas() {
    Ran bought =
        Ran.in(folder, "bought", "paddle ink", "20", "--price", "9,25", "--pack-size", "20");
    assertTrue(bought.out().contains("a pack at 9,25 EUR"), bought.out() + bought.err());
    Ran planned = Ran.in(folder, "plan", "add", "2026-06-01", "Gull Rocks", "4.5h");
    assertTrue(planned.out().contains("4,5 hours"), planned.out() + planned.err());
    assertFalse(POINT.matcher(planned.out()).find(), planned.out());
  }
}
