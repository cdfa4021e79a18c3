package traytally;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** No statement's text depends on what anybody told the program: values are bound, always. */
class StatementsTest {
  private static final Path SOURCES = Path.of("src/main/java/traytally");

  /** Java's own pieces of text, blocks and lines. */
  private static final Pattern TEXT =
      Pattern.compile("\"\"\"(.*?)\"\"\"|\"((?:[^\"\\\\\\n]|\\\\.)*)\"", Pattern.DOTALL);

  private static final Pattern SQL =
      Pattern.compile(
          "(?s)\\s*(--[^\\n]*\\n\\s*)*(SELECT|INSERT|UPDATE|DELETE|CREATE|PRAGMA|VACUUM|ATTACH|BEGIN|COMMIT"
              + "|ROLLBACK|DROP|ALTER|WITH|REPLACE)\\b.*");

  /**
   * Statements put together from parts, each part a constant of the program or a name out of the
   * schema itself: tables and columns cannot be bound. A new one joins this list with its reason.
   */
  private static final List<String> PUT_TOGETHER =
      List.of(
          // The names of FactTable's own constants.
          "FactTable: INSERT INTO %s (added_by, %s) VALUES (?%s)",
          "FactTable: SELECT id, added_by, withdrawn_by, %s FROM %s WHERE %s ORDER BY id",
          "FactTable: UPDATE %s SET withdrawn_by = ? WHERE id = ? AND withdrawn_by IS NULL",
          "FactTable: UPDATE %s SET withdrawn_by = NULL WHERE id = ?",
          // The names that sqlite_schema and pragma_table_info tell.
          "Filling: INSERT INTO %s (%s) VALUES (%s)",
          "Tables: SELECT %s FROM %s ORDER BY %s",
          // Constants: the mark of a box, a number of steps, a pragma's name.
          "Schema: PRAGMA  + name",
          "Schema: PRAGMA application_id =  + APPLICATION_ID",
          "Schema: PRAGMA user_version =  + to");

  /** What {@code pragma} is asked for, and where a fact is looked up. */
  private static final Pattern CONSTANT_PART =
      Pattern.compile(
          "(?s)(pragma\\(\\w+, |select\\(|facts\\((?:[^,()]|\\([^)]*\\))+, (?:[^,()]|\\([^)]*\\))+, [\\w.<>?]+, )([^,)]+)");

  private static List<Path> sources() throws IOException {
    try (Stream<Path> files = Files.walk(SOURCES)) {
      List<Path> all = new ArrayList<>();
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).sorted().toList()) {
        if (file.getParent().endsWith("store")
            || Files.readString(file).contains("import java.sql.")) {
          all.add(file);
        }
      }
      return all;
    }
  }

  @Test
  void statementsAreConstantsOrListedHere() throws IOException {
    List<String> found = new ArrayList<>();
    int statements = 0;
    for (Path file : sources()) {
      String source = Files.readString(file);
      String name = file.getFileName().toString().replace(".java", "");
      Matcher text = TEXT.matcher(source);
      while (text.find()) {
        String sql = text.group(1) == null ? text.group(2) : text.group(1);
        if (!SQL.matcher(sql).matches()) {
          continue;
        }
        statements++;
        String after = source.substring(text.end()).stripLeading();
        if (sql.contains("%")) {
          found.add(name + ": " + sql);
        } else if (after.startsWith("+")) {
          Matcher part = Pattern.compile("\\+\\s*(\\w+)").matcher(after);
          assertTrue(part.lookingAt(), name + ": " + sql);
          found.add(name + ": " + sql + " + " + part.group(1));
        }
      }
    }
    assertTrue(statements > 30, "only " + statements + " statements were found");
    found.removeIf(each -> each.contains("LIKE 'sqlite_%'"));
    assertEquals(new TreeSet<>(PUT_TOGETHER), new TreeSet<>(found));
  }

  @Test
  void partsOfStatementsAreConstants() throws IOException {
    int parts = 0;
    for (Path file : sources()) {
      Matcher call = CONSTANT_PART.matcher(Files.readString(file));
      while (call.find()) {
        String part = call.group(2).strip();
        if (!part.contains(" name") && !part.equals("String where")) {
          parts++;
          assertTrue(
              part.matches("\"[\\w ]+ = \\?\"|\"\\w+\"|[A-Z_]+|where"),
              file + ": " + call.group() + " takes " + part);
        }
      }
    }
    assertTrue(parts >= 8, "only " + parts + " parts were found");
  }

  @Test
  void onlyTheStoreSpeaksToADatabase() throws IOException {
    for (Path file : sources()) {
      assertTrue(file.getParent().endsWith("store"), file + " imports java.sql");
      // A part of a statement that grows by what is at hand would escape the lists above.
      assertFalse(
          Pattern.compile("(?s)(prepareStatement|execute\\w*)\\(\\s*[^\")(]*\\+")
              .matcher(Files.readString(file))
              .find(),
          file.toString());
    }
  }
}
