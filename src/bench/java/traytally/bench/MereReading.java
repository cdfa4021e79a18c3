package traytally.bench;

import com.opencsv.CSVReader;
import com.opencsv.CSVReaderBuilder;
import com.opencsv.RFC4180ParserBuilder;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import javax.xml.parsers.SAXParserFactory;
import org.apache.poi.openxml4j.opc.OPCPackage;
import org.apache.poi.openxml4j.opc.PackageAccess;
import org.apache.poi.xssf.eventusermodel.ReadOnlySharedStringsTable;
import org.apache.poi.xssf.eventusermodel.XSSFReader;
import org.xml.sax.Attributes;
import org.xml.sax.InputSource;
import org.xml.sax.helpers.DefaultHandler;

/** Reads every cell of a list with the library alone and does nothing with it: the yardstick. */
public final class MereReading {
  private MereReading() {}

  /** Reads the workbook or text list named and prints how many cells it has. */
  public static void main(String[] args) throws Exception {
    Path file = Path.of(args[0]);
    long cells = file.toString().endsWith(".xlsx") ? workbook(file) : text(file);
    System.out.println(cells + " cells");
  }

  /** XSSFReader's streams, a SAX handler, each value as a number or as text. */
  private static long workbook(Path file) throws Exception {
    TypedCells cells;
    try (OPCPackage opened = OPCPackage.open(file.toFile(), PackageAccess.READ)) {
      XSSFReader reader = new XSSFReader(opened);
      cells = new TypedCells(new ReadOnlySharedStringsTable(opened));
      SAXParserFactory factory = SAXParserFactory.newInstance();
      factory.setNamespaceAware(true);
      for (Iterator<InputStream> sheets = reader.getSheetsData(); sheets.hasNext(); ) {
        try (InputStream sheet = sheets.next()) {
          var parser = factory.newSAXParser().getXMLReader();
          parser.setContentHandler(cells);
          parser.parse(new InputSource(sheet));
        }
      }
    }
    return cells.numbers + cells.texts;
  }

  /** OpenCSV with its RFC 4180 parser. */
  private static long text(Path file) throws Exception {
    long cells = 0;
    try (CSVReader reader =
        new CSVReaderBuilder(Files.newBufferedReader(file))
            .withCSVParser(new RFC4180ParserBuilder().build())
            .build()) {
      for (String[] row = reader.readNext(); row != null; row = reader.readNext()) {
        cells += row.length;
      }
    }
    return cells;
  }

  private static final class TypedCells extends DefaultHandler {
    private final ReadOnlySharedStringsTable shared;
    private final StringBuilder text = new StringBuilder();
    private String type = "";
    private boolean inValue;
    private long numbers;
    private long texts;
    private double sum;

    TypedCells(ReadOnlySharedStringsTable shared) {
      this.shared = shared;
    }

    @Override
    public void startElement(String uri, String name, String qualified, Attributes attributes) {
      switch (name) {
        case "c" -> type = String.valueOf(attributes.getValue("t"));
        case "v", "t" -> {
          inValue = true;
          text.setLength(0);
        }
        default -> {}
      }
    }

    @Override
    public void characters(char[] chars, int start, int length) {
      if (inValue) {
        text.append(chars, start, length);
      }
    }

    @Override
    public void endElement(String uri, String name, String qualified) {
      if (!inValue || !(name.equals("v") || name.equals("t"))) {
        return;
      }
      inValue = false;
      switch (type) {
        case "s" -> {
          texts += shared.getItemAt(Integer.parseInt(text.toString())).getString().isEmpty() ? 0 : 1;
        }
        case "inlineStr", "str" -> texts++;
        default -> {
          sum += Double.parseDouble(text.toString());
          numbers++;
        }
      }
    }
  }
}
