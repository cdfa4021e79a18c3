package traytally.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import traytally.intake.Problem.Severity;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/**
 * The rows of one sheet that were not taken, as the person wrote them, each with what is wrong.
 *
 * @param file the file's name
 * @param sheet the tab's name, empty for a text file
 * @param headers what stands over the columns, empty where nothing does
 * @param rows one for each row not taken
 */
public record ProblemRows(String file, String sheet, List<String> headers, List<Line> rows) {
  public ProblemRows {
    headers = List.copyOf(headers);
    rows = List.copyOf(rows);
  }

  /**
   * One row.
   *
   * @param number as the spreadsheet program shows it
   * @param cells as shown, in the order of the headers
   * @param problem what is wrong and what to do, in sentences
   */
  public record Line(int number, List<String> cells, String problem) {
    public Line {
      cells = List.copyOf(cells);
    }
  }

  /** The rows of {@code sheets} that {@code imported} could not take; none for a sheet without. */
  public static List<ProblemRows> of(List<GivenSheet> sheets, Imported imported) {
    List<ProblemRows> all = new ArrayList<>();
    for (GivenSheet sheet : sheets) {
      Map<Integer, String> problems = problems(sheet, imported);
      if (!problems.isEmpty()) {
        all.add(of(sheet, imported, problems));
      }
    }
    return all;
  }

  private static Map<Integer, String> problems(GivenSheet sheet, Imported imported) {
    Map<Integer, String> problems = new TreeMap<>();
    for (Problem problem : imported.problems()) {
      if (problem.severity() == Severity.PROBLEM
          && problem.file().equals(sheet.file())
          && problem.sheet().equals(sheet.name())) {
        String said =
            problem.value().isEmpty()
                ? problem.problem()
                : "\"" + problem.value() + "\" " + problem.problem();
        problems.merge(problem.row(), said, (one, other) -> one + " " + other);
      }
    }
    return problems;
  }

  private static ProblemRows of(
      GivenSheet sheet, Imported imported, Map<Integer, String> problems) {
    List<Row> rows =
        sheet.rows().stream().filter(row -> problems.containsKey(row.number())).toList();
    int width = rows.stream().mapToInt(row -> row.cells().size()).max().orElse(0);
    Map<String, String> byLetters = headers(sheet, imported);
    List<String> headers = new ArrayList<>();
    for (int column = 0; column < width; column++) {
      String letters = traytally.sheet.Address.columnLetters(column);
      headers.add(byLetters.getOrDefault(letters, ""));
    }
    List<Line> lines = new ArrayList<>();
    for (Row row : rows) {
      List<String> cells = new ArrayList<>();
      for (int column = 0; column < width; column++) {
        Cell cell = row.cell(column);
        cells.add(cell.shown());
      }
      lines.add(new Line(row.number(), cells, problems.getOrDefault(row.number(), "")));
    }
    return new ProblemRows(sheet.file(), sheet.name(), headers, lines);
  }

  private static Map<String, String> headers(GivenSheet sheet, Imported imported) {
    Map<String, String> headers = new LinkedHashMap<>();
    for (SheetReading reading : imported.readings()) {
      if (reading.file().equals(sheet.file()) && reading.sheet().equals(sheet.name())) {
        reading.columns().forEach(c -> headers.putIfAbsent(c.letters(), c.header()));
      }
    }
    return headers;
  }
}
