package traytally.demo;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.Font;
import org.apache.poi.ss.usermodel.IndexedColors;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import traytally.demo.DemoSeason.Fished;
import traytally.demo.DemoSeason.Kind;

/**
 * Writes the four workbooks of {@code demo-data} the way an angler might have: a title on top, own
 * words in the headers, sizes in millimetres here and inches there.
 *
 * <p>Run its {@code main} with the folder to write to when the story changes.
 */
final class DemoSheets {
  private final DemoSeason season = new DemoSeason();

  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args[0]);
    Files.createDirectories(folder);
    DemoSheets sheets = new DemoSheets();
    sheets.tray().save(folder.resolve("tray.xlsx"));
    sheets.trips().save(folder.resolve("trips.xlsx"));
    sheets.plan().save(folder.resolve("plan.xlsx"));
    sheets.prices().save(folder.resolve("prices.xlsx"));
  }

  Page tray() {
    Page page =
        new Page(
            "Trays",
            "What is in the trays",
            "Counted on Sunday 15 March 2026. Pieces, not packs.",
            "Make",
            "Shape",
            "Colour",
            "Size",
            "How many",
            "Per pack",
            "Paid",
            "Tray",
            "Swatch",
            "Glitter",
            "Keep",
            "Remarks");
    for (Kind kind : season.tray()) {
      page.row(
          kind.maker(),
          kind.body(),
          kind.colour(),
          size(kind),
          season.counted(kind),
          packSize(kind),
          packPrice(kind),
          kind.tray(),
          looks(kind).get(0),
          looks(kind).get(1),
          isKept(kind) ? "yes" : "",
          remark(kind));
    }
    return page;
  }

  Page trips() {
    Page page =
        new Page(
            "Log",
            "Fishing log, both seasons",
            "One line for each lure tied on. Minutes are my own rod.",
            "Date",
            "Mark",
            "Fish",
            "Clarity",
            "Shape",
            "Colour",
            "Size",
            "Mins",
            "Follows",
            "Hits",
            "Hooked",
            "Landed",
            "Lost",
            "How lost",
            "Worn out",
            "Remarks");
    for (Fished f : season.log()) {
      page.row(
          f.date(),
          f.water(),
          f.fish(),
          f.clarity(),
          f.kind().body(),
          f.kind().colour(),
          size(f.kind()),
          f.minutes(),
          f.follows(),
          f.takes(),
          f.hooked(),
          f.landed(),
          f.lost(),
          f.how(),
          f.worn(),
          f.note());
    }
    return page;
  }

  Page plan() {
    Page page =
        new Page(
            "Coming up",
            "Trips I mean to make",
            "",
            "Date",
            "Mark",
            "Fish",
            "Clarity",
            "Hours",
            "Rods",
            "Remarks");
    page.row(LocalDate.of(2026, 5, 9), "Gannet Stack", "pollack", "clear", 5, 1, "early tide");
    page.row(LocalDate.of(2026, 5, 23), "Pell Estuary", "bass", "stained", 4, 2, "with Marn");
    page.row(LocalDate.of(2026, 6, 27), "Black Ledge", "pollack", "clear", 6, 1, "long day");
    return page;
  }

  Page prices() {
    Page page =
        new Page(
            "Shops",
            "What the shops ask, spring 2026",
            "",
            "Shop",
            "Make",
            "Shape",
            "Colour",
            "Size",
            "Pack of",
            "Price",
            "Currency",
            "In stock",
            "Postage",
            "Free postage over",
            "Delivery days");
    boolean first = true;
    for (Kind kind : season.tray()) {
      if (inTown(kind)) {
        page.row(
            offer("Wrackline Tackle", kind, 0, first ? List.of(0, "", 1) : List.of("", "", "")));
        first = false;
      }
    }
    first = true;
    for (Kind kind : season.tray()) {
      if (byPost(kind)) {
        List<Object> terms = first ? List.of(3.5, 40, 5) : List.of("", "", "");
        page.row(offer("Far Skerry Post", kind, -0.4, terms));
        first = false;
      }
    }
    return page;
  }

  private static Object[] offer(String shop, Kind kind, double cheaper, List<Object> terms) {
    boolean stocked = !(isColour(kind, "rust") && kind.body().equals("sandeel"));
    return new Object[] {
      shop,
      kind.maker(),
      kind.body(),
      kind.colour(),
      size(kind),
      packSize(kind),
      Math.round((packPrice(kind) + cheaper) * 100) / 100.0,
      "EUR",
      stocked ? "yes" : "no",
      terms.get(0),
      terms.get(1),
      terms.get(2)
    };
  }

  private static boolean inTown(Kind kind) {
    return kind.body().equals("paddle tail")
        || kind.body().equals("craw")
        || (kind.body().equals("sandeel") && !isColour(kind, "kelp green"));
  }

  private static boolean byPost(Kind kind) {
    return !isColour(kind, "coral pink");
  }

  private static boolean isColour(Kind kind, String colour) {
    return kind.colour().equals(colour);
  }

  private static boolean isKept(Kind kind) {
    return kind.body().equals("stick") && isColour(kind, "ink");
  }

  private static String remark(Kind kind) {
    if (isColour(kind, "dusk")) {
      return "not tried yet";
    }
    return isKept(kind) ? "always one at night" : isColour(kind, "coral pink") ? "job lot" : "";
  }

  /** The base and the flake of a colour as the angler sees them; the names are everyday words. */
  private static List<String> looks(Kind kind) {
    return switch (kind.colour()) {
      case "motor oil" -> List.of("#5b4a1e", "#b08d2f");
      case "kelp green" -> List.of("#3c5a2a", "#8a9a3b");
      case "rust" -> List.of("#8c3f1d", "");
      case "amber" -> List.of("#b8731c", "#e0b040");
      case "bone" -> List.of("#e6dcc3", "");
      case "ink" -> List.of("#1b1d2a", "#3a4a8c");
      case "sand" -> List.of("#cdb68a", "");
      case "slate" -> List.of("#5c666e", "");
      case "moss" -> List.of("#56632f", "");
      case "lemon" -> List.of("#e8d33f", "");
      case "plum" -> List.of("#4a2440", "#8f3f7a");
      case "chalk" -> List.of("#f2f1ea", "#c9ccd0");
      case "smoke" -> List.of("#8b8f8e", "#2c2f31");
      case "copper" -> List.of("#8f5a35", "#d58b55");
      case "coral pink" -> List.of("#e8806f", "");
      default -> List.of("", "");
    };
  }

  private static String size(Kind kind) {
    return kind.body().equals("stick") ? "5\"" : kind.lengthMm() + " mm";
  }

  private static int packSize(Kind kind) {
    return switch (kind.body()) {
      case "paddle tail" -> kind.lengthMm() > 80 ? 5 : 8;
      case "curl tail" -> 8;
      case "craw" -> 6;
      case "sandeel" -> 5;
      default -> 10;
    };
  }

  private static double packPrice(Kind kind) {
    return switch (kind.body()) {
      case "paddle tail" -> kind.lengthMm() > 80 ? 5.95 : 5.25;
      case "curl tail" -> 4.8;
      case "craw" -> 5.6;
      case "sandeel" -> 6.4;
      default -> 4.5;
    };
  }

  /** A sheet with a title above its table. */
  static final class Page {
    private final XSSFWorkbook workbook = new XSSFWorkbook();
    private final XSSFSheet sheet;
    private final CellStyle date = workbook.createCellStyle();
    private int next;

    Page(String name, String title, String below, String... headers) {
      sheet = workbook.createSheet(name);
      date.setDataFormat(workbook.createDataFormat().getFormat("dd/mm/yyyy"));
      Cell top = sheet.createRow(next++).createCell(0);
      top.setCellValue(title);
      top.setCellStyle(bold(14, false));
      sheet.createRow(next++).createCell(0).setCellValue(below);
      next++;
      Row head = sheet.createRow(next++);
      CellStyle heading = bold(11, true);
      for (int i = 0; i < headers.length; i++) {
        head.createCell(i).setCellValue(headers[i]);
        head.getCell(i).setCellStyle(heading);
        sheet.setColumnWidth(i, 256 * Math.max(11, headers[i].length() + 3));
      }
    }

    private CellStyle bold(int points, boolean filled) {
      CellStyle style = workbook.createCellStyle();
      Font font = workbook.createFont();
      font.setBold(true);
      font.setFontHeightInPoints((short) points);
      style.setFont(font);
      if (filled) {
        style.setFillForegroundColor(IndexedColors.LIGHT_TURQUOISE.getIndex());
        style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
      }
      return style;
    }

    void row(Object... values) {
      Row row = sheet.createRow(next++);
      for (int i = 0; i < values.length; i++) {
        Object value = values[i];
        if (value instanceof Number number) {
          row.createCell(i).setCellValue(number.doubleValue());
        } else if (value instanceof LocalDate day) {
          row.createCell(i).setCellValue(day);
          row.getCell(i).setCellStyle(date);
        } else if (!value.toString().isEmpty()) {
          row.createCell(i).setCellValue(value.toString());
        }
      }
    }

    XSSFSheet sheet() {
      return sheet;
    }

    void save(Path file) throws IOException {
      try (OutputStream out = Files.newOutputStream(file)) {
        workbook.write(out);
      }
    }
  }
}
