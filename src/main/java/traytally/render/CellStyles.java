package traytally.render;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Consumer;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.Font;
import org.apache.poi.ss.usermodel.FontScheme;
import org.apache.poi.ss.usermodel.HorizontalAlignment;
import org.apache.poi.ss.usermodel.VerticalAlignment;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFColor;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import traytally.plastic.Swatch;

/** The looks that cells of one workbook have, each made once. */
final class CellStyles {
  static final String AS_TYPED = "@";

  /** Shows nothing of a number, be it above, below or nought. */
  private static final String NOTHING = ";;;";

  static final String DAY = "yyyy-mm-dd";

  /** Between words and the figures of the column before them. */
  private static final short AIR = 1;

  private static final short TITLE_POINTS = 16;
  private static final short BOX_POINTS = 14;
  private static final short SECTION_POINTS = 12;
  private static final short TEXT_POINTS = 11;
  private static final short NOTE_POINTS = 9;

  /** Pale enough to write on and to print cheaply. */
  private static final int PALE = 0xE6ECEE;

  private static final int BAR = 0x9FC4CB;
  private static final int RULE = 0xB5BDC0;
  private static final int FRAME = 0x55606A;

  private final XSSFWorkbook book;
  private final Map<String, XSSFCellStyle> made = new HashMap<>();

  CellStyles(XSSFWorkbook book) {
    this.book = book;
    // The first font follows a theme, which these workbooks do not carry.
    book.getFontAt(0).setScheme(FontScheme.NONE);
  }

  /** Of the bars behind chances: light enough to read the number on it. */
  XSSFColor barColour() {
    return colour(BAR);
  }

  CellStyle title() {
    return once("title", style -> style.setFont(font(true, TITLE_POINTS)));
  }

  /** Lines of text across the sheet, under the title. */
  CellStyle facts() {
    return once(
        "facts",
        style -> {
          style.setFont(plain());
          style.setWrapText(true);
        });
  }

  CellStyle note() {
    return once(
        "note",
        style -> {
          style.setFont(font(false, NOTE_POINTS));
          style.setWrapText(true);
          style.setVerticalAlignment(VerticalAlignment.TOP);
        });
  }

  /** A column's heading, over cells that stand at the right or at the left. */
  CellStyle heading(boolean right) {
    return heading(right, true);
  }

  CellStyle heading(boolean right, boolean bold) {
    return once(
        "heading" + right + bold,
        style -> {
          style.setFont(bold ? bold() : plain());
          style.setAlignment(right ? HorizontalAlignment.RIGHT : HorizontalAlignment.LEFT);
          style.setIndention(right ? 0 : AIR);
          style.setVerticalAlignment(VerticalAlignment.BOTTOM);
          style.setWrapText(true);
          fill(style);
          style.setBorderBottom(BorderStyle.MEDIUM);
        });
  }

  CellStyle section() {
    return once(
        "section",
        style -> {
          style.setFont(font(true, SECTION_POINTS));
          style.setVerticalAlignment(VerticalAlignment.BOTTOM);
          style.setBorderBottom(BorderStyle.THIN);
        });
  }

  CellStyle summary() {
    return once("summary", style -> style.setFont(bold()));
  }

  CellStyle sumLabel() {
    return once(
        "sum label",
        style -> {
          style.setFont(bold());
          style.setAlignment(HorizontalAlignment.RIGHT);
        });
  }

  CellStyle sum(String format) {
    return once(
        "sum " + format,
        style -> {
          style.setFont(bold());
          style.setDataFormat(book.createDataFormat().getFormat(format));
        });
  }

  /** Words, marked as text so that editing them makes no formula, number or date of them. */
  CellStyle words() {
    return once(
        "words",
        style -> {
          ruled(style);
          style.setAlignment(HorizontalAlignment.LEFT);
          style.setIndention(AIR);
          style.setQuotePrefixed(true);
          style.setWrapText(true);
        });
  }

  /** Words that lead to another sheet. */
  CellStyle link() {
    return once(
        "link",
        style -> {
          style.cloneStyleFrom(words());
          Font font = font(false, TEXT_POINTS);
          font.setUnderline(Font.U_SINGLE);
          style.setFont(font);
        });
  }

  /** Words in a sheet to fill in, whose empty cells take what is typed as text too. */
  CellStyle wordsAsTyped() {
    return once(
        "words as typed",
        style -> {
          style.setQuotePrefixed(true);
          style.setDataFormat(book.createDataFormat().getFormat(AS_TYPED));
        });
  }

  /** Empty cells of a sheet to fill in. */
  CellStyle toFill(String format) {
    return once(
        "to fill " + format,
        style -> style.setDataFormat(book.createDataFormat().getFormat(format)));
  }

  /** A number or a day. */
  CellStyle figure(String format) {
    return once(
        "figure " + format,
        style -> {
          ruled(style);
          style.setDataFormat(book.createDataFormat().getFormat(format));
        });
  }

  CellStyle day() {
    return once(
        "day",
        style -> {
          ruled(style);
          style.setAlignment(HorizontalAlignment.LEFT);
          style.setIndention(AIR);
          style.setDataFormat(book.createDataFormat().getFormat(DAY));
        });
  }

  CellStyle tick() {
    return once(
        "tick",
        style -> {
          ruled(style);
          style.setBorderLeft(BorderStyle.THIN);
          style.setLeftBorderColor(colour(RULE));
          style.setBorderRight(BorderStyle.THIN);
          style.setRightBorderColor(colour(RULE));
          style.setFont(font(false, BOX_POINTS));
          style.setAlignment(HorizontalAlignment.CENTER);
        });
  }

  /**
   * A cell filled with {@code swatch}, framed so that a white one shows: with a line, or with
   * dashes where it is guessed.
   */
  CellStyle swatch(Swatch swatch, boolean guessed) {
    return once(
        "swatch " + swatch + guessed,
        style -> {
          style.setFillForegroundColor(colour(swatch.rgb()));
          style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
          framed(style, guessed ? BorderStyle.MEDIUM_DASHED : BorderStyle.THIN);
        });
  }

  /** Numbers that only a chart reads. */
  CellStyle unseen() {
    return once("unseen", style -> style.setDataFormat(book.createDataFormat().getFormat(NOTHING)));
  }

  private static void framed(XSSFCellStyle style, BorderStyle line) {
    XSSFColor frame = colour(FRAME);
    style.setBorderTop(line);
    style.setTopBorderColor(frame);
    style.setBorderBottom(line);
    style.setBottomBorderColor(frame);
    style.setBorderLeft(line);
    style.setLeftBorderColor(frame);
    style.setBorderRight(line);
    style.setRightBorderColor(frame);
  }

  private void ruled(XSSFCellStyle style) {
    style.setFont(plain());
    style.setVerticalAlignment(VerticalAlignment.CENTER);
    style.setBorderBottom(BorderStyle.THIN);
    style.setBottomBorderColor(colour(RULE));
  }

  /** The colour with its alpha, which the file format asks for though no program heeds it. */
  private static XSSFColor colour(int rgb) {
    byte[] parts = {(byte) 0xFF, (byte) (rgb >> 16), (byte) (rgb >> 8), (byte) rgb};
    return new XSSFColor(parts, null);
  }

  private static void fill(XSSFCellStyle style) {
    style.setFillForegroundColor(colour(PALE));
    style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
  }

  private Font plain() {
    return font(false, TEXT_POINTS);
  }

  private Font bold() {
    return font(true, TEXT_POINTS);
  }

  private Font font(boolean bold, short points) {
    Font font = book.createFont();
    font.setBold(bold);
    font.setFontHeightInPoints(points);
    return font;
  }

  private CellStyle once(String name, Consumer<XSSFCellStyle> look) {
    return made.computeIfAbsent(
        name,
        unused -> {
          XSSFCellStyle style = book.createCellStyle();
          look.accept(style);
          return style;
        });
  }
}
