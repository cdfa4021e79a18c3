package traytally.intake;

import org.junit.jupiter.api.Test;

/** What a list of the box changes in a book that knows some of it already. */
class BoxListTest {
  private static final String HEADERS = "Maker|Body|Colour|Length mm|Count";

  private final Handed handed = new Handed().with("count-date 2026-04-01");

  @Test
  void plasticThatMayBeAnyOfTwoIsAskedFor() {
    handed.take(HEADERS, "Brine|paddle|ink|75|3", "Kelpie|paddle|ink|75|4");
    handed
        .take("Body|Colour|Count", "paddle|ink|2")
        .says("0 taken, 1 skipped")
        .says("\"paddle\" may be any of paddle, ink, 75 mm (Brine); paddle, ink, 75 mm (Kelpie).")
        .says("Write the maker and the length.");
  }

  @Test
  void plasticInFewerWordsIsTheKnownOne() {
    handed.take(HEADERS, "Brine|paddle|ink|75|3");
    handed
        .with()
        .take("Body|Colour|Count", "paddle|ink|2")
        .says("note: list.csv, A2: \"paddle\" was taken for the known paddle, ink, 75 mm (Brine).")
        .says("counted 2026-05-01 2: paddle, ink, 75 mm (Brine)");
    handed.take(HEADERS, "Brine|paddle|ink|75|1").saysNot("was taken for the known");
  }

  @Test
  void twoRowsThatWouldBeTheSameKnownPlasticStayAsWritten() {
    handed.take(HEADERS, "Brine|paddle|ink|75|3");
    handed
        .with()
        .take(HEADERS, "|paddle|ink|75|2", "Brine|paddle|ink||4")
        .says("counted 2026-05-01 2: paddle, ink, 75 mm\n")
        .says("counted 2026-05-01 4: paddle, ink (Brine)\n")
        .saysNot("was taken for the known");
  }

  @Test
  void blankPiecesAreNoneOnlyWhereTheBoxHoldsNone() {
    handed.take(HEADERS, "|paddle|ink|75|1", "|craw|rust|60|0");
    handed
        .take(HEADERS, "|paddle|ink|75|", "|craw|rust|60|")
        .says("E2: The pieces are blank, and the box holds some.")
        .says("note: list.csv, E3: The pieces are blank: taken as 0.");
  }

  @Test
  void rowsOfOnePlasticAddUp() {
    handed
        .take(HEADERS, "|paddle|ink|75|3", "|craw|rust|60|1", "|paddle|ink|75|4")
        .says("note: list.csv, B4: \"paddle\" stands in 2 rows: 7 pieces in all.")
        .says("list.csv: 2 plastics counted")
        .saysNot("stands in 1 rows");
  }

  @Test
  void sameCountIsANewOneOnlyOnALaterDayThatIsTold() {
    String[] list = {HEADERS, "|paddle|ink|75|3"};
    handed.take(list);
    handed.with().take(list).says("entry: nothing");
    handed.with("count-date 2026-04-01").take(list).says("entry: nothing");
    handed.with("count-date 2026-03-01").take(list).says("entry: nothing");
    handed.with("count-date 2026-04-02").take(list).says("counted 2026-04-02 3: paddle, ink");
    handed.with().take(HEADERS, "|paddle|ink|75|4").says("counted 2026-05-01 4: paddle");
    handed.take(HEADERS, "|paddle|ink|75|5").says("counted 2026-05-01 5: paddle");
    handed.take(HEADERS, "|paddle|ink|75|4").says("counted 2026-05-01 4: paddle");
  }

  @Test
  void listTheBookWroteChangesOnlyWhatWasEdited() {
    String headers = "Body|Colour|Count|Book says";
    handed.take("Body|Colour|Count", "paddle|ink|3", "craw|rust|8");
    handed.take("Date|Water|Body|Colour|Lost", "2026-04-20|Low Quay|paddle|ink|1");
    handed.with().take(headers, "paddle|ink|2|2", "craw|rust|8|8").says("entry: nothing");
    handed.take(headers, "paddle|ink|3|2").says("counted 2026-05-01 3: paddle, ink");
    handed.take(headers, "paddle|ink|3|1").says("entry: nothing");
    handed.take(headers, "craw|rust|3|5", "craw|rust|5|").says("entry: nothing");
    handed.take(headers, "craw|rust|3|4", "craw|rust|7|5").says("counted 2026-05-01 10: craw");
    handed.take(headers, "craw|rust|4|4", "craw|rust|5|5").says("entry: nothing");
  }

  @Test
  void whatAListHasNoColumnForStaysAsItWas() {
    handed.take(
        "Body|Colour|Count|Pack size|Pack price|Tray|Note", "paddle|ink|3|8|4.95|A|get more");
    handed
        .take("Body|Colour|Count|Tray", "paddle|ink|3|B")
        .says("described paddle, ink: tray 'B', pack 8 at 4.95 EUR, note 'get more'")
        .says("entry: details of a list changed");
    handed
        .take("Body|Colour|Count|Pack size|Note", "paddle|ink|3|6|")
        .says("described paddle, ink: tray 'B', pack 6 at 4.95 EUR, note ''");
    handed
        .take("Body|Colour|Count|Pack price", "paddle|ink|3|5.95", "craw|rust|1|")
        .says("described paddle, ink: tray 'B', pack 6 at 5.95 EUR, note ''")
        .saysNot("described craw");
    handed.take("Body|Colour|Count|Tray", "paddle|ink|3|B").says("entry: nothing");
    handed.take("Body|Colour|Count|Pack price", "paddle|ink|3|").says("pack 6 at ?");
  }

  @Test
  void traysAndNotesOfSeveralRowsAreJoined() {
    handed
        .take(
            "Body|Colour|Count|Tray|Note|Pack size",
            "paddle|ink|1|A|old|",
            "paddle|ink|1|A||6",
            "paddle|ink|1|B|new|8")
        .says("described paddle, ink: tray 'A / B', pack 6 at ?, note 'old / new'");
  }

  @Test
  void coloursKeepWhatTheListDoesNotShow() {
    handed.take(
        "Body|Colour|Count|Base swatch|Flake swatch|Finish", "paddle|ink|1|#101020|#ffffff|flake");
    handed
        .take("Body|Colour|Count|Finish", "paddle|ink|1|solid")
        .says("name=ink, base=Optional[#101020], flake=Optional[#ffffff], finish=Optional[SOLID]");
    handed
        .take("Body|Colour|Count|Base swatch", "paddle|ink|1|#202020")
        .says("name=ink, base=Optional[#202020], flake=Optional[#ffffff], finish=Optional[SOLID]");
    handed
        .take("Body|Colour|Count|Flake swatch", "paddle|ink|1|#eeeeee")
        .says("name=ink, base=Optional[#202020], flake=Optional[#eeeeee], finish=Optional[SOLID]");
    handed.take("Body|Colour|Count|Finish", "paddle|ink|1|solid").says("entry: nothing");
    handed.take("Body|Colour|Count", "paddle|ink|1").says("entry: nothing");
  }

  @Test
  void ofTwoLooksOfAColourTheFirstIsKept() {
    String headers = "Body|Colour|Count|Base swatch|Flake swatch|Finish";
    handed
        .take(headers, "paddle|ink|1|#101020||", "craw|ink|1|#101020|#ffffff|flake")
        .says("base=Optional[#101020], flake=Optional[#ffffff], finish=Optional[FLAKE]")
        .saysNot("has another swatch");
    String[][] others = {{"#101021", "#ffffff", "flake"}, {"", "#fffffe", ""}, {"", "", "solid"}};
    for (String[] other : others) {
      new Handed()
          .take(
              headers,
              "paddle|ink|1|#101020|#ffffff|flake",
              "craw|ink|1|" + String.join("|", other))
          .says("B3: \"ink\" has another swatch or finish further up, which was kept.")
          .says("base=Optional[#101020], flake=Optional[#ffffff], finish=Optional[FLAKE]");
    }
  }

  @Test
  void yesVouchesForAPlasticAndNoEndsThat() {
    String headers = "Body|Colour|Count|Kept";
    handed.take(headers, "paddle|ink|1|", "craw|rust|1|no").saysNot("Kept[");
    handed.take(headers, "paddle|ink|1|yes", "craw|rust|1|").says("+ Kept[plastic=paddle, ink]");
    handed.take(headers, "paddle|ink|1|yes", "craw|rust|1|").says("entry: nothing");
    handed.take(headers, "paddle|ink|1|", "craw|rust|1|").says("entry: nothing");
    handed.take(headers, "paddle|ink|1|no", "paddle|ink|0|yes").says("entry: nothing");
    handed.take(headers, "paddle|ink|1|no").says("- Kept[plastic=paddle, ink]");
  }

  @Test
  void namesThatLookLikeSlipsOfOneAnotherAreAsked() {
    handed
        .take("Body|Colour|Count", "paddle|motor oil|1", "paddle|motor oli|2", "craw|rust|3")
        .says("B3: \"motor oli\" is new and was taken. Did you mean \"motor oil\"?")
        .saysNot("\"motor oil\" is new", "\"rust\" is new");
    handed.take("Body|Colour|Count", "paddle|motor oli|3").saysNot("is new and was taken");
  }

  @Test
  void wrongSwatchesFinishesAndYesesAreSaidAndDropped() {
    handed
        .take(
            "Body|Colour|Count|Base swatch|Finish|Kept|Pack price",
            "paddle|ink|1|bluish|woolly|perhaps|ask")
        .says("1 taken, 0 skipped")
        .says("\"bluish\" is not a swatch. Write it as #1a2b3c. The rest of the row was taken.")
        .says("\"woolly\" is no finish known here.")
        .says("\"perhaps\" is neither yes nor no.")
        .says("\"ask\" is not a price.");
  }

  @Test
  void packSizeOfTheBookServesWhereNoneStands() {
    handed.take("Body|Colour|Length mm|Count|Pack size", "paddle|ink|75|3|8", "craw|rust|60|1|");
    handed
        .with()
        .take("Body|Colour|Length mm|Count", "paddle|ink|75|2 packs", "craw|rust|60|2 packs")
        .says("assumed: Where no pack size stands, that of the last list was taken.")
        .says("counted 2026-05-01 16: paddle", "D3: \"2 packs\" counts packs");
    handed
        .take("Body|Colour|Length mm|Packs|Loose", "paddle|ink|75|3|1", "paddle|ink|75||2")
        .says("counted 2026-05-01 27: paddle", "Pieces were worked out as packs times pack size")
        .says("that of the last list was taken.")
        .saysNot("that of the last list was taken. (2 rows)");
    handed
        .take("Body|Colour|Length mm|Count", "paddle|ink|75|17")
        .saysNot("that of the last list was taken.");
  }

  @Test
  void packsAndLoosePiecesAddUp() {
    String headers = "Body|Colour|Packs|Loose|Pack size";
    handed
        .take(
            headers,
            "paddle|ink|2|3|8",
            "craw|rust||4|",
            "curl|tea|||",
            "grub|red|0||",
            "worm|jet|1|2|")
        .says("counted 2026-04-01 19: paddle", "counted 2026-04-01 4: craw")
        .says("The pieces are blank: taken as 0.", "counted 2026-04-01 0: grub")
        .says(
            "C6: \"1\" counts packs, and nothing says how many pieces a pack holds. Add a column");
    handed
        .take(headers, "paddle|ink|100|0|1000", "craw|rust|100|1|1000")
        .says("counted 2026-04-01 100000: paddle")
        .says("C3: \"100\" comes to more pieces than any box holds. Check the row.");
    handed.take(headers, "curl|jet|1|0|1001").says("counts packs, and nothing says");
  }

  @Test
  void countIsWhatThereWasLessWhatWasLost() {
    String headers = "Body|Colour|Had|Lost so far";
    handed
        .take(headers, "paddle|ink|8|3", "craw|rust|4|4", "curl|tea|2|3", "grub|red|2|")
        .says("counted 2026-04-01 5: paddle", "counted 2026-04-01 0: craw")
        .says("D4: \"3\" is more than there were. Write the pieces left.")
        .says("counted 2026-04-01 2: grub")
        .says("assumed: The count was worked out as what there was less what was lost. (4 rows)")
        .saysNot("packs times pack size", "curl, tea");
  }

  @Test
  void lackOfALengthIsSaidWhereOthersHaveOne() {
    handed
        .take("Body|Colour|Length|Count", "paddle|ink|75 mm|1", "paddle|rust||1", "paddle|tea|?|1")
        .says("C3: No length: the plastic was taken without one.")
        .says("C4: \"?\" No length: the plastic was taken without one.")
        .saysNot("C2:");
    handed
        .take("Body|Colour|Count", "paddle|ink|1")
        .says("No lengths are told")
        .saysNot("No length:");
  }
}
