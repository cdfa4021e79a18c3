package traytally.intake;

import org.junit.jupiter.api.Test;

/** What a log of trips may say, cell by cell, and what is asked where it cannot be so. */
class TripLogTest {
  private static final String WORDS = "Date|Water|Body|Colour";
  private static final String ROW = "2026-04-20|Low Quay|paddle|ink";

  private final Handed handed = new Handed();

  @Test
  void dateMayBeTodayAndNoLater() {
    handed
        .take(WORDS, "2026-05-01|Low Quay|paddle|ink", "2026-05-02|Low Quay|paddle|ink")
        .says("1 taken, 1 skipped", "A3: \"2026-05-02\" is after today. Write the day fished");
  }

  @Test
  void dashIsNoDate() {
    handed
        .take(WORDS, "-|Low Quay|paddle|ink")
        .says("0 taken, 1 skipped", "A2: \"-\" is not a date. Write it as 2026-06-03.");
    handed.take("Date|Hours", "-|4").says("0 taken, 1 skipped", "A2: \"-\" is not a date.");
  }

  @Test
  void oldestDateTakenIsOf1950() {
    handed
        .take(WORDS, "1950-01-01|Low Quay|paddle|ink", "1949-12-31|Low Quay|paddle|ink")
        .says("1 taken, 1 skipped", "A3: \"1949-12-31\" is too long ago to be true.");
  }

  @Test
  void whatIsMissingIsSaidOnceARow() {
    handed
        .take(
            WORDS,
            "2026-04-20|Low Quay||ink",
            "2026-04-20|Low Quay|paddle|",
            "|Low Quay||",
            ROW,
            ROW)
        .says("2 taken, 3 skipped", "C2: The body style is missing. Write it in this row.")
        .says("D3: The colour is missing.", "A4: The date is missing. Write it in this row.")
        .saysNot("C4:", "D2:");
  }

  @Test
  void moreFishCastsAndRodsThanAStintHasAreSlips() {
    String headers = WORDS + "|Casts|Follows|Takes|Hooked|Landed|Rods";
    handed
        .take(headers, ROW + "|5000|1000|1000|1000|1000|20", ROW + "|0|0|0|0|0|1")
        .says("2 taken", "5000 casts; 1000/1000/1000/1000", "rods 20", "rods 1;");
    handed
        .take(
            headers,
            ROW + "|5001|0|0|0|0|1",
            ROW + "|1|1001|0|0|0|1",
            ROW + "|1|0|1001|0|0|1",
            ROW + "|1|0|1001|1001|0|1",
            ROW + "|1|0|1001|1001|1001|1",
            ROW + "|1|0|0|0|0|21",
            ROW + "|1|0|0|0|0|0")
        .says("0 taken, 7 skipped", "E2: \"5001\" is too many to be true. Write at most 5000.")
        .says("F3: \"1001\" is too many", "G4: \"1001\" is too many", "H5: \"1001\" is too many")
        .says("I6: \"1001\" is too many", "J7: \"21\" is too many to be true. Write at most 20.")
        .says("J8: \"0\" is no rod at all. Write at least 1.");
  }

  @Test
  void fishLandedAreNoMoreThanHookedNorHookedThanTakes() {
    String headers = WORDS + "|Takes|Hooked|Landed";
    handed
        .take(headers, ROW + "|3|1|2", ROW + "|1|2|1", ROW + "|2|2|2")
        .says("1 taken, 2 skipped")
        .says("G2: \"2\" is more than were hooked (1). Check both numbers.")
        .says("F3: \"2\" is more than there were takes (1). Check both numbers.");
  }

  @Test
  void fishNotToldAreAssumedAndSaid() {
    handed
        .take(WORDS + "|Landed", ROW + "|2", ROW + "|0")
        .says("0/2/2/2")
        .says("as many were taken as hooked as were landed.")
        .says("as many were taken as there were hooked fish.")
        .saysNot("hooked fish. (2 rows)");
    handed
        .take(WORDS + "|Hooked", ROW + "|1")
        .says("0/1/1/0", "as many were taken as there were hooked fish.")
        .saysNot("as many were taken as hooked as were landed");
    handed.take(WORDS + "|Takes|Hooked|Landed", ROW + "|3|2|1").says("0/3/2/1").saysNot("taken as");
  }

  @Test
  void numbersUnderFishAreFishLanded() {
    handed
        .take(WORDS + "|Fish", ROW + "|2", ROW + "|")
        .says("Numbers where the fish is named were read as fish landed.", "for ''; ?", "0/2/2/2");
    handed.take(WORDS + "|Fish", ROW + "|2", ROW + "|bass").says("for 'bass'").saysNot("Numbers");
    handed.take(WORDS + "|Fish|Landed", ROW + "|2|1").says("for '2'", "0/1/1/1");
    handed.take(WORDS + "|Fish", ROW + "|").saysNot("Numbers where");
  }

  @Test
  void minutesMayBeTypedInManyWays() {
    handed
        .take(
            WORDS + "|Minutes",
            ROW + "|@01:30",
            ROW + "|=45",
            ROW + "|1440",
            ROW + "|=0",
            ROW + "|=1440.5",
            ROW + "|=-1",
            ROW + "|ages")
        .says("; 90.0 min", "; 45.0 min", "; 1440.0 min", "; 0.0 min", "4 taken, 3 skipped")
        .says("E6: \"1440.5\" is more than a day. Write the minutes of this stint, at most 1440.")
        .says("E7: \"-1\" is less than no time. Write the minutes, such as 90.")
        .says("E8: \"ages\" is not a length of time.");
    new Handed()
        .take(WORDS + "|Hours", ROW + "|=1.5", ROW + "|2")
        .says("; 90.0 min", "; 120.0 min");
  }

  @Test
  void bareTimesAreHoursWhereAllAreFewAndOneIsBroken() {
    handed.take(WORDS + "|Time", ROW + "|=1.5", ROW + "|12").says("; 90.0 min", "read as hours.");
    handed.take(WORDS + "|Time", ROW + "|=1.5", ROW + "|13").says("; 1.5 min", "read as minutes.");
    handed.take(WORDS + "|Time", ROW + "|=1", ROW + "|12").says("; 12.0 min", "read as minutes.");
    handed.take(WORDS + "|Time", ROW + "|", ROW + "|1:30").saysNot("Times without a unit");
    handed.take(WORDS + "|Time (min)", ROW + "|1.5").says("; 1.5 min").saysNot("Times without");
  }

  @Test
  void timesFromAndToMakeMinutes() {
    handed
        .take(
            WORDS + "|Start|Finish",
            ROW + "|09:10|10:40",
            ROW + "|@22:30|@01:00",
            ROW + "|09:10|",
            ROW + "||10:40",
            ROW + "|09:10|noonish")
        .says("; 90.0 min", "; 150.0 min", "4 taken, 1 skipped")
        .says("F6: \"noonish\" does not end a length of time from 09:10. Write both as 09:10;");
    handed.take(WORDS + "|Minutes|Start|Finish", ROW + "|30|09:10|10:40").says("; 30.0 min");
  }

  @Test
  void lengthNearTheKnownOneIsTakenForIt() {
    handed.with("count-date 2026-04-01").take("Body|Colour|Length mm|Count", "paddle|ink|75|3");
    String headers = WORDS + "|Length mm";
    handed
        .with()
        .take(headers, ROW + "|77", ROW + "|73", ROW + "|78", ROW + "|72", ROW + "|75", ROW + "|")
        .says("77 mm was taken for the 75 mm of the box list.")
        .says("73 mm was taken for the 75 mm of the box list.", "4 taken, 2 skipped")
        .says("(paddle, ink, 78 mm) is not in the box list.")
        .says("(paddle, ink, 72 mm) is not in the box list.")
        .saysNot("75 mm was taken", "0 mm was taken");
  }

  @Test
  void whatMayBeAnyOfSeveralIsAskedFor() {
    handed
        .with("count-date 2026-04-01")
        .take(
            "Maker|Body|Colour|Length mm|Count", "Brine|paddle|ink|75|3", "Kelpie|paddle|ink|75|3");
    handed
        .with()
        .take(WORDS + "|Length mm|Lost", ROW + "|75|1", ROW + "||")
        .says("C2: \"paddle\" may be any of paddle, ink, 75 mm (Brine); paddle, ink, 75 mm")
        .says("Write the maker.", "Write the length and the maker.")
        .says(
            "note: list.csv, F2: \"1\" is not taken off your tray, because the row was not taken.")
        .saysNot("F3");
  }

  @Test
  void piecesUsedInARowNotTakenAreSaid() {
    handed
        .take(WORDS + "|Lost|Worn|Casts", ROW + "|||many", ROW + "||1|many", ROW + "|2|1|many")
        .says("F3: \"1\" is not taken off your tray", "E4: \"2\" is not taken off your tray")
        .saysNot("E2", "F2");
  }

  @Test
  void strangersAreUsedUpOnlyIfThePersonSaysSo() {
    handed.with("count-date 2026-04-01").take("Body|Colour|Count", "paddle|motor oil|3");
    String[] log = {
      WORDS,
      "2026-04-20|Low Quay|craw|motor oil",
      "2026-04-20|Low Quay|paddle|motor oli",
      "2026-04-20|Low Quay|paddle|oil"
    };
    handed
        .with()
        .take(log)
        .says("0 taken", "C2: \"craw\" (craw, motor oil) is not in the box list. Otherwise add it")
        .says("D3: \"motor oli\" (paddle, motor oli) is not in the box list. Did you mean")
        .says("D4: \"oil\" (paddle, oil) is not in the box list. Did you mean \"motor oil\"?");
    handed
        .with("once-owned")
        .take(log)
        .says("2 taken, 1 skipped", "were taken as used up. (2 rows)", "D3: \"motor oli\"");
  }

  @Test
  void lostIsAtLeastWhatItsCausesAddUpTo() {
    String headers = WORDS + "|Lost|Snagged|Bitten off|Torn|Cast off";
    handed
        .take(headers, ROW + "|2|1|1||", ROW + "||1|2|1|", ROW + "|1|2|||", ROW + "|3||||1")
        .says("3 taken, 1 skipped", "lost 2 snagged", "lost 4 bitten off", "lost 3 cast off")
        .says("E4: \"1\" is less than the pieces lost by cause (2). Check the numbers.");
  }

  @Test
  void lossesAreToldInWordsToo() {
    String headers = WORDS + "|Lost|Lost how";
    handed
        .take(
            headers,
            ROW + "|1 snag, 2 torn|",
            ROW + "|torn and snag|",
            ROW + "|snag|bitten off",
            ROW + "|0|torn",
            ROW + "|2|gremlins",
            ROW + "|two|torn",
            ROW + "|none|torn",
            ROW + "|1 snag, 1 gremlin|",
            ROW + "|0 torn|",
            ROW + "|2|torn")
        .says("lost 3 torn; worn", "lost 2 torn; worn", "lost 1 bitten off;", "lost 0; worn")
        .says("A cause of loss without a number was taken as one piece lost. (3 rows)")
        .says("F6: \"gremlins\" is no cause known here", "9 taken, 1 skipped")
        .says("E9: \"1 snag, 1 gremlin\" is not a number of pieces lost.");
  }

  @Test
  void logReplacesWhatItSaidBeforeAndKeepsWhatItMayStillMean() {
    String[] log = {
      WORDS + "|Lost",
      "2026-04-20|Low Quay|paddle|ink|1",
      "2026-04-20|Low Quay|craw|rust|",
      "2026-04-21|Low Quay|paddle|ink|"
    };
    handed.take(log).says("entry: 3 stints added");
    handed.take(log).says("entry: nothing");
    log[1] = "2026-04-20|Low Quay|paddle|ink|2";
    handed.take(log).says("entry: 1 edited", "taken back");
    log[3] = "2026-04-21|Low Quay|paddle|ink|some";
    handed.take(log).says("entry: nothing");
    handed.take(log[0], log[1], log[2]).says("entry: 1 deleted");
    handed.take(log[0], log[1], "2026-04-22|Low Quay|craw|rust|").says("1 stint added, 1 deleted");
    handed
        .take(Handed.sheet("other.csv", "", log[0], "2026-04-19|Low Quay|paddle|ink|"))
        .says("entry: 1 stint added");
    handed.take(log[0], log[1], "soon|Low Quay|craw|rust|").says("entry: nothing");
  }

  @Test
  void daysOfSpreadsheetsMayStandAsNumbers() {
    handed
        .take(
            WORDS,
            "=18264|Low Quay|paddle|ink",
            "=18263|Low Quay|paddle|ink",
            "=46132|Low Quay|paddle|ink",
            "=73051|Low Quay|paddle|ink")
        .says("1950-01-01 Low Quay", "2026-04-20 Low Quay", "Day numbers were read as dates.")
        .says("A3: \"18263\" is not a date", "A5: \"73051\" is not a date");
    handed.take(WORDS, "=73050|Low Quay|paddle|ink").says("A2: \"73050\" is after today.");
  }

  @Test
  void datesThatOnlyFitTheOtherOrderAreAsked() {
    handed
        .with("date-order day")
        .take(WORDS, "3/4/2026|Low Quay|paddle|ink", "4/13/2026|Low Quay|paddle|ink")
        .says(
            "2026-04-03 Low Quay",
            "A3: \"4/13/2026\" cannot be read in the order of day and month");
    new Handed()
        .take(WORDS, "3/4/2026|Low Quay|paddle|ink", "13/4/2026|Low Quay|paddle|ink")
        .says("2026-04-03 Low Quay", "Dates were read day first, as other dates of the column");
    new Handed()
        .take(WORDS, "4/3/2026|Low Quay|paddle|ink", "4/13/2026|Low Quay|paddle|ink")
        .says("2026-04-03 Low Quay", "Dates were read month first, as other dates of the column");
    handed.take(WORDS, "13/4/2026|Low Quay|paddle|ink").saysNot("Dates were read");
    handed.take(WORDS, "3 April|Low Quay|paddle|ink").says("\"3 April\" has no year. Write the");
  }

  @Test
  void waterLooksInOtherWordsAndUnknownOnesAreSaid() {
    handed
        .take(WORDS + "|Clarity", ROW + "|Murky", ROW + "|lovely")
        .says("\"Murky\" read as cloudy.", "E3: \"lovely\" is no clarity known here. Write clear,");
  }

  @Test
  void yearMayStandInTheTitleTheTabOrTheNameOfTheFile() {
    String row = "3 April|Low Quay|paddle|ink";
    GivenSheet tab = Handed.sheet("log-2022.xlsx", "Log 2023", WORDS, row);
    handed.take(tab).says("2023-04-03 Low Quay", "Dates without a year were read as of 2023.");
    GivenSheet titled = Handed.sheet("log-2022.xlsx", "Log 2023", "Season 2024", WORDS, row);
    new Handed().take(titled).says("2024-04-03 Low Quay");
    GivenSheet two = Handed.sheet("log-2022.xlsx", "2023 and 2024", WORDS, row);
    new Handed().take(two).says("2022-04-03 Low Quay");
    GivenSheet none = Handed.sheet("log-20221.xlsx", "", WORDS, row);
    new Handed().take(none).says("\"3 April\" has no year");
  }

  @Test
  void severalPlasticsInOneCellShareTheTripsMinutes() {
    String headers = "Date|Water|Lures used|Mins|Takes|Landed|Lost";
    String cell = "Paddle black 75mm 2 takes; craw red 60mm";
    new Handed()
        .take(headers, "2026-04-20|Low Quay|" + cell + "|60|2||")
        .says("Rows that name several plastics were split, one stint a plastic.")
        .says("The minutes of such a row were shared out evenly.")
        .says("paddle, black, 75 mm; for ''; ?; 30.0 min; ? casts; 0/2/0/0", "craw, red, 60 mm")
        .says("0/0/0/0", "2 rows read, 2 taken");
    new Handed().take(headers, "2026-04-20|Low Quay|" + cell + "|@01:30|2||").says("; 45.0 min");
    new Handed()
        .take(headers, "2026-04-20|Low Quay|" + cell + "|@01:30|2|1|0")
        .says("F2: \"1\" stands for several plastics and may be any one's.", "0 taken");
    new Handed()
        .take(
            headers,
            "2026-04-20|Low Quay|Paddle black 75mm 40 min, lost one; craw red 60mm 20 min|70||||1")
        .says("; 40.0 min", "; 20.0 min", "lost 1", "lost 0")
        .saysNot("shared out evenly");
    new Handed()
        .take(headers, "2026-04-20|Low Quay|Paddle black 75mm 40 min; craw red 60mm|70||||")
        .says("; 40.0 min", "; 35.0 min");
  }

  @Test
  void logOfAnUncountedBoxMeansThePlasticInItsFullestWords() {
    String[] rows = {"|paddle|ink|", "Brine|paddle|ink|", "|paddle|ink|75", "Brine|paddle|ink|75"};
    for (int full = 1; full < rows.length; full++) {
      new Handed()
          .take(
              "Date|Water|Maker|Body|Colour|Length mm",
              "2026-04-20|Low Quay|" + rows[0],
              "2026-04-20|Low Quay|" + rows[full])
          .says("2 taken, 0 skipped")
          .saysNot("paddle, ink;");
    }
  }
}
