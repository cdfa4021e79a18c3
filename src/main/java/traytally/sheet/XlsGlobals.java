package traytally.sheet;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.poi.hssf.record.BOFRecord;
import org.apache.poi.hssf.record.BoundSheetRecord;
import org.apache.poi.hssf.record.DateWindow1904Record;
import org.apache.poi.hssf.record.EOFRecord;
import org.apache.poi.hssf.record.ExtendedFormatRecord;
import org.apache.poi.hssf.record.FontRecord;
import org.apache.poi.hssf.record.FormatRecord;
import org.apache.poi.hssf.record.Record;
import org.apache.poi.hssf.record.RecordFactoryInputStream;
import org.apache.poi.hssf.record.SSTRecord;

/** What all sheets of an .xls share: texts, formats, the tabs, and where dates count from. */
final class XlsGlobals {
  private static final int BIFF8 = 0x0600;

  private final Limits limits;
  private final List<BoundSheetRecord> tabs = new ArrayList<>();
  private final Map<Integer, String> ownFormats = new HashMap<>();
  private final List<Integer> formatOfStyle = new ArrayList<>();
  private final List<CellFormat> formats = new ArrayList<>();
  private final List<Integer> fontOfStyle = new ArrayList<>();
  private final BitSet struckFonts = new BitSet();
  private int fonts;
  private Optional<SSTRecord> texts = Optional.empty();
  private boolean from1904;

  XlsGlobals(Limits limits) {
    this.limits = limits;
  }

  void read(RecordFactoryInputStream records) {
    for (Record record;
        (record = records.nextRecord()) != null && !(record instanceof EOFRecord); ) {
      take(record);
    }
    for (int id : formatOfStyle) {
      formats.add(CellFormat.of(id, Optional.ofNullable(ownFormats.get(id))));
    }
  }

  private void take(Record record) {
    if (record instanceof BOFRecord start && start.getVersion() != BIFF8) {
      throw new UnreadableSheetException(Refusal.OLDER);
    } else if (record instanceof BoundSheetRecord tab) {
      if (tabs.size() >= limits.sheets()) {
        throw new UnreadableSheetException(
            "This file has too many sheets. Copy those you need into a new file and import that.");
      }
      tabs.add(tab);
    } else if (record instanceof DateWindow1904Record window) {
      from1904 = window.getWindowing() == 1;
    } else if (record instanceof FormatRecord format) {
      ownFormats.put(format.getIndexCode(), format.getFormatString());
    } else if (record instanceof FontRecord font) {
      struckFonts.set(fonts++, font.isStruckout());
    } else if (record instanceof ExtendedFormatRecord style) {
      fontOfStyle.add((int) style.getFontIndex());
      formatOfStyle.add((int) style.getFormatIndex());
    } else if (record instanceof SSTRecord table) {
      texts = Optional.of(table);
    }
  }

  List<BoundSheetRecord> tabs() {
    return tabs;
  }

  /** How many streams of records, the shared one first, stand before a place in the file. */
  int substreamsBefore(int place) {
    return 1 + (int) tabs.stream().filter(tab -> tab.getPositionOfBof() < place).count();
  }

  /** Whether the text of a cell of this style is struck out. */
  boolean isStruck(int style) {
    if (style < 0 || style >= fontOfStyle.size()) {
      return false;
    }
    // There is no font of number 4: those behind it are counted on ([MS-XLS], FontIndex).
    int font = fontOfStyle.get(style);
    return font >= 0 && struckFonts.get(font > 4 ? font - 1 : font);
  }

  Cell text(int place) {
    if (texts.isEmpty() || place < 0 || place >= texts.get().getNumUniqueStrings()) {
      throw new UnreadableSheetException(
          "This file is damaged: the text of a cell is missing. " + RowBuilder.SAVE_AGAIN);
    }
    return Cell.text(texts.get().getString(place).getString());
  }

  Cell number(double value, int style) {
    if (!Double.isFinite(value)) {
      return Cell.text(Double.toString(value));
    }
    CellFormat format =
        style >= 0 && style < formats.size() ? formats.get(style) : CellFormat.GENERAL;
    return format.cell(value, from1904);
  }
}
