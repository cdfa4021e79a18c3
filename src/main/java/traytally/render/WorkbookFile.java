package traytally.render;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Collections;
import java.util.Date;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.apache.poi.ooxml.POIXMLProperties;
import org.apache.poi.util.TempFile;
import org.apache.poi.util.TempFileCreationStrategy;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;

/** The file of a workbook: the same bytes for the same content, whatever the clock says. */
final class WorkbookFile {
  private static final String MAKER = "traytally";

  /**
   * Any moment a zip file can tell but its first, midnight of 1980-01-01: that one Java takes for a
   * time too early to tell, and adds another that depends on the time zone.
   */
  private static final LocalDateTime UNSTAMPED = LocalDateTime.of(1980, 2, 1, 0, 0);

  private WorkbookFile() {}

  /** A workbook to fill, its texts shared, whose rows wait in files of the user's own. */
  static SXSSFWorkbook begin() {
    TempFile.setTempFileCreationStrategy(new OwnFiles());
    return new SXSSFWorkbook(null, SXSSFWorkbook.DEFAULT_WINDOW_SIZE, false, true);
  }

  /** The library's own way is a folder that the first user of a machine makes and others lack. */
  private static final class OwnFiles implements TempFileCreationStrategy {
    @Override
    public File createTempFile(String prefix, String suffix) throws IOException {
      return Files.createTempFile(folder(), prefix, suffix).toFile();
    }

    @Override
    public File createTempDirectory(String prefix) throws IOException {
      return Files.createTempDirectory(folder(), prefix).toFile();
    }
  }

  /** Where files wait now; Java itself remembers the folder there was when it first made one. */
  private static Path folder() {
    return Path.of(System.getProperty("java.io.tmpdir"));
  }

  /** Writes {@code book} as made on {@code day}; {@code out} stays open. */
  static void write(SXSSFWorkbook book, String title, LocalDate day, OutputStream out)
      throws IOException {
    POIXMLProperties properties = book.getXSSFWorkbook().getProperties();
    Optional<Date> midnight = Optional.of(Date.from(day.atStartOfDay(ZoneOffset.UTC).toInstant()));
    properties.getCoreProperties().setCreator(MAKER);
    properties.getCoreProperties().setLastModifiedByUser(MAKER);
    properties.getCoreProperties().setTitle(title);
    properties.getCoreProperties().setCreated(midnight);
    properties.getCoreProperties().setModified(midnight);
    properties.getExtendedProperties().setApplication(MAKER);
    // In a file, since sizes that are told only after the data need random access to be read.
    Path stamped = Files.createTempFile(folder(), MAKER, ".xlsx");
    try {
      try (OutputStream file = Files.newOutputStream(stamped)) {
        book.write(file);
      }
      copyUnstamped(stamped, out);
    } finally {
      Files.delete(stamped);
    }
  }

  private static void copyUnstamped(Path stamped, OutputStream out) throws IOException {
    ZipOutputStream zip = new ZipOutputStream(out);
    try (ZipFile parts = new ZipFile(stamped.toFile())) {
      for (ZipEntry part : Collections.list(parts.entries())) {
        ZipEntry copy = new ZipEntry(part.getName());
        copy.setTimeLocal(UNSTAMPED);
        zip.putNextEntry(copy);
        try (InputStream content = parts.getInputStream(part)) {
          content.transferTo(zip);
        }
        zip.closeEntry();
      }
    }
    zip.finish();
    zip.flush();
  }
}
