package traytally.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.apache.poi.hssf.record.BOFRecord;
import org.apache.poi.hssf.record.BoundSheetRecord;
import org.apache.poi.hssf.record.RecordFactoryInputStream;
import org.apache.poi.poifs.filesystem.DirectoryNode;
import org.apache.poi.poifs.filesystem.DocumentEntry;
import org.apache.poi.poifs.filesystem.DocumentInputStream;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;

/** An .xls of Excel 97 or later: records (BIFF8) in a compound file ([MS-XLS]). */
final class XlsWorkbook extends Workbook {
  /** [MS-XLS] 2.4.117: the record that says the rest is enciphered. */
  private static final int FILE_PASS = 0x2F;

  private final POIFSFileSystem files;
  private final DocumentEntry stream;
  private final XlsGlobals globals;
  private final boolean enciphered;
  private final List<Integer> places;
  private final Limits limits;
  private final RowBuilder.Rations rations;

  private XlsWorkbook(
      POIFSFileSystem files, DocumentEntry stream, Tabs tabs, XlsGlobals globals, Limits limits) {
    super(tabs.sheets);
    this.files = files;
    this.stream = stream;
    this.globals = globals;
    this.enciphered = tabs.enciphered;
    this.places = tabs.places;
    this.limits = limits;
    this.rations = RowBuilder.Rations.of(limits);
  }

  static Workbook of(Path file, Limits limits) throws IOException {
    POIFSFileSystem files = new POIFSFileSystem(file.toFile(), true);
    boolean opened = false;
    try {
      DocumentEntry stream = workbookStream(files.getRoot());
      Tabs tabs = new Tabs();
      tabs.enciphered = isEnciphered(stream);
      XlsGlobals globals = new XlsGlobals(limits);
      try (DocumentInputStream in = new DocumentInputStream(stream)) {
        globals.read(new RecordFactoryInputStream(in, false));
      }
      for (BoundSheetRecord tab : globals.tabs()) {
        tabs.add(tab, stream);
      }
      if (tabs.sheets.isEmpty()) {
        throw new UnreadableSheetException("This file has no sheet with cells in it.");
      }
      opened = true;
      return new XlsWorkbook(files, stream, tabs, globals, limits);
    } finally {
      if (!opened) {
        files.close();
      }
    }
  }

  private static DocumentEntry workbookStream(DirectoryNode root) throws IOException {
    Set<String> names = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
    names.addAll(root.getEntryNames());
    if (names.contains("EncryptedPackage")) {
      throw new UnreadableSheetException(Refusal.PASSWORD);
    }
    if (names.contains("Workbook")) {
      for (String name : root.getEntryNames()) {
        if (name.equalsIgnoreCase("Workbook")
            && root.getEntry(name) instanceof DocumentEntry found) {
          return found;
        }
      }
    }
    if (names.contains("Book")) {
      throw new UnreadableSheetException(Refusal.OLDER);
    }
    throw new UnreadableSheetException(
        "This is a document of some other program, not a sheet. Save your list as .xlsx or .csv and"
            + " import that.");
  }

  /**
   * The record stands straight after the first, or after a word on write protection (2.1.7.20.3).
   */
  private static boolean isEnciphered(DocumentEntry stream) throws IOException {
    try (DocumentInputStream in = new DocumentInputStream(stream)) {
      for (int record = 0; record < 3 && in.available() >= 4; record++) {
        int sid = in.readUShort();
        if (sid == FILE_PASS) {
          return true;
        }
        in.skipNBytes(Math.min(in.readUShort(), in.available()));
      }
      return false;
    }
  }

  @Override
  Rows begin(Sheet sheet) throws IOException {
    boolean inOrder;
    try (InputStream in = new DocumentInputStream(stream)) {
      inOrder = XlsRows.inOrder(recordsOf(sheet, in));
    }
    RowBuilder builder = new RowBuilder(limits, rations, Integer.toString(sheet.index()));
    DocumentInputStream in = new DocumentInputStream(stream);
    XlsRows rows = new XlsRows(in, recordsOf(sheet, in), globals, builder, limits);
    return new Rows(inOrder ? rows : new RowsInOrder(rows));
  }

  /** The sheet's records, its opening one already passed. */
  private RecordFactoryInputStream recordsOf(Sheet sheet, InputStream in) throws IOException {
    int place = places.get(sheet.index());
    if (!enciphered) {
      in.skipNBytes(place);
    }
    RecordFactoryInputStream records = new RecordFactoryInputStream(in, false);
    // The cipher runs on from the start of the stream, so there the sheets before must be read.
    int depth = 0;
    for (int sheetsToPass = enciphered ? globals.substreamsBefore(place) : 0; ; ) {
      var record = records.nextRecord();
      if (record == null) {
        throw new UnreadableSheetException(
            "This file is damaged: a sheet is missing. " + RowBuilder.SAVE_AGAIN);
      }
      if (record instanceof BOFRecord && depth++ == 0 && sheetsToPass-- == 0) {
        return records;
      }
      if (record instanceof org.apache.poi.hssf.record.EOFRecord) {
        depth--;
      }
    }
  }

  @Override
  public void close() {
    Refusal.unlessRead(
        () -> {
          files.close();
          return true;
        });
  }

  /** The tabs that hold cells and where their records begin. */
  private static final class Tabs {
    final List<Sheet> sheets = new ArrayList<>();
    final List<Integer> places = new ArrayList<>();
    boolean enciphered;

    void add(BoundSheetRecord tab, DocumentEntry stream) throws IOException {
      int place = tab.getPositionOfBof();
      if (isChartOrCode(stream, place)) {
        return;
      }
      sheets.add(
          new Sheet(sheets.size(), tab.getSheetname(), tab.isHidden() || tab.isVeryHidden()));
      places.add(place);
    }

    private static boolean isChartOrCode(DocumentEntry stream, int place) throws IOException {
      if (place < 0 || place + 8L > stream.getSize()) {
        throw new UnreadableSheetException(
            "This file is damaged or was cut short: a sheet is missing. " + RowBuilder.SAVE_AGAIN);
      }
      try (DocumentInputStream in = new DocumentInputStream(stream)) {
        in.skipNBytes(place + 6L); // number, length and version of the opening record
        int type = in.readUShort();
        return type == BOFRecord.TYPE_CHART || type == BOFRecord.TYPE_VB_MODULE;
      }
    }
  }
}
