package traytally.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.poi.hssf.record.crypto.Biff8EncryptionKey;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.crypt.EncryptionMode;
import org.apache.poi.poifs.crypt.Encryptor;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FileKindTest {
  @TempDir Path folder;

  private String refusal(String latin1) throws IOException {
    return Reader.refusal(
        Files.write(folder.resolve("box.xlsx"), latin1.getBytes(StandardCharsets.ISO_8859_1)));
  }

  private String refusalOfZip(String... parts) throws IOException {
    Path file = folder.resolve("box.xlsx");
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
      for (String part : parts) {
        zip.putNextEntry(new ZipEntry(part));
        zip.closeEntry();
      }
    }
    return Reader.refusal(file);
  }

  private static void assertStarts(String start, String message) {
    assertTrue(message.startsWith(start), message);
  }

  @Test
  void packedFilesOfOtherProgramsAreNamed() throws IOException {
    assertStarts("This is an OpenDocument sheet.", refusalOfZip("mimetype", "content.xml"));
    assertStarts("This is a Numbers sheet.", refusalOfZip("Index/Document.iwa"));
    assertStarts("This is a packed archive.", refusalOfZip("lures.csv"));
    assertStarts(
        "This is a document without cells.", refusalOfZip("[Content_Types].xml", "word/a.xml"));
    Path xlsb =
        HandmadeXlsx.ofSheet("")
            .part(
                "_rels/.rels",
                HandmadeXlsx.links(HandmadeXlsx.link("a", "officeDocument", "xl/workbook.bin")))
            .writeTo(folder.resolve("box.xlsb"));
    assertStarts("This is a binary workbook (.xlsb).", Reader.refusal(xlsb));
  }

  @Test
  void otherFilesAreNamed() throws IOException {
    assertStarts("This is a PDF,", refusal("%PDF-1.7 and so on"));
    assertStarts("This is a picture,", refusal("\u0089PNG\r\n\u001A\n\0\0"));
    assertStarts("This is a picture,", refusal("BM\0\0\0\0"));
    assertStarts("This is a packed archive,", refusal("\u001F\u008B\b\0"));
    assertStarts("This is a file of some other program,", refusal("abc\0\1\2"));
    assertStarts("This file is empty.", refusal(""));
    assertStarts("There is no such file.", Reader.refusal(folder.resolve("none.csv")));
    assertStarts("This is a folder,", Reader.refusal(folder));
  }

  @Test
  void webPagesAndOtherMarkupAreNamed() throws IOException {
    assertStarts("This is a web page", refusal("\u00EF\u00BB\u00BF \n<HTML><table>"));
    assertStarts("This is a web page", refusal("<!doctype html>"));
    assertStarts("This is an XML file.", refusal("<?xml version='1.0'?><Workbook/>"));
    assertStarts("This is a sheet in a form that is not read.", refusal("ID;PWXL;N;E\n"));
  }

  /** BOF records of BIFF 2, 3, 4 and of 5 outside a compound file ([MS-XLS] 2.4.21 and before). */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "\t\0\4\0\7\0\20\0",
        "\t\2\6\0\0\0\20\0",
        "\t\4\6\0\0\0\20\0",
        "\t\b\b\0\0\5\20\0"
      })
  void veryOldSheetsAreNamed(String start) throws IOException {
    assertStarts("This file was saved by a very old spreadsheet program", refusal(start));
  }

  @ParameterizedTest
  @CsvSource({"BMX shad", "MZ tail", "ID number"})
  void aListMayBeginLikeAnotherKind(String first) throws IOException {
    Path file = Files.writeString(folder.resolve("box.csv"), first + ",3\n");
    assertEquals(first, Reader.rows(file).get(0).cell(0).shown());
  }

  @ParameterizedTest
  @ValueSource(strings = {"tackle", "VelvetSweatshop"})
  void anOldSheetWithAPasswordIsNamed(String password) throws IOException {
    Path file = folder.resolve("box.xls");
    try (HSSFWorkbook workbook = new HSSFWorkbook();
        OutputStream out = Files.newOutputStream(file)) {
      workbook.createSheet("Box").createRow(0).createCell(0).setCellValue("shad");
      workbook.createSheet("More").createRow(0).createCell(0).setCellValue("worm");
      Biff8EncryptionKey.setCurrentUserPassword(password);
      workbook.write(out);
    } finally {
      Biff8EncryptionKey.setCurrentUserPassword(null);
    }
    if (password.equals("tackle")) {
      assertStarts("This file is locked with a password.", Reader.refusal(file));
    } else {
      // The one every program knows, under which a sheet closed to changes is stored.
      assertEquals(List.of("1: shad", "1: worm"), Reader.shown(file));
    }
  }

  @Test
  void aNewSheetWithAPasswordIsNamed() throws IOException, GeneralSecurityException {
    Path file = folder.resolve("box.xlsx");
    try (POIFSFileSystem files = new POIFSFileSystem();
        XSSFWorkbook workbook = new XSSFWorkbook()) {
      workbook.createSheet("Box");
      Encryptor encryptor = new EncryptionInfo(EncryptionMode.standard).getEncryptor();
      encryptor.confirmPassword("tackle");
      try (OutputStream out = encryptor.getDataStream(files)) {
        workbook.write(out);
      }
      try (OutputStream out = Files.newOutputStream(file)) {
        files.writeFilesystem(out);
      }
    }
    assertStarts("This file is locked with a password.", Reader.refusal(file));
  }
}
