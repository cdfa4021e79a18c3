package traytally.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import traytally.sheet.Address;
import traytally.sheet.CellRange;
import traytally.sheet.Row;

/** Where a list stands in a sheet, and what its typed cells, headings and odd rows say. */
class SheetsTest {
  private static final String HEADERS = "Body|Colour|Length mm|Count";

  private final Handed handed = new Handed();

  @Test
  void dittoMarksAreTheRowAbove() {
    handed
        .take(
            HEADERS + "|Note",
            "paddle|ink|75|3|\"",
            "\"|rust|do|2|ditto",
            "craw|tea|60|1|",
            "ditto|jet|as above|1|",
            "Same|red|''|2|")
        .says("counted 2026-05-01 2: paddle, rust, 75 mm", "counted 2026-05-01 1: craw, jet, 60 mm")
        .says("counted 2026-05-01 2: craw, red, 60 mm", "note 'ditto'", "note '\"'")
        .says("A ditto mark was taken as the body style of the row above. (3 rows)")
        .says("A ditto mark was taken as the length of the row above. (3 rows)")
        .saysNot("taken as the note", "taken as the colour");
  }

  @Test
  void headingsNameTheTrayOfTheRowsBelow() {
    handed
        .take("Body|Colour|Count", "Tray 1:", "paddle|ink|3", "Box B", "craw|rust|2", "tray|tea|1")
        .says("described paddle, ink: tray 'Tray 1'", "described craw, rust: tray 'Box B'")
        .says("counted 2026-05-01 1: tray, tea");
    handed
        .take("Top drawer:", "Body|Colour|Count", "curl|ink|3")
        .says("curl, ink: tray 'Top drawer'");
  }

  @Test
  void totalsAreLeftOut() {
    handed
        .take(
            "Body|Colour|Count",
            "paddle|ink|3",
            "Total||3",
            "|Sub-total:|3",
            "In all||3",
            "sum|ink|2",
            "|totally|1")
        .says("A3: \"Total\" begins a row of totals, which was left out.")
        .says("B4: \"Sub-total:\" begins a row of totals", "A5: \"In all\" begins a row of totals")
        .says("counted 2026-05-01 2: sum, ink", "counted 2026-05-01 1: sum, totally");
  }

  @Test
  void remarksAreLeftOutAndSaid() {
    handed
        .take("Body|Colour|Count", "paddle|ink|3", "", "get more", "craw|rust|2", "a few are torn")
        .says("A4: \"get more\" was read as a remark and left out.")
        .says("A6: \"a few are torn\" was read as a remark and left out.", "2 rows read");
    handed
        .take("Body|Colour|Count", "paddle|ink|3", "get more craws")
        .says("B3: The colour is missing.");
  }

  @Test
  void shapeOnALineOfItsOwnHeadsTheRowsBelow() {
    handed
        .take("Body|Colour|Count", "paddle|ink|3", "craw", "|rust|2", "|tea|1", "curl|tea|1")
        .says("counted 2026-05-01 2: craw, rust", "counted 2026-05-01 1: craw, tea")
        .says("Headings between the rows tell the body style.");
  }

  @Test
  void blanksAreTheRowAboveWhereThatIsAHabit() {
    String headers = "Maker|Body|Colour|Length mm|Tray|Count";
    String[] rows = {
      headers, "Brine|paddle|ink|75|A|3", "||rust|||2", "Kelpie|craw|tea|60|B|1", "|craw|jet|||1"
    };
    handed
        .take(rows)
        .says("2: paddle, rust, 75 mm (Brine)", "1: craw, jet\n", "rust, 75 mm (Brine): tray 'A'")
        .says("A blank body style was taken from the row above.")
        .saysNot("(2 rows)");
    new Handed()
        .take(rows[0], rows[1], rows[2], rows[3], rows[4], "|craw|red|||1")
        .says("B3: The body style is missing.");
    new Handed().take(headers, "||rust|||2", rows[1]).says("B2: The body style is missing.");
    new Handed()
        .take(headers, rows[1], "Kelpie||rust|90|C|2")
        .says("2: paddle, rust, 90 mm (Kelpie)", "rust, 90 mm (Kelpie): tray 'C'");
  }

  @Test
  void hiddenRowsAreReadAndSaid() {
    handed
        .take("Body|Colour|Count", "~paddle|ink|3", "craw|rust|2")
        .says("assumed: A hidden row was read like the others.", "2 taken");
    handed
        .take("Body|Colour|Count", "~paddle|ink|3", "~craw|rust|2")
        .says("assumed: 2 hidden rows were read like the others.");
    handed.take("Body|Colour|Count", "paddle|ink|3").saysNot("hidden");
  }

  @Test
  void columnsWithoutAHeaderAreSaid() {
    handed
        .take("Body|Colour||Count", "paddle|ink|x|3|y", "craw|rust|z|2")
        .says("assumed: Column C has no header and was passed over.")
        .says("assumed: Column E has no header and was passed over.")
        .saysNot("Column A", "Column B", "Column D", "(2 rows)");
  }

  @Test
  void headerThatStandsAgainIsPassedOver() {
    handed
        .take("Body|Colour|Count", "paddle|ink|3", "BODY|Colour|Count", "craw|rust|2")
        .says("assumed: A header row that stands again was passed over.", "2 rows read, 2 taken");
    handed.take("Body|Colour|Count", "body|colour|2").says("1 rows read, 1 taken");
  }

  @Test
  void headersStandWithinTheFirstThirtyRows() {
    String[] lines = Collections.nCopies(32, "hello").toArray(new String[0]);
    lines[29] = "Body|Colour|Count";
    lines[30] = "paddle|ink|3";
    lines[31] = "craw|rust|3";
    handed.take(lines).says("2 taken, 0 skipped");
    lines[29] = "hello";
    lines[30] = "Body|Colour|Count";
    assertTrue(handed.refusal(Handed.sheet("list.csv", "", lines)).contains("no list was found"));
  }

  @Test
  void typedCellsOfABoxAreReadAsShown() {
    handed
        .take(
            "Body|Colour|Length|Count",
            "paddle|ink|=75;0\" mm\"|=3",
            "paddle|rust|=7.5;0.0\" cm\"|=2.5",
            "paddle|tea|=3;0\" in\"|=4",
            "paddle|jet|=4;0\\\"|@2026-03-12",
            "paddle|red|#N/A|1",
            "paddle|lime|75 mm|@02:08",
            "paddle|plum|501 mm|1",
            "paddle|gold|500 mm|1",
            "paddle|grey|long|1",
            "paddle|pink|-|#DIV/0!",
            "paddle|mint|0 mm|1",
            "paddle|rose|1 mm|100000",
            "paddle|navy|1 mm|100001")
        .says("3: paddle, ink, 75 mm", "4: paddle, tea, 76 mm", "1: paddle, gold, 500 mm")
        .says(
            "D3: \"2.5\" is not a whole count.",
            "D5: \"2026-03-12\" is a date or a time, not a count")
        .says(
            "C6: \"#N/A\" is the error of a formula.",
            "D7: \"2:08\" is a date or a time, not a count")
        .says(
            "C8: \"501 mm\" would be 501 mm, which is no length", "C10: \"long\" is not a length.")
        .says("D11: \"#DIV/0!\" is the error of a formula.", "C12: \"0 mm\" would be 0 mm")
        .says("100000: paddle, rose, 1 mm", "D14: \"100001\" is more pieces than any box holds.");
  }

  @Test
  void bareLengthsFollowTheirHeaderOrOneAnother() {
    handed.take("Body|Colour|Length cm|Count", "paddle|ink|7.5|3").says("3: paddle, ink, 75 mm");
    handed
        .take("Body|Colour|Length|Count", "craw|ink|3|3", "craw|rust|25|2", "craw|tea|12|1")
        .says("3: craw, ink, 76 mm", "2: craw, rust, 25 mm", "1: craw, tea, 305 mm")
        .says("read as inches up to 12 and as millimetres from 25 on.");
    handed.with("length-unit in").take("Body|Colour|Length|Count", "grub|ink|13|3").says("330 mm");
    handed.with("length-unit mm").take("Body|Colour|Length|Count", "grub|tea|13|3").says("13 mm");
    assertEquals(
        "list.csv, column C: lengths such as 13 may be millimetres, centimetres or inches. Say"
            + " which with --length-unit mm, --length-unit cm or --length-unit in.",
        handed
            .with()
            .refusal(Handed.sheet("list.csv", "", "Body|Colour|Length|Count", "worm|ink|13|3")));
  }

  private static Row row(String line) {
    return Handed.sheet("list.csv", "", line).rows().get(0);
  }

  /** Columns counted in a square, each with what its header tells, and the colours' column. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = ';',
      quoteCharacter = '~',
      value = {
        "Colour|3\"|4\"|Total;              {1=LENGTH, 2=LENGTH} colour 0",
        "Colour|3\"|4\"|100;                {1=LENGTH, 2=LENGTH, 3=LENGTH} colour 0",
        "Colour|75|90;                      {1=LENGTH, 2=LENGTH} colour 0",
        "|75|90|Total;                      {1=LENGTH, 2=LENGTH} colour 0",
        "Colour|75|500;                     {1=LENGTH, 2=LENGTH} colour 0",
        "Colour|0|75|90;                    {2=LENGTH, 3=LENGTH} colour 0",
        "Note|3\"|4\"|Colour;               {1=LENGTH, 2=LENGTH} colour 3",
        "3\"|4\"|Colour;                    {0=LENGTH, 1=LENGTH} colour 2",
        "Maker|Which|3\"|4\";               {2=LENGTH, 3=LENGTH} colour 1",
        "Colour|paddle tail|Curl 75|Total;  {1=BODY, 2=BODY} colour 0",
        "|paddle tail|curl tail|Notes;      {1=BODY, 2=BODY} colour 0",
        "Shape|black|motor oil;             {1=COLOUR, 2=COLOUR} colour none",
        "Colour|90|75;                      none",
        "Colour|75|75;                      none",
        "Colour|15|20;                      none",
        "Colour|75;                         none",
        "Colour|75|501;                     none",
        "Colour|3\"|75|90;                  none",
        "|75|90|Shop;                       none",
        "Tally|75|90;                       none",
        "Body|3\"|4\";                      none",
        "3\"|4\"|Note;                      none",
        "Colour|paddle tail|Total;          none",
        "Colour|paddle tail|curl tail|Shop; none",
        "Colour|paddle tail|lure;           none",
        "Shape|black;                       none",
        "Shape|black|white|Flake;           {1=COLOUR, 2=COLOUR} colour none",
        "Shape|black|glitter;               none",
        "Shape|black|white|Colour;          none",
        "Shape|black|odd one;               none",
        "Which|black|white;                 none"
      })
  void squaresAreToldByTheirHeaders(String header, String square) {
    Optional<ColumnGuess> guess = square(row(header), Optional.empty());
    String read =
        guess
            .map(
                g ->
                    new TreeMap<>(g.across())
                        + " colour "
                        + Optional.ofNullable(g.columns().get(Field.COLOUR))
                            .map(String::valueOf)
                            .orElse("none"))
            .orElse("none");
    assertEquals(square, read);
    guess.ifPresent(g -> assertEquals(2 * (g.columns().size() + g.across().size()), g.score()));
  }

  private static Optional<ColumnGuess> square(Row row, Optional<ListKind> wanted) {
    Under nothing = new Under(Handed.sheet("list.csv", "", "x"), 1);
    return new Square(row, wanted, nothing).guess();
  }

  @Test
  void squareIsAlwaysABoxAndItsCountsSayWhy() {
    Row row = row("Colour|3\"|4\"|Count");
    assertTrue(square(row, Optional.of(ListKind.TRIPS)).isEmpty());
    ColumnGuess guess = square(row, Optional.of(ListKind.BOX)).orElseThrow();
    assertEquals(Map.of(Field.COLOUR, 0), guess.columns());
    assertEquals("counts under \"3\"\"", guess.why().get(1));
    assertEquals(
        "beside the square of counts",
        square(row("Which|3\"|4\""), Optional.empty()).orElseThrow().why().get(0));
    assertTrue(Square.mayBe(row("x|3\"|4\"")));
    assertFalse(Square.mayBe(row("x|3\"|75")));
  }

  private static String columns(String... lines) {
    return new ContentGuess(Handed.sheet("list.csv", "", lines).rows(), Optional.empty())
        .guess()
        .map(g -> new TreeMap<>(g.columns().columns()) + " of " + g.width())
        .orElse("none");
  }

  @Test
  void columnsWithoutHeadersAreToldByWhatTheyHold() {
    assertEquals(
        "{BODY=0, COLOUR=1, LENGTH=2, PIECES=3} of 4",
        columns("paddle|black|75 mm|3", "curl|white|60 mm|2", "craw|red|60 mm|1"));
    assertEquals("none", columns("paddle|black|75 mm|3", "curl|white|60 mm|2"));
    assertEquals(
        "{BODY=1, COLOUR=0, LENGTH=2, PIECES=3, NOTE=4} of 5",
        columns("black|paddle|75|3|old", "white|curl|60|2|new", "red|craw|25|1|torn"));
    assertEquals(
        "{BODY=0, COLOUR=1, LENGTH=3, PIECES=2} of 4",
        columns("paddle|black|3|75", "curl|white|2|60", "craw|red|1|25"));
    assertEquals("none", columns("paddle|black|3|5", "curl|white|2|6", "craw|red|1|2"));
    assertEquals("none", columns("paddle|black|30|75", "curl|white|25|60", "craw|red|40|25"));
    assertEquals("none", columns("Ann|here|3", "Ben|there|2", "Cyd|nowhere|1"));
  }

  @Test
  void someRowsMayHoldSomethingElse() {
    String[] four = {"paddle|black|3", "curl|white|2", "craw|red|1", "worm|blue|a lot"};
    assertEquals("none", columns(four));
    assertEquals(
        "{BODY=0, COLOUR=1, PIECES=2} of 3",
        columns(four[0], four[1], four[2], four[3], "grub|green|4"));
    assertEquals(
        "{BODY=0, COLOUR=1, PIECES=2} of 3",
        columns("paddle|black|3", "curl|white|2", "odd|odder|1", "some|thing|2", "x|y|1"));
    assertEquals(
        "none", columns("paddle|black|3", "curl|odd|2", "odd|odder|1", "some|thing|2", "x|y|1"));
  }

  /** Shops over the last columns, with the first row below, and the columns that are shops. */
  @ParameterizedTest(name = "{0} over {1}: {2}")
  @CsvSource(
      delimiter = ';',
      quoteCharacter = '~',
      value = {
        "Body|Pack of|Wren|Holm;       paddle|8|4.95|;      [2, 3]",
        "Colour|Pack of|Wren|Holm|Lee; ink|8|=4|£5.20|12;   [2, 3, 4]",
        "Body|Pack of|Wren|Holm;       paddle|8|4.95|1234;  none",
        "Body|Pack of|Wren|Holm;       paddle|8|4.95|cheap; none",
        "Body|Pack of|Wren|12;         paddle|8|4.95|4.95;  none",
        "Body|Pack of|Wren;            paddle|8|4.95;       none",
        "Body|Pack of|Price|Holm|Lee;  paddle|8|4.95|1|1;   none",
        "Body|Pack of|Shop|Holm|Lee;   paddle|8|1.00|1|1;   none",
        "Pack of|Wren|Holm;            8|1.50|1.50;         none",
        "Body|Wren|Holm;               paddle|1.50|1.50;    none"
      })
  void shopsMayStandOverTheirPrices(String header, String below, String shops) {
    Optional<ColumnGuess> guess =
        Square.shopsAcross(row(header).cells().stream().map(ColumnHeader::of).toList(), row(below));
    assertEquals(shops, guess.map(g -> new TreeMap<>(g.across()).keySet() + "").orElse("none"));
    guess.ifPresent(g -> assertEquals(2 * (2 + g.across().size()), g.score()));
  }

  @Test
  void headerIsMostlyOfWords() {
    handed.take("Colour|Count|-1|-2", "ink|3").says("\"Count\" pieces", "1 rows read");
    GivenSheet numbers = Handed.sheet("list.csv", "", "Colour|Count|-1|-2|-3", "ink|3");
    assertTrue(handed.refusal(numbers).contains("no list was found"));
  }

  @Test
  void mergedCellsHoldWhatStandsInTheirFirst() {
    List<CellRange> merges =
        List.of(
            new CellRange(new Address(3, 0), new Address(5, 0)),
            new CellRange(new Address(3, 1), new Address(3, 3)));
    GivenSheet plain = Handed.sheet("list.csv", "", "a|b", "c|d", "e|f", "|g", "");
    GivenSheet sheet = new GivenSheet("list.csv", "", false, plain.rows(), merges);
    assertEquals("e", sheet.mergedAbove(5, 0).orElseThrow().shown());
    assertEquals("f", sheet.merged(3, 2).orElseThrow().shown());
    assertTrue(sheet.mergedAbove(3, 2).isEmpty(), "it runs across");
    assertTrue(sheet.mergedAbove(4, 1).isEmpty());
    assertTrue(sheet.mergedAbove(6, 0).isEmpty());
    assertTrue(sheet.merged(2, 0).isEmpty());
  }

  @Test
  void shapeOfATitleIsThatOfRowsThatTellNone() {
    String[] list = {"Paddle tail " + "x".repeat(27), "Colour|Length mm|Count", "ink|75|3"};
    handed.take(list).says("3: " + list[0] + ", ink, 75 mm", "The body style was taken from the");
    list[0] = "Paddle tail " + "x".repeat(28);
    handed.take(list).says("row 3: The body style is missing.");
  }

  @Test
  void noteOfLinesMayHaveARemarkInFour() {
    String[] note = {"Paddle", "ink 6", "rust 4", "tea 2", "seen at dawn by the old harbour wall"};
    handed
        .take(note)
        .says("6: Paddle, ink", "A5: \"seen at dawn by the old harbour wall\" was read");
    GivenSheet two =
        Handed.sheet("list.csv", "", note[0], note[1], note[2], note[3], note[4], note[4]);
    assertTrue(handed.refusal(two).contains("no list was found"));
    GivenSheet few = Handed.sheet("list.csv", "", note[0], note[1], note[2]);
    assertTrue(handed.refusal(few).contains("no list was found"));
  }

  /** Texts that tell a plastic in one breath, and the parts: body, colour, length, count. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = ';',
      quoteCharacter = '~',
      value = {
        "Paddle 75mm motor oil x6;      Paddle / motor oil / 75mm / 6",
        "6 x paddle 75 mm motor oil;    paddle / motor oil / 75 mm / 6",
        "motor oil 3\" paddle (6);      paddle / motor oil / 3\" / 6",
        "motor oil paddle;              paddle / motor oil /  / ",
        "paddle motor oil;              paddle / motor oil /  / ",
        "paddle tail, motor oil - 12;   paddle tail / motor oil /  / 12",
        "motor oil, paddle tail;        paddle tail / motor oil /  / ",
        "paddle 75 motor oil;           paddle / motor oil / 75 mm / ",
        "paddle 25 motor oil;           paddle / 25 motor oil /  / ",
        "paddle tail;                    /  /  / ",
        "motor oil;                      /  /  / ",
        "paddle 75 mm craw 60 mm ink;    /  /  / ",
        "old 75 mm odd;                 old / odd / 75 mm / ",
        "black 75 mm odd;               odd / black / 75 mm / ",
        "paddle black curl;              /  /  / "
      })
  void plasticsInOneBreathComeApart(String text, String parts) {
    Anatomy read = Anatomy.of(text);
    assertEquals(
        parts.strip(),
        String.join(" / ", read.body(), read.colour(), read.length(), read.quantity()).strip());
  }
}
