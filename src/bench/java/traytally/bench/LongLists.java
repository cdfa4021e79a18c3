package traytally.bench;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;

/** Trip logs far longer than an angler's life, the same for one seed; invented. */
final class LongLists {
  private static final List<String> WATERS =
      List.of("Gannet Stack", "Tern Ledge", "Mussel Steps", "Otter Bar", "Long Skerry", "Low Quay");
  private static final List<String> SPECIES = List.of("pollack", "bass", "wrasse");
  private static final List<String> CLARITIES = List.of("clear", "stained", "cloudy", "dirty");
  private static final List<String> BODIES = List.of("Paddle", "Curl", "Shad", "Straight", "Craw");
  private static final List<String> COLOURS =
      List.of("Motor Oil", "Chalk", "Rust", "Black", "Plum", "Lime", "Sand", "Pearl", "Smoke");
  private static final List<Integer> LENGTHS = List.of(60, 75, 90, 110);
  private static final List<String> TWELVE =
      List.of(
          "Date",
          "Water",
          "Species",
          "Clarity",
          "Body style",
          "Colour",
          "Length (mm)",
          "Minutes",
          "Takes",
          "Hooked",
          "Landed",
          "Lost");
  private static final int STINTS_A_DAY = 40;
  private static final LocalDate LAST = LocalDate.of(2026, 4, 30);

  private final Random random;
  private LocalDate day;
  private int onThisDay;
  private String water = WATERS.get(0);
  private String species = SPECIES.get(0);
  private String clarity = CLARITIES.get(0);

  private LongLists(int rows, long seed) {
    this.random = new Random(seed);
    // Long lists tell of several waters a day, so that they stay within a few centuries.
    this.day = LAST.minusDays(Math.min(rows / STINTS_A_DAY, 36_000));
  }

  private <T> T any(List<T> list) {
    return list.get(random.nextInt(list.size()));
  }

  /** The next stint: the twelve columns, numbers as numbers. */
  private List<Object> next() {
    if (onThisDay == 0) {
      water = any(WATERS);
      species = any(SPECIES);
      clarity = any(CLARITIES);
    }
    int takes = random.nextInt(4);
    int hooked = takes == 0 ? 0 : random.nextInt(takes + 1);
    int landed = hooked == 0 ? 0 : random.nextInt(hooked + 1);
    List<Object> stint =
        List.of(
            day,
            water,
            species,
            clarity,
            any(BODIES),
            any(COLOURS),
            any(LENGTHS),
            10 + 5 * random.nextInt(12),
            takes,
            hooked,
            landed,
            random.nextInt(5) == 0 ? 1 : 0);
    onThisDay++;
    if (onThisDay == STINTS_A_DAY) {
      onThisDay = 0;
      day = day.isBefore(LAST) ? day.plusDays(1) : LAST.minusDays(36_000);
    }
    return stint;
  }

  /** A workbook of {@code rows} stints in twelve columns. */
  static void workbook(Path file, int rows, long seed) throws IOException {
    LongLists lists = new LongLists(rows, seed);
    try (SXSSFWorkbook book = new SXSSFWorkbook(100);
        OutputStream out = Files.newOutputStream(file)) {
      book.setCompressTempFiles(true);
      CellStyle date = book.createCellStyle();
      date.setDataFormat(book.createDataFormat().getFormat("yyyy-mm-dd"));
      Sheet sheet = book.createSheet("Trips");
      fill(sheet.createRow(0), TWELVE, date);
      for (int i = 1; i <= rows; i++) {
        fill(sheet.createRow(i), lists.next(), date);
      }
      book.write(out);
    }
  }

  private static void fill(Row row, List<?> values, CellStyle date) {
    for (int i = 0; i < values.size(); i++) {
      Cell cell = row.createCell(i);
      Object value = values.get(i);
      if (value instanceof LocalDate d) {
        cell.setCellValue(d);
        cell.setCellStyle(date);
      } else if (value instanceof Integer n) {
        cell.setCellValue(n);
      } else {
        cell.setCellValue(value.toString());
      }
    }
  }

  /** A text list of {@code rows} stints in eight of the columns, or in all twelve. */
  static void text(Path file, int rows, int columns, long seed) throws IOException {
    LongLists lists = new LongLists(rows, seed);
    List<Integer> chosen =
        columns == 8
            ? List.of(0, 1, 4, 5, 6, 7, 8, 11)
            : List.of(0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11);
    try (BufferedWriter out = Files.newBufferedWriter(file)) {
      line(out, TWELVE, chosen);
      for (int i = 0; i < rows; i++) {
        line(out, lists.next(), chosen);
      }
    }
  }

  private static void line(BufferedWriter out, List<?> values, List<Integer> chosen)
      throws IOException {
    String apart = "";
    for (int i : chosen) {
      out.write(apart + values.get(i));
      apart = ",";
    }
    out.write("\r\n");
  }
}
