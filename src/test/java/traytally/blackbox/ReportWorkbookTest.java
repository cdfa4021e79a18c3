package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.apache.poi.common.usermodel.HyperlinkType;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFHyperlink;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.apache.xmlbeans.XmlBeans;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** The workbook with everything, on the invented data of {@code demo-data}. */
class ReportWorkbookTest {
  /** Parts of a workbook and the element each is, as ISO/IEC 29500 names them. */
  private static final Map<String, String> ELEMENTS =
      Map.of(
          "xl/workbook.xml", "spreadsheetml.x2006.main.WorkbookDocument",
          "xl/styles.xml", "spreadsheetml.x2006.main.StyleSheetDocument",
          "xl/sharedStrings.xml", "spreadsheetml.x2006.main.SstDocument",
          "xl/worksheets/", "spreadsheetml.x2006.main.WorksheetDocument",
          "xl/drawings/", "drawingml.x2006.spreadsheetDrawing.WsDrDocument",
          "xl/charts/", "drawingml.x2006.chart.ChartSpaceDocument");

  /** The fills of charts' bars, alone and of two kinds. */
  private static final int DARK = 0x1F6470;

  private static final int PALE = 0x9FB7BC;

  /** A bar is some pixels thick and tens of them long. */
  private static final int BAR_PIXELS = 100;

  @TempDir static Path folder;

  private static Path report;

  @BeforeAll
  static void writeTheReport() {
    Ran.importDemo(folder);
    report = report("report.xlsx");
  }

  private static Path report(String name) {
    Path file = folder.resolve(name);
    Ran ran = Ran.in(folder, "sheet", "report", "--out", file.toString());
    assertEquals(0, ran.code(), ran.err());
    return file;
  }

  @Test
  void everySheetIsThereWithItsChartsAndNames() throws IOException {
    try (InputStream in = Files.newInputStream(report);
        XSSFWorkbook book = new XSSFWorkbook(in)) {
      List<String> names = new ArrayList<>();
      List<String> charts = new ArrayList<>();
      for (int i = 0; i < book.getNumberOfSheets(); i++) {
        XSSFSheet sheet = book.getSheetAt(i);
        names.add(sheet.getSheetName());
        assertTrue(sheet.getPaneInformation().isFreezePane(), sheet.getSheetName());
        assertTrue(sheet.getCTWorksheet().isSetAutoFilter(), sheet.getSheetName());
        assertTrue(sheet.getFitToPage(), sheet.getSheetName());
        if (sheet.getDrawingPatriarch() != null) {
          for (XSSFChart chart : sheet.getDrawingPatriarch().getCharts()) {
            charts.add(chart.getTitleText().getString());
          }
        }
      }
      assertEquals(
          List.of(
              "Contents",
              "Box",
              "Stock and use",
              "Trust by colour",
              "Shopping list",
              "Line-up",
              "Trips",
              "Months",
              "Waters",
              "Idle pieces",
              "Audit of past forecasts"),
          names);
      assertEquals(
          List.of(
              "Pieces in the tray and use to come",
              "Times the mean of the same days, with 90 % intervals",
              "Takes an hour by month",
              "Pieces lost by water"),
          charts);
      assertEquals(
          10,
          book.getAllNames().stream().filter(name -> name.getNameName().endsWith("_rows")).count());
      assertTrue(book.getName("Box_rows").getRefersToFormula().startsWith("Box!$A$"));
      XSSFSheet box = book.getSheet("Box");
      assertEquals(2, box.getSheetConditionalFormatting().getNumConditionalFormattings());
    }
  }

  @Test
  @EnabledIfSystemProperty(named = "slow", matches = "true")
  void twoRunsGiveTheSameBytes() throws IOException {
    assertArrayEquals(Files.readAllBytes(report), Files.readAllBytes(report("again.xlsx")));
  }

  @Test
  void itHoldsNoMacroLeadsNowhereElseAndSaysWhatItsChartsShow() throws IOException {
    int described = 0;
    try (ZipFile parts = new ZipFile(report.toFile())) {
      for (ZipEntry part : Collections.list(parts.entries())) {
        assertFalse(part.getName().contains("vba") || part.getName().contains("externalLink"));
        if (part.getName().endsWith(".rels")) {
          String links =
              new String(parts.getInputStream(part).readAllBytes(), StandardCharsets.UTF_8);
          assertFalse(links.contains("TargetMode=\"External\""), part.getName());
        } else if (part.getName().startsWith("xl/drawings/")) {
          String drawing =
              new String(parts.getInputStream(part).readAllBytes(), StandardCharsets.UTF_8);
          assertTrue(drawing.matches("(?s).* descr=\"(Columns|Bars|Pairs)[ :].*"), drawing);
          described++;
        }
      }
    }
    assertEquals(4, described, "charts that say in words what they show");
  }

  @Test
  void everyPartIsAsItsSchemaSays() throws IOException, ReflectiveOperationException {
    Path schema;
    try (Stream<Path> jars = Files.list(Path.of("target/workbook-schema"))) {
      schema = jars.filter(jar -> jar.toString().endsWith(".jar")).findFirst().orElseThrow();
    }
    Path blank = folder.resolve("blank.xlsx");
    Ran.in(folder, "sheet", "blank", "trips", "--out", blank.toString());
    URL beans = XmlBeans.class.getProtectionDomain().getCodeSource().getLocation();
    URL log =
        Class.forName("org.apache.logging.log4j.LogManager")
            .getProtectionDomain()
            .getCodeSource()
            .getLocation();
    URL[] classes = {schema.toUri().toURL(), beans, log};
    try (URLClassLoader whole = new URLClassLoader(classes, ClassLoader.getPlatformClassLoader())) {
      int checked = 0;
      for (Path file : List.of(report, blank)) {
        try (ZipFile parts = new ZipFile(file.toFile())) {
          for (ZipEntry part : Collections.list(parts.entries())) {
            for (Map.Entry<String, String> element : ELEMENTS.entrySet()) {
              if (part.getName().startsWith(element.getKey()) && part.getName().endsWith(".xml")) {
                assertEquals(
                    List.of(),
                    faults(whole, element.getValue(), parts.getInputStream(part)),
                    part.getName());
                checked++;
              }
            }
          }
        }
      }
      assertTrue(checked > 20, "parts: " + checked);
    }
  }

  /** What the schema finds wrong with a part. */
  private static List<?> faults(ClassLoader whole, String element, InputStream part)
      throws ReflectiveOperationException {
    Thread thread = Thread.currentThread();
    ClassLoader before = thread.getContextClassLoader();
    thread.setContextClassLoader(whole);
    try {
      Class<?> type = whole.loadClass("org.openxmlformats.schemas." + element);
      Object factory = type.getField("Factory").get(null);
      Object parsed =
          factory.getClass().getMethod("parse", InputStream.class).invoke(factory, part);
      Class<?> optionsType = whole.loadClass("org.apache.xmlbeans.XmlOptions");
      Object options = optionsType.getConstructor().newInstance();
      List<Object> faults = new ArrayList<>();
      optionsType.getMethod("setErrorListener", java.util.Collection.class).invoke(options, faults);
      whole
          .loadClass("org.apache.xmlbeans.XmlObject")
          .getMethod("validate", optionsType)
          .invoke(parsed, options);
      return faults.stream().map(String::valueOf).toList();
    } finally {
      thread.setContextClassLoader(before);
    }
  }

  @Test
  void theContentsLeadToEachSheet() throws IOException {
    try (InputStream in = Files.newInputStream(report);
        XSSFWorkbook book = new XSSFWorkbook(in)) {
      XSSFSheet contents = book.getSheetAt(0);
      assertEquals(book.getNumberOfSheets() - 1, contents.getHyperlinkList().size());
      for (XSSFHyperlink link : contents.getHyperlinkList()) {
        assertEquals(HyperlinkType.DOCUMENT, link.getType());
        String named =
            contents.getRow(link.getFirstRow()).getCell(link.getFirstColumn()).toString();
        assertEquals(named, new CellReference(link.getLocation()).getSheetName());
        assertTrue(book.getSheetIndex(named) > 0, named);
      }
    }
  }

  @Test
  void aSpreadsheetProgramOpensItAndShowsAll() throws IOException, InterruptedException {
    Program.convert(folder, "pdf", folder, "report.xlsx");
    List<PrintedPages.Sheet> pages = PrintedPages.whole(folder.resolve("report.pdf"));
    String text =
        pages.stream().map(PrintedPages.Sheet::text).collect(Collectors.joining(" ")).strip();
    for (String words :
        List.of(
            "Contents · 2026-05-01",
            "ask the authority",
            "Black Ledge",
            "kelp green",
            "Audit of past forecasts · 2026-05-01",
            "Page 1 of " + pages.size())) {
      assertTrue(text.contains(words), words);
    }
    assertFalse(text.contains("###"), "a number is wider than its column");
    assertFalse(text.contains("#REF") || text.contains("#NAME"));
    assertDrawn(pages, "Pieces in the tray and use to come", "(Ottermoss)", DARK, PALE);
    assertDrawn(pages, "Times the mean of the same days", "motor", PALE);
    assertDrawn(pages, "Takes an hour by month", "Jan", DARK);
    assertDrawn(pages, "Pieces lost by water", "Ledge", DARK);
  }

  /** The chart is drawn on one page only, and its labels stand on it, level. */
  private static void assertDrawn(
      List<PrintedPages.Sheet> pages, String title, String label, int... fills) {
    List<PrintedPages.Sheet> drawn =
        pages.stream()
            .filter(page -> page.text().contains(title))
            .filter(page -> Arrays.stream(fills).allMatch(fill -> page.pixels(fill) > BAR_PIXELS))
            .toList();
    assertEquals(1, drawn.size(), title);
    List<PrintedPages.Word> labels =
        drawn.get(0).words().stream().filter(word -> word.text().equals(label)).toList();
    assertTrue(labels.size() > 1, "in the table and in the chart: " + label);
    labels.forEach(word -> assertTrue(word.lies(), "slanted: " + word));
  }
}
