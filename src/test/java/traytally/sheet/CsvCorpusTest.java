package traytally.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Two published collections of texts with their right answers. */
class CsvCorpusTest {
  private static final Pattern QUOTED = Pattern.compile("'((?:[^']|'')*)'|\"([^\"]*)\"");

  /** github.com/maxogden/csv-spectrum (BSD-2-Clause): each text with its records in JSON. */
  @TestFactory
  Stream<DynamicTest> csvSpectrumIsReadAsItsAnswersSay() throws IOException {
    Path folder = SharedFolder.require("corpus/csv-spectrum");
    List<Path> texts = SharedFolder.filesBelow(folder.resolve("csvs"));
    assertTrue(texts.size() >= 11, "texts found: " + texts);
    return texts.stream()
        .map(text -> DynamicTest.dynamicTest(text.getFileName().toString(), () -> check(text)));
  }

  private static void check(Path text) throws IOException {
    String name = text.getFileName().toString().replace(".csv", ".json");
    Path answer = text.resolveSibling("../json/" + name).normalize();
    List<Row> rows = Reader.rows(text);
    List<Map<String, String>> found = new ArrayList<>();
    for (Row row : rows.subList(1, rows.size())) {
      Map<String, String> record = new LinkedHashMap<>();
      for (int i = 0; i < rows.get(0).cells().size(); i++) {
        record.put(rows.get(0).cell(i).shown(), unixEnds(row.cell(i).shown()));
      }
      found.add(record);
    }
    assertEquals(records(answer), found);
  }

  /** A checkout may have changed the line ends of the texts, not those the answers spell out. */
  private static String unixEnds(String text) {
    return text.replace("\r\n", "\n");
  }

  private static List<Map<String, String>> records(Path json) throws IOException {
    List<Map<String, String>> records = new ArrayList<>();
    try (JsonParser parser = new JsonFactory().createParser(json.toFile())) {
      for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
        if (token == JsonToken.START_OBJECT) {
          records.add(new LinkedHashMap<>());
        } else if (token == JsonToken.VALUE_STRING) {
          records.get(records.size() - 1).put(parser.currentName(), unixEnds(parser.getText()));
        }
      }
    }
    return records;
  }

  /** github.com/osiegmar/JavaCsvComparison (MIT): checks of RFC 4180, RFC 4180-bis and beyond. */
  @TestFactory
  Stream<DynamicTest> javaCsvComparisonIsPassed() throws IOException {
    Path folder = SharedFolder.require("corpus/javacsvcomparison");
    List<DynamicTest> tests = new ArrayList<>();
    for (Path file : SharedFolder.filesBelow(folder)) {
      String settings = Files.readString(file);
      // Comments are not ours: in a box list a # may begin a number.
      if (!settings.contains("commentMode: READ") && !settings.contains("commentMode: SKIP")) {
        checks(Files.readAllLines(file), settings.contains("skipEmptyLines: true"), tests);
      }
    }
    assertTrue(tests.size() >= 46, "checks found: " + tests.size());
    return tests.stream();
  }

  private static void checks(List<String> lines, boolean skipEmpty, List<DynamicTest> tests) {
    String id = "";
    String input = "";
    List<List<String>> records = new ArrayList<>();
    List<String> all = new ArrayList<>(lines);
    all.add("  - id: end");
    for (String line : all) {
      String bare = line.strip();
      if (bare.startsWith("- id:")) {
        if (!id.isEmpty()) {
          String text = input;
          List<List<String>> expected = List.copyOf(records);
          tests.add(DynamicTest.dynamicTest(id, () -> check(text, expected, skipEmpty)));
        }
        id = bare.substring(5).strip();
        records.clear();
      } else if (bare.startsWith("input:")) {
        input = quoted(bare).get(0);
      } else if (bare.startsWith("- [")) {
        records.add(quoted(bare));
      }
    }
  }

  private static List<String> quoted(String line) {
    List<String> values = new ArrayList<>();
    Matcher matcher = QUOTED.matcher(line);
    while (matcher.find()) {
      values.add(
          Optional.ofNullable(matcher.group(1)).orElse("").replace("''", "'")
              + Optional.ofNullable(matcher.group(2)).orElse(""));
    }
    return values;
  }

  private static void check(String input, List<List<String>> expected, boolean skipEmpty)
      throws IOException {
    for (String end : List.of("\n", "\r", "\r\n")) {
      List<List<String>> wanted =
          expected.stream()
              .map(record -> record.stream().map(field -> withEnds(field, end)).toList())
              .filter(record -> !skipEmpty || !record.equals(List.of("")))
              .toList();
      List<List<String>> found =
          read(withEnds(input, end)).stream()
              .filter(record -> !skipEmpty || !record.equals(List.of("")))
              .toList();
      assertEquals(wanted, found);
    }
  }

  private static String withEnds(String text, String any) {
    return text.replace("⏎", any)
        .replace("␤", "\r\n")
        .replace("␍", "\r")
        .replace("␊", "\n")
        .replace("␠", " ");
  }

  private static List<List<String>> read(String text) throws IOException {
    List<List<String>> all = new ArrayList<>();
    LineReader lines = new LineReader(new StringReader(text), 1000);
    try (CsvRecords records = new CsvRecords(lines, ',', Limits.DEFAULT)) {
      Optional<String[]> record = records.next();
      while (record.isPresent()) {
        all.add(List.of(record.get()));
        record = records.next();
      }
    }
    return all;
  }
}
