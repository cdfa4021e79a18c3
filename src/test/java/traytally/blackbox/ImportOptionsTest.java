package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** What a person says beside the lists, and what an import says back. */
class ImportOptionsTest {
  private static final String HEAD = "Body,Colour,Length,Pieces,Pack size\n";

  @TempDir Path folder;

  private String list(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text).toString();
  }

  private Json json(String... command) {
    List<String> args = new ArrayList<>(List.of(command));
    args.addAll(List.of("--format", "json"));
    Ran ran = Ran.in(folder, args.toArray(String[]::new));
    assertTrue(ran.code() == 0 || ran.code() == 65, ran.err());
    return Json.parse(ran.out());
  }

  private double piecesOf(String colour) {
    return json("box").rows().stream()
        .filter(row -> row.text("colour").equals(colour))
        .mapToDouble(row -> row.number("pieces"))
        .sum();
  }

  @Test
  void theReportSaysWhatTheListComesTo() throws IOException {
    String tray = HEAD + "Shad,blue,85 mm,5,\nShad,rust,85 mm,%d,\n";
    assertTrue(
        said(list("tray.csv", tray.formatted(4))).contains("Counted: 9 pieces of 2 plastics."));
    String again = said(list("tray.csv", tray.formatted(1)), "--dry-run");
    assertTrue(again.contains("Counted: 1 piece of 1 plastic."), again);
    assertTrue(again.contains("Against the book: Shad, rust, 85 mm: -3."), again);
    String bought = said(list("bought.csv", HEAD + "Shad,blue,85 mm,6,\n"), "--add");
    assertTrue(bought.contains("Bought: 6 pieces of 1 plastic."), bought);
    String trips =
        """
        Date,Body,Colour,Length,Takes,Lost,Worn
        2026-04-01,Shad,blue,85 mm,2,1,0
        2026-04-01,Shad,rust,85 mm,1,0,1
        """;
    String log = said(list("log.csv", trips));
    assertTrue(log.contains("Logged: 2 stints on 1 trip, 3 takes, 2 pieces used up."), log);
  }

  private String said(String file, String... options) {
    List<String> args = new ArrayList<>(List.of("import", file));
    args.addAll(List.of(options));
    return Ran.in(folder, args.toArray(String[]::new)).out().replaceAll("\\s+", " ");
  }

  @Test
  void rowsNotTakenAreWrittenBackWithTheirProblem() throws IOException {
    String file = list("tray.csv", HEAD + "Shad,=red,85 m,4,\nShad,blue,85 mm,5,\n");
    String problems = folder.resolve("wrong.xlsx").toString();
    Ran ran = Ran.in(folder, "import", file, "--problems", problems);
    assertEquals(0, ran.code(), ran.err());
    assertEquals("Written: " + problems + "\n", ran.err());
    Json again = json("import", problems, "--dry-run");
    assertEquals(1, again.number("rows_read"));
    assertEquals("85 m", again.rows().get(0).text("value"));
    List<String> headers = again.rows("columns").stream().map(c -> c.text("header")).toList();
    assertEquals(
        List.of("Row", "Body", "Colour", "Length", "Pieces", "Problem"),
        headers.stream().filter(h -> !h.equals("Pack size")).toList());
  }

  @Test
  void aListWithoutProblemsLeavesNoFileOfThem() throws IOException {
    String file = list("tray.csv", HEAD + "Shad,blue,85 mm,5,\n");
    Path problems = folder.resolve("wrong.xlsx");
    Ran ran = Ran.in(folder, "import", file, "--problems", problems.toString());
    assertEquals(0, ran.code(), ran.err());
    assertFalse(Files.exists(problems));
    assertTrue(ran.err().startsWith("No row has a problem"), ran.err());
  }

  @Test
  void problemsGoToAWorkbookOnly() throws IOException {
    String file = list("tray.csv", HEAD + "Shad,blue,85 mm,5,\n");
    Ran ran = Ran.in(folder, "import", file, "--problems", "wrong.csv");
    assertEquals(2, ran.code());
    assertTrue(ran.err().contains("end its name in .xlsx"), ran.err());
  }

  @Test
  void strictTakesAllOrNothing() throws IOException {
    String file = list("tray.csv", HEAD + "Shad,red,85 m,4,\nShad,blue,85 mm,5,\n");
    Ran ran = Ran.in(folder, "import", file, "--strict");
    assertEquals(65, ran.code(), ran.out());
    assertEquals(List.of(), json("box").rows().stream().map(Json::keys).toList());
    assertEquals(0, Ran.in(folder, "import", file).code());
    assertEquals(5, piecesOf("blue"));
  }

  @Test
  void purchasesAreAddedOnceUnlessAskedAgain() throws IOException {
    json("import", list("tray.csv", HEAD + "Shad,blue,85 mm,5,6\n"));
    String bought = list("bought.csv", HEAD + "Shad,blue,85 mm,2 packs,\n");
    json("import", bought, "--add");
    assertEquals(17, piecesOf("blue"));
    assertTrue(json("import", bought, "--add").isNull("batch"));
    assertEquals(17, piecesOf("blue"));
    json("import", bought, "--add", "--again");
    assertEquals(29, piecesOf("blue"));
  }

  @Test
  void packsAreCountedByTheSizeTheBookKnows() throws IOException {
    json("import", list("tray.csv", HEAD + "Shad,blue,85 mm,5,6\n"));
    Json report =
        json("import", list("new.csv", "Body,Colour,Length,Pieces\nShad,blue,85mm,3 packs\n"));
    assertEquals(18, piecesOf("blue"));
    assertTrue(
        report.rows("assumptions").stream()
            .anyMatch(a -> a.text("assumption").contains("that of the last list")));
  }

  @Test
  void aCountHoldsForItsDay() throws IOException {
    String file = list("tray.csv", HEAD + "Shad,blue,85 mm,5,\n");
    json("import", file, "--count-date", "2026-04-01");
    assertEquals("2026-04-01", json("ledger").rows().get(0).text("date"));
    Ran later = Ran.in(folder, "import", file, "--count-date", "2026-06-01");
    assertEquals(65, later.code());
  }

  @Test
  void severalListsAreOneBatch() throws IOException {
    String tray = list("tray.csv", HEAD + "Shad,blue,85 mm,5,\n");
    String trips =
        list(
            "trips.csv",
            """
            Date,Water,Body,Colour,Length,Minutes,Takes,Lost
            2026-04-20,Ossel Bay,Shad,blue,85 mm,60,1,1
            """);
    Json report = json("import", trips, tray, "--count-date", "2026-04-01");
    assertEquals("trips box", report.text("kind"));
    assertEquals(1, report.number("batch"));
    assertEquals(4, piecesOf("blue"));
    Ran.in(folder, "undo");
    assertEquals(List.of(), json("trips").rows().stream().map(Json::keys).toList());
  }

  @Test
  void aNearMissNamesTheCommandThatAcceptsIt() throws IOException {
    json("import", list("tray.csv", HEAD + "Shad,motor oil,85 mm,5,\n"));
    String trips =
        list(
            "trips.csv",
            """
            Date,Water,Body,Colour,Length,Minutes,Takes
            2026-04-20,Ossel Bay,Shad,mtr oil,85 mm,60,1
            """);
    Json refused = json("import", trips);
    String problem = refused.rows().get(0).text("problem");
    assertTrue(problem.contains("traytally agree 'mtr oil' = 'motor oil'"), problem);
    assertEquals(0, Ran.in(folder, "agree", "mtr oil", "=", "motor oil").code());
    assertEquals(1, json("import", trips).number("rows_taken"));
    assertEquals("motor oil", json("trips").rows().get(0).text("colour"));
  }

  @Test
  void aPlanHasNoBodyStyleToTakeFromATitle() {
    Json report = json("import", "demo-data/plan.xlsx");
    assertEquals("plan", report.text("kind"));
    assertEquals(List.of(), report.rows("assumptions").stream().map(Json::keys).toList());
  }

  @Test
  void aShoppingListPrintedHereIsNoListOfTheBox() throws IOException {
    json("import", list("tray.csv", HEAD + "Shad,blue,85 mm,5,\n"));
    String printed = folder.resolve("shopping.xlsx").toString();
    assertEquals(0, Ran.in(folder, "restock", "--out", printed).code());
    Ran ran = Ran.in(folder, "import", printed);
    assertEquals(65, ran.code(), ran.out());
    assertTrue(ran.err().contains("a shopping list that traytally printed"), ran.err());
  }

  @Test
  void theReportSaysInSentencesWhatWasReadAndWhatNot() throws IOException {
    String file = list("tray.csv", "Shape,Shade,mm,Left,Ref\nShad,red,85,?,1\nShad,blue,85,~5,2\n");
    Ran ran =
        Ran.with(
            Map.of("TRAYTALLY_BOX", folder.resolve("tray.box").toString(), "COLUMNS", "80"),
            "import",
            file);
    String text = ran.out().replaceAll("\\s+", " ");
    assertTrue(
        text.contains(
            "read as a list of the box: A \"Shape\" as body style, B \"Shade\" as colour,"
                + " C \"mm\" as length, D \"Left\" as pieces; passed over: E \"Ref\"."),
        ran.out());
    assertTrue(text.contains("Not taken: tray.csv, D2: \"?\" is not a count"), ran.out());
    assertTrue(text.contains("tray.csv, D3: \"~5\" is a guess: taken as 5."), ran.out());
    assertTrue(ran.out().lines().allMatch(line -> line.length() <= 80), ran.out());
  }
}
