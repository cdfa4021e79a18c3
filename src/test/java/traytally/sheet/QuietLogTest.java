package traytally.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The libraries' log must not get between the lines the program prints. */
class QuietLogTest {
  @TempDir Path folder;

  /** What the other JVM runs. */
  static final class Reads {
    private Reads() {}

    public static void main(String[] args) {
      Reader.rows(Path.of(args[0]));
    }
  }

  @Test
  void nothingIsPrintedWhenLibrariesLog() throws IOException, InterruptedException {
    Path file = folder.resolve("box.xls");
    try (HSSFWorkbook workbook = new HSSFWorkbook();
        OutputStream out = Files.newOutputStream(file)) {
      workbook.createSheet("Box").createRow(0).createCell(0).setCellValue("shad");
      workbook.write(out);
    }
    // Two texts are announced and one is there, of which POI logs an error.
    byte[] bytes = Files.readAllBytes(file);
    int table = HostileFileTest.find(bytes, new byte[] {1, 0, 0, 0, 1, 0, 0, 0, 4, 0, 0, 's', 'h'});
    bytes[table + 4] = 2;
    Files.write(file, bytes);
    Path printed = folder.resolve("printed.txt");
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                Reads.class.getName(),
                file.toString())
            .redirectErrorStream(true)
            .redirectOutput(printed.toFile())
            .start();
    assertEquals(0, process.waitFor());
    assertEquals("", Files.readString(printed, StandardCharsets.UTF_8));
  }
}
