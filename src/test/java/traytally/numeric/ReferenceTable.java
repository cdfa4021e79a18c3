package traytally.numeric;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** A table of reference values: plain CSV, no quotes, a header line. */
final class ReferenceTable {
  private final List<String> header;
  private final List<List<String>> rows;

  private ReferenceTable(List<String> header, List<List<String>> rows) {
    this.header = header;
    this.rows = rows;
  }

  static ReferenceTable read(String name) {
    try (InputStream in = ReferenceTable.class.getResourceAsStream("/reference/" + name)) {
      if (in == null) {
        throw new IllegalArgumentException("no reference table " + name);
      }
      List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
      List<List<String>> rows = lines.stream().skip(1).map(ReferenceTable::cells).toList();
      return new ReferenceTable(cells(lines.get(0)), rows);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> cells(String line) {
    return Arrays.stream(line.split(",", -1)).map(String::strip).toList();
  }

  int size() {
    return rows.size();
  }

  List<String> texts(String column) {
    int at = header.indexOf(column);
    return rows.stream().map(row -> row.get(at)).toList();
  }

  double[] numbers(String column) {
    return texts(column).stream().mapToDouble(Double::parseDouble).toArray();
  }

  int[] integers(String column) {
    return texts(column).stream().mapToInt(Integer::parseInt).toArray();
  }

  /** The columns' texts joined as R's interaction does, a:b. */
  List<String> joined(String... columns) {
    List<List<String>> texts = Arrays.stream(columns).map(this::texts).toList();
    return IntStream.range(0, rows.size())
        .mapToObj(row -> String.join(":", texts.stream().map(column -> column.get(row)).toList()))
        .toList();
  }

  /** The number after the given leading cells. */
  double value(String... leading) {
    List<String> wanted = List.of(leading);
    return rows.stream()
        .filter(row -> row.subList(0, wanted.size()).equals(wanted))
        .mapToDouble(row -> Double.parseDouble(row.get(wanted.size())))
        .findFirst()
        .orElseThrow();
  }
}
