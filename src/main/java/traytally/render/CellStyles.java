package traytally.render;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Consumer;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.Font;
import org.apache.poi.ss.usermodel.HorizontalAlignment;
import org.apache.poi.ss.usermodel.IndexedColors;
import org.apache.poi.ss.usermodel.VerticalAlignment;
import org.apache.poi.ss.usermodel.Workbook;

/** The looks that cells of one workbook have, each made once. */
final class CellStyles {
  static final String AS_TYPED = "@";
  static final String DAY = "yyyy-mm-dd";

  private static final short TITLE_POINTS = 16;
  private static final short BOX_POINTS = 14;
  private static final short SECTION_POINTS = 12;
  private static final short TEXT_POINTS = 11;
  private static final short NOTE_POINTS = 9;

  private final Workbook book;
  private final Map<String, CellStyle> made = new HashMap<>();

  CellStyles(Workbook book) {
    this.book = book;
  }

  CellStyle title() {
    return once("title", style -> style.setFont(font(true, TITLE_POINTS)));
  }

  /** Lines of text across the sheet, under the title. */
  CellStyle facts() {
    return once("facts", style -> style.setWrapText(true));
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
          if (bold) {
            style.setFont(bold());
          }
          style.setAlignment(right ? HorizontalAlignment.RIGHT : HorizontalAlignment.LEFT);
          style.setVerticalAlignment(VerticalAlignment.BOTTOM);
          style.setWrapText(true);
          fill(style, IndexedColors.GREY_25_PERCENT);
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
          style.setQuotePrefixed(true);
          style.setWrapText(true);
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
          style.setDataFormat(book.createDataFormat().getFormat(DAY));
        });
  }

  CellStyle tick() {
    return once(
        "tick",
        style -> {
          ruled(style);
          style.setBorderLeft(BorderStyle.THIN);
          style.setBorderRight(BorderStyle.THIN);
          style.setFont(font(false, BOX_POINTS));
          style.setAlignment(HorizontalAlignment.CENTER);
        });
  }

  private static void ruled(CellStyle style) {
    style.setVerticalAlignment(VerticalAlignment.CENTER);
    style.setBorderBottom(BorderStyle.THIN);
    style.setBottomBorderColor(IndexedColors.GREY_40_PERCENT.getIndex());
  }

  private static void fill(CellStyle style, IndexedColors colour) {
    style.setFillForegroundColor(colour.getIndex());
    style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
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

  private CellStyle once(String name, Consumer<CellStyle> look) {
    return made.computeIfAbsent(
        name,
        unused -> {
          CellStyle style = book.createCellStyle();
          look.accept(style);
          return style;
        });
  }
}
