package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** From a list of the tray to a shopping list, on the invented data of {@code demo-data}. */
class MainJobTest {
  private static final String DATA = "demo-data/";

  @TempDir Path folder;

  @BeforeEach
  void importTheDemo() {
    Ran ran = importDemo();
    assertEquals(0, ran.code(), ran.err());
  }

  private Ran importDemo() {
    return Ran.in(
        folder,
        "import",
        DATA + "tray.xlsx",
        DATA + "trips.xlsx",
        DATA + "plan.xlsx",
        DATA + "prices.xlsx",
        "--count-date",
        "2026-03-15",
        "--format",
        "json");
  }

  private Json json(String... args) {
    String[] all = java.util.Arrays.copyOf(args, args.length + 2);
    all[args.length] = "--format";
    all[args.length + 1] = "json";
    Ran ran = Ran.in(folder, all);
    assertEquals(0, ran.code(), ran.err());
    assertEquals("", ran.err());
    return Json.parse(ran.out());
  }

  private static Json row(Json report, String body, String colour, int lengthMm) {
    return report.rows().stream()
        .filter(r -> r.text("body").equals(body) && r.text("colour").equals(colour))
        .filter(r -> r.number("length_mm") == lengthMm)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void everyRowOfTheListsIsTaken() {
    Json ledger = json("ledger");
    assertEquals("traytally/ledger/1", ledger.text("schema"));
    assertEquals("2026-05-01", ledger.text("as_of"));
    assertEquals(302, json("trips").rows().size());
    assertEquals(67, json("box").rows().size());
    assertEquals(3, json("plan").rows().size());
  }

  @Test
  void theLogLowersTheCountSinceItWasMade() {
    Json motorOil = row(json("box"), "paddle tail", "motor oil", 75);
    Json counted =
        json("ledger").rows().stream()
            .filter(r -> r.text("kind").equals("opening"))
            .filter(r -> r.text("body").equals("paddle tail"))
            .filter(r -> r.text("colour").equals("motor oil") && r.number("length_mm") == 75)
            .findFirst()
            .orElseThrow();
    assertEquals(10, counted.number("pieces"));
    assertEquals(3, motorOil.number("pieces"));
  }

  @Test
  void importingTwiceLeavesTheBoxAsItWas() {
    String box = Ran.in(folder, "box", "--format", "json").out();
    String ledger = Ran.in(folder, "ledger", "--format", "json").out();
    Json again = Json.parse(importDemo().out());
    assertTrue(again.isNull("batch"));
    assertEquals(0, again.number("rows_skipped"));
    assertEquals(box, Ran.in(folder, "box", "--format", "json").out());
    assertEquals(ledger, Ran.in(folder, "ledger", "--format", "json").out());
  }

  @Test
  void undoEmptiesTheBox() {
    Ran undo = Ran.in(folder, "undo");
    assertEquals(0, undo.code(), undo.err());
    assertTrue(json("box").rows().isEmpty());
    assertTrue(json("trips").rows().isEmpty());
    assertTrue(json("plan").rows().isEmpty());
  }

  @Test
  void undoingTheUndoBringsItAllBack() {
    String box = Ran.in(folder, "box", "--format", "json").out();
    Ran.in(folder, "undo");
    assertEquals(0, Ran.in(folder, "undo", "2").code());
    assertEquals(box, Ran.in(folder, "box", "--format", "json").out());
  }

  @Test
  void theListFlagsTheTrustedColoursRunningLow() {
    Json list = json("restock");
    Json gone = row(list, "curl tail", "kelp green", 90);
    assertEquals(0, gone.number("pieces"));
    assertEquals("trusted", gone.text("standing"));
    assertTrue(gone.yes("low"));
    assertTrue(gone.number("expected_use") > 0, "what ran out must not look unwanted");
    assertEquals(1, gone.number("run_out_chance"));
    assertTrue(gone.number("packs") >= 1);
    assertTrue(gone.number("run_out_after") <= 0.05);
    Json nearly = row(list, "paddle tail", "motor oil", 75);
    assertEquals(3, nearly.number("pieces"));
    assertTrue(nearly.number("run_out_chance") > 0.05);
    Json unsold = row(list, "sandeel", "rust", 115);
    assertEquals(0, unsold.number("packs"));
    assertTrue(unsold.text("reason").contains("sold out"), unsold.text("reason"));
    assertFalse(unsold.isNull("stand_in"));
    assertTrue(
        list.rows().stream().noneMatch(r -> r.text("colour").equals("coral pink")),
        "forty of a doubtful colour need no more");
  }

  @Test
  void everyKeyOfTheListStandsWhereProgramsExpectIt() {
    Json list = json("restock");
    assertEquals(
        List.of(
            "schema",
            "as_of",
            "horizon_from",
            "horizon_to",
            "trips_counted",
            "budget",
            "postage",
            "total",
            "currency",
            "takes_saved",
            "rows"),
        list.keys());
    assertEquals(
        List.of(
            "shop",
            "maker",
            "body",
            "colour",
            "length_mm",
            "pieces",
            "standing",
            "kept",
            "trust",
            "expected_use",
            "use_p90",
            "run_out_chance",
            "packs",
            "pack_size",
            "pack_price",
            "line_total",
            "run_out_after",
            "takes_saved",
            "low",
            "reason",
            "stand_in"),
        list.rows().get(0).keys());
  }

  @Test
  void theSumsOfTheListAddUp() {
    Json list = json("restock");
    double goods = 0;
    for (Json row : list.rows()) {
      if (row.number("packs") > 0) {
        double line = Double.parseDouble(row.text("line_total"));
        assertEquals(row.number("packs") * Double.parseDouble(row.text("pack_price")), line, 1e-9);
        goods += line;
      }
    }
    assertEquals(
        goods + Double.parseDouble(list.text("postage")),
        Double.parseDouble(list.text("total")),
        1e-9);
  }

  @Test
  void lowAndFailTellAScript() {
    assertEquals(1, Ran.in(folder, "box", "--low", "--fail").code());
    assertEquals(0, Ran.in(folder, "box", "--low").code());
    assertEquals(2, Ran.in(folder, "box", "--fail").code());
    Ran.in(folder, "undo");
    assertEquals(0, Ran.in(folder, "box", "--low", "--fail").code());
  }

  @Test
  void aDryRunSaysTheSameAndRecordsNothing() throws IOException {
    Path other = Files.createDirectory(folder.resolve("other"));
    String[] lists = {"import", DATA + "tray.xlsx", DATA + "trips.xlsx"};
    String[] dry = {"import", DATA + "tray.xlsx", DATA + "trips.xlsx", "--dry-run"};
    Ran tried = Ran.in(other, dry);
    assertFalse(Files.exists(other.resolve("tray.box")), "a dry run makes no box");
    Ran real = Ran.in(other, lists);
    assertEquals(
        tried
            .out()
            .replace("Import, tried only", "Import")
            .replaceAll("Tried only: nothing was recorded\\.", "END"),
        real.out()
            .replaceAll("Batch: 1", "Batch: –")
            .replaceAll("Recorded as batch 1; traytally undo takes it back\\.", "END"));
  }

  @Test
  void theSameBoxAndDayGiveTheSameBytes() throws IOException {
    for (String format : List.of("json", "csv", "xlsx")) {
      Path one = folder.resolve("one." + format);
      Path two = folder.resolve("two." + format);
      Ran.in(folder, "restock", "--as-of", "2026-05-01", "--out", one.toString());
      Ran.in(folder, "restock", "--as-of", "2026-05-01", "--out", two.toString());
      assertEquals(-1, Files.mismatch(one, two), format);
    }
  }
}
