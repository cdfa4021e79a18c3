package traytally.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import traytally.ledger.Fact;

/** What an import says of the lists as a whole. */
class ImportTest {
  private static final GivenSheet BOX =
      Handed.sheet("tray.xlsx", "Tray", "Body|Colour|Length mm|Count|Tray", "paddle|ink|75|3|A");
  private static final GivenSheet LOG =
      Handed.sheet(
          "tray.xlsx", "Log", "Date|Water|Body|Colour|Lost", "2026-04-20|Low Quay|paddle|ink|5");
  private static final GivenSheet PRINTED =
      Handed.sheet("shop.csv", "", "Shopping list", "Got|Packs|Why|Run out chance|Stand in");
  private static final GivenSheet NOTHING = Handed.sheet("names.csv", "", "Ann|12", "Ben|14");

  @Test
  void countDateMayBeTodayAndNoLater() {
    new Handed().with("count-date 2026-05-01").take(BOX).says("counted 2026-05-01 3: paddle, ink");
    assertEquals(
        "The count date is after today. Give the day of the count.",
        new Handed().with("count-date 2026-05-02").refusal(BOX));
  }

  @Test
  void onlyTheSheetsNamedAreRead() {
    new Handed().with("sheet TRAY").take(BOX, LOG).says("[Tray] box").saysNot("[Log]");
    assertEquals(
        "tray.xlsx: no sheet is called Attic. Its sheets: Tray, Log.",
        new Handed().with("sheet Attic").refusal(BOX, LOG));
    assertTrue(
        new Handed().with("sheet Log", "as box").refusal(BOX, LOG).contains("no list of this"));
  }

  @Test
  void shoppingListThatWasPrintedHereIsNoListOfTheBox() {
    assertEquals(
        "shop.csv: This is a shopping list that traytally printed, not a list of yours. To enter"
            + " what you bought, import a list of it with --add.",
        new Handed().refusal(PRINTED));
    GivenSheet beside = new GivenSheet("tray.xlsx", "Shop", false, PRINTED.rows(), List.of());
    new Handed()
        .take(BOX, beside)
        .says("This is a shopping list that traytally printed, not a list of yours: passed over.");
  }

  @Test
  void printedHeadingStandsWithinTheFirstThirtyRows() {
    String[] lines = new String[31];
    java.util.Arrays.fill(lines, "trips");
    lines[29] = "Got|Packs|Why|Run out chance|Stand in";
    assertTrue(Printed.is(Handed.sheet("shop.csv", "", lines)));
    lines[30] = lines[29];
    lines[29] = "trips";
    assertFalse(Printed.is(Handed.sheet("shop.csv", "", lines)));
  }

  @Test
  void whatHoldsNoListIsRefusedWithTheHeadersLookedFor() {
    String any = new Handed().refusal(NOTHING);
    assertTrue(
        any.startsWith(
            "names.csv: no list was found. Looked for a row of headers such as Body style, Colour,"
                + " Length and Pieces (box); Date, Body style and Colour (trips); Date and Hours"
                + " (plan); Shop,"),
        any);
    assertEquals(
        "names.csv: no list of this kind was found. Looked for a row of headers such as Date and"
            + " Hours. Name them so, or pass --map 'their header=our field'.",
        new Handed().with("as plan").refusal(NOTHING));
    assertTrue(new Handed().refusal(BOX, NOTHING).startsWith("names.csv: no list was found"));
    GivenSheet tab = new GivenSheet("tray.xlsx", "Names", false, NOTHING.rows(), List.of());
    new Handed().take(BOX, tab).says("[Names] nothing", "No list was found in it: passed over.");
  }

  @Test
  void hiddenSheetAndOneWithoutRowsAreSaid() {
    GivenSheet hidden = new GivenSheet("tray.xlsx", "Tray", true, BOX.rows(), List.of());
    new Handed().take(hidden).says("assumed: The sheet is hidden and was read like the others.");
    new Handed().take("Body|Colour|Count").says("assumed: It has headers and no rows.");
  }

  @Test
  void samePurchasesAreAddedOnceUnlessToldAgain() {
    String[] bag = {"Body|Colour|Length mm|Count", "paddle|ink|75|8", "craw|rust|60|0"};
    Handed handed = new Handed().with("add").take(bag);
    handed.says("bought 8: paddle, ink, 75 mm [list.csv]", "list.csv: 1 plastic bought");
    handed.saysNot("bought 0");
    handed
        .take(bag)
        .says(
            "notice: list.csv: batch 1 has added exactly these purchases. Pass --again to add them"
                + " once more.")
        .says("entry: nothing");
    handed.with("add", "again").take(bag).says("bought 8: paddle, ink, 75 mm");
    String[] more = {"Body|Colour|Length mm|Count", "paddle|ink|75|9"};
    new Handed().with("add").take(bag).take(more).says("bought 1: paddle, ink, 75 mm");
    handed.with("add");
    handed.take(Handed.sheet("other.csv", "", bag)).says("bought 8: paddle, ink, 75 mm [other");
  }

  @Test
  void purchasesBearTheDayTold() {
    new Handed().with("add", "count-date 2026-04-03").take(BOX).says("2026-04-03 bought 3: paddle");
  }

  @Test
  void whatWasUsedBeyondTheBookIsToBeRecountedInItsTray() {
    Handed handed = new Handed().with("count-date 2026-04-01").take(BOX).with().take(LOG);
    handed.says(
        "notice: More of paddle, ink, 75 mm were used than the book held: 2 entered as found."
            + " Recount them in tray A.");
    handed = new Handed().with("count-date 2026-04-01");
    handed.take("Body|Colour|Count", "paddle|ink|3").with().take(LOG);
    handed.says("2 entered as found. Recount them.").saysNot("never counted");
  }

  @Test
  void neverCountedBoxIsSaidOnce() {
    String[] log = {
      "Date|Water|Body|Colour|Lost",
      "2026-04-20|Low Quay|paddle|ink|5",
      "2026-04-20|Low Quay|craw|rust|2"
    };
    new Handed().take(log).says("entered as found (7 in all). Import a box list to count it.");
    log[1] = "2026-04-20|Low Quay|paddle|ink|";
    log[2] = "2026-04-20|Low Quay|craw|rust|";
    new Handed().take(log).saysNot("never counted");
  }

  @Test
  void historyCountsOnlyTheStintsThatUsedPieces() {
    new Handed()
        .take(BOX)
        .take(
            "Date|Water|Body|Colour|Lost",
            "2026-04-20|Low Quay|paddle|ink|1",
            "2026-04-21|Low Quay|paddle|ink|")
        .says("teach trust and use: 1 that used pieces.");
  }

  @Test
  void columnsAreRememberedAsLastTold() {
    String[] list = {"Wobble|Paint|Heap", "paddle|ink|3"};
    Handed handed = new Handed();
    handed.with("map Wobble=body style", "map Paint=colour", "map Heap=pieces").take(list);
    handed.with().take(list).says("\"Heap\" pieces (as the last time)", "1 taken");
    GivenSheet sheet = Handed.sheet("list.csv", "", list);
    assertEquals(List.of(), handed.read(sheet).entry().added());
    Imported other =
        handed.with("map Wobble=body style", "map Paint=colour", "map Heap=loose").read(sheet);
    assertEquals(1, other.entry().withdrawn().size());
    assertEquals(1, other.entry().added().stream().filter(Fact.Mapped.class::isInstance).count());
  }

  @Test
  void strictTakesAllOrNothing() {
    String[] list = {"Body|Colour|Count", "paddle|ink|3", "craw|rust|lots of"};
    new Handed().with("strict").take(list).says("0 taken, 2 skipped", "Nothing was taken: a row");
    list[2] = "craw|rust|~4";
    new Handed().with("strict").take(list).says("2 taken, 0 skipped").saysNot("Nothing was taken");
  }

  @Test
  void importAddsUpItsSheets() {
    Imported imported =
        new Handed()
            .read(
                Handed.sheet("a.csv", "", "Body|Colour|Count", "paddle|ink|3", "craw|rust|no idea"),
                Handed.sheet("b.csv", "", "Body|Colour|Count", "paddle|olive|3"));
    assertEquals(3, imported.rowsRead());
    assertEquals(2, imported.rowsTaken());
    assertEquals(1, imported.rowsSkipped());
    assertTrue(imported.hasProblems());
    assertEquals(Optional.of(ListKind.BOX), imported.kind());
    Imported both = new Handed().read(BOX, LOG);
    assertEquals(Optional.empty(), both.kind());
    assertFalse(both.hasProblems());
    assertEquals(Optional.of(ListKind.PLAN), ListKind.parse("Plan"));
  }
}
