package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** docs/formats.md names every table and column of an export, and no other. */
class FormatsTest {
  @TempDir Path folder;

  @Test
  void theTableOfTablesIsComplete() throws IOException {
    Ran.in(folder, "count", "4", "--new", "grub, chalk, 50");
    Path export = folder.resolve("all");
    assertEquals(0, Ran.in(folder, "export", export.toString()).code());
    Map<String, String> written = new TreeMap<>();
    try (Stream<Path> files = Files.list(export)) {
      for (Path file : files.toList()) {
        String name = file.getFileName().toString().replace(".csv", "");
        if (!name.equals("export")) {
          written.put(name, Files.readAllLines(file).get(0));
        }
      }
    }
    Map<String, String> told = new TreeMap<>();
    Matcher rows =
        Pattern.compile("(?m)^\\| `([a-z_]+)` \\|[^|]*\\| ([^|]*) \\|$")
            .matcher(Files.readString(Path.of("docs/formats.md")));
    while (rows.find()) {
      String columns =
          rows.group(2)
              .replaceAll("\\([^)]*\\)", "")
              .replace("*fact*", "id, added_by, withdrawn_by")
              .replace("*plastic*", "maker, body, colour, length_mm")
              .replaceAll("[` ]", "");
      told.put(rows.group(1), columns);
    }
    assertEquals(written, told);
  }
}
