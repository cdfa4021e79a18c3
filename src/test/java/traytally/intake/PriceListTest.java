package traytally.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** What lists of prices and of coming trips may say. */
class PriceListTest {
  private static final String HEADERS = "Shop|Body|Colour|Pack of|Price";

  private final Handed handed = new Handed();

  @Test
  void whatIsMissingFromAPriceIsSaid() {
    handed
        .take(
            HEADERS,
            "Wren|paddle|ink||4.95",
            "Wren|paddle|rust|0|4.95",
            "Wren|paddle|jet|8|",
            "Wren|paddle|tea|8|0.004",
            "Wren|paddle|red|8|=0.005",
            "Wren||red|8|1")
        .says("D2: The pack size is missing. Write how many pieces a pack holds.")
        .says("D3: \"0\" is no pack size. Write how many pieces a pack holds.")
        .says("E4: The price is missing. Write the price of one pack.")
        .says("E5: \"0.004\" is no price. Write the price of one pack, above 0.")
        .says("B7: The body style is missing.", "1 taken, 5 skipped");
  }

  @Test
  void pricesBelowNothingOrBeyondReasonAreRefused() {
    handed
        .take(
            HEADERS,
            "Wren|paddle|ink|8|-4",
            "Wren|paddle|ink|8|100001",
            "Wren|paddle|ink|8|@2026-04-05")
        .says("E2: \"-4\" is below zero.", "E3: \"100001\" is more than any pack costs.")
        .says("E4: \"2026-04-05\" is a date or a time, not a price. Write a number such as 4.95.");
    handed.take(HEADERS, "Wren|paddle|ink|8|100000").says("packPrice=100000.00 EUR");
  }

  @Test
  void currencyIsThatOfTheSumTheRowOrTheColumn() {
    String headers = "Shop|Body|Colour|Pack of|Price|Currency";
    handed
        .take(headers, "Wren|paddle|ink|8|4.95|GBP")
        .says("packPrice=4.95 GBP")
        .saysNot("assumed");
    handed.take(headers, "Wren|paddle|ink|8|£5.95|").says("packPrice=5.95 GBP");
    handed
        .take("Shop|Body|Colour|Pack of|Price (£)", "Wren|paddle|ink|8|6.95")
        .says("packPrice=6.95 GBP");
    handed.take(HEADERS, "Wren|paddle|ink|8|=7.95;[$£-809]0.00").says("packPrice=7.95 GBP");
    handed
        .take(headers, "Wren|paddle|ink|8|4.95|shells")
        .says("F2: \"shells\" is no currency known here. Write its code, such as EUR.");
    handed
        .take(HEADERS, "Wren|paddle|ink|8|£4.95", "Wren|paddle|jet|8|3.95")
        .says("packPrice=3.95 GBP", "Prices without a currency were read as GBP, like the others.");
    String[] both = {HEADERS, "Wren|craw|tea|8|£4", "Holm|craw|tea|8|€4", "Wren|craw|jet|8|3"};
    handed
        .take(both[0], both[1], both[2], both[3])
        .says("packPrice=4.00 GBP", "packPrice=4.00 EUR", "packPrice=3.00 GBP")
        .says("Prices without a currency were read in that of their shop's others.");
    assertEquals(
        "list.csv: some prices are in EUR and GBP, and others say no currency. Write it beside each,"
            + " or in a column Currency.",
        handed.refusal(
            Handed.sheet("list.csv", "", HEADERS, both[1], both[2], "Low|craw|jet|8|3")));
  }

  @Test
  void ofTwoPricesOfOnePackTheLastCountsAndReplacesTheOld() {
    handed
        .take(HEADERS, "Wren|paddle|ink|8|4.95", "Wren|paddle|ink|8|5.95", "Wren|paddle|ink|6|3.95")
        .says("E3: \"5.95\" differs from a row further up for the same pack; this one counts.")
        .says("list.csv: 2 prices noted", "packSize=8, packPrice=5.95")
        .says("packSize=6, packPrice=3.95")
        .saysNot("packPrice=4.95");
    handed
        .take(HEADERS, "Wren|paddle|ink|8|5.95", "Wren|paddle|ink|8|5.95")
        .says("entry: nothing")
        .saysNot("differs");
    handed
        .take(HEADERS, "Wren|paddle|ink|8|4.50", "Holm|paddle|ink|8|4.20")
        .says("list.csv: 2 prices noted", "- Offered[", "packPrice=5.95 EUR, inStock")
        .saysNot("packPrice=3.95");
  }

  @Test
  void termsOfAShopAreThoseStatedFirst() {
    String headers = HEADERS + "|Postage|Free over|Delivery days|In stock";
    String row = "Wren|paddle|ink|8|4.95|";
    handed
        .take(headers, row + "|||7", "Wren|paddle|jet|8|4.95|3.20|30|365|no")
        .says("Wren, postage=Optional[3.20 EUR], freePostageOver=Optional[30.00 EUR]")
        .says("deliveryDays=OptionalInt[365]", "inStock=true", "inStock=false")
        .says("assumed: a number read as in stock.")
        .saysNot("several ways");
    handed.take(headers, row + "3.20|30|365|yes").says("entry: nothing").saysNot("a number read");
    handed
        .take(headers, row + "3.50|||yes")
        .says("postage=Optional[3.50 EUR], freePostageOver=Optional[30.00 EUR]", "OptionalInt[365]")
        .says("- Traded[");
    handed.take(headers, row + "||366|yes").says("entry: nothing");
    String[] others = {"4.00|30|365", "3.50|40|365", "3.50|30|5"};
    for (String other : others) {
      handed
          .take(headers, row + "3.50|30|365|yes", "Wren|paddle|jet|8|4.95|" + other + "|no")
          .says("assumed: Wren states its terms in several ways: the first counts.")
          .says("entry: nothing");
    }
  }

  @Test
  void termsAreTakenThoughThePriceIsNot() {
    handed
        .take(HEADERS + "|Postage", "Wren|paddle|ink|8|ask|3.20")
        .says("+ Traded[shop=Shop[name=Wren, postage=Optional[3.20 EUR]", "0 taken, 1 skipped");
  }

  @Test
  void priceOfWhatMayBeSeveralIsTakenForNone() {
    handed.take("Maker|Body|Colour|Count", "Brine|paddle|motor oil|1", "Kelpie|paddle|motor oil|1");
    handed
        .take(HEADERS, "Wren|paddle|motor oil|8|4.95", "Wren|paddle|motor oli|8|4.95")
        .says(
            "B2: \"paddle\" may be any of", "Its price was taken for none of them: write the maker")
        .says("C3: \"motor oli\" (paddle, motor oli) is not in the box list; its price was taken.")
        .says("plastic=paddle, motor oil, packSize");
    handed
        .take("Shop|Maker|Body|Colour|Pack of|Price", "Wren|Brine|paddle|motor oil|8|4.95")
        .saysNot("note:");
    handed.take("Body|Colour|Length mm|Count", "craw|rust|75|1");
    handed
        .take("Shop|Body|Colour|Inches|Pack of|Price", "Wren|craw|rust|3|8|4.95")
        .says("plastic=craw, rust, 75 mm")
        .saysNot("note:");
  }

  private static final String PLAN = "Date|Hours|Water|Rods";

  @Test
  void comingTripsLieWithinFiveYears() {
    handed
        .take(
            PLAN,
            "2026-05-01|4|Low Quay|",
            "2031-05-01|4|Low Quay|",
            "2031-05-02|4|Low Quay|",
            "2026-04-30|4|Low Quay|")
        .says("list.csv: 2 trips planned", "A4: \"2031-05-02\" is too far ahead to be true.")
        .says("A5: \"2026-04-30\" is in the past. Write a day to come, or put it in the log.");
  }

  @Test
  void hoursAndRodsAreWhatATripCanHave() {
    handed
        .take(
            PLAN,
            "2026-06-01|=240|Low Quay|20",
            "2026-06-02|=240.5|Low Quay|1",
            "2026-06-03|=-1|Low Quay|1",
            "2026-06-04|=0|Low Quay|1",
            "2026-06-05||Low Quay|1",
            "2026-06-06|2|Low Quay|0",
            "2026-06-07|2|Low Quay|21",
            "2026-06-08|1:30|Low Quay|")
        .says("B3: \"240.5\" is no number of hours for a trip. Write up to 240.")
        .says("B4: \"-1\" is no number of hours", "B5: \"0\" is no time at all.")
        .says("B6: The hours are missing. Write how long you will fish.")
        .says("D7: \"0\" is no rod at all.", "D8: \"21\" is too many to be true. Write at most 20.")
        .says("hours=240.0, rods=20", "hours=1.5, rods=1", "2 taken, 6 skipped")
        .saysNot("B3: The hours");
  }

  @Test
  void hoursMayBeTheTimesFromAndTo() {
    handed
        .take("Date|From|To|Clarity", "2026-06-01|09:00|11:30|murky", "2026-06-02|09:00||")
        .says("hours=2.5, rods=1", "row 3: The hours are missing.");
  }

  @Test
  void planReplacesWhatItSaidBefore() {
    String[] plan = {PLAN, "2026-06-01|4|Low Quay|", "2026-06-02|5|Low Quay|"};
    handed.take(plan).says("list.csv: 2 trips planned");
    handed.take(plan).says("entry: nothing");
    GivenSheet other = Handed.sheet("other.csv", "", PLAN, "2026-07-01|4|Low Quay|");
    handed.take(other).says("other.csv: 1 trip planned").saysNot("- Planned[");
    plan[2] = "2026-06-02|6|Low Quay|";
    handed.take(plan).says("list.csv: 1 trip planned", "- Planned[").saysNot("2026-06-01,");
    plan[2] = "2026-06-02|some|Low Quay|";
    handed.take(plan).says("entry: nothing");
    plan[2] = "soon|6|Low Quay|";
    handed.take(plan).says("entry: nothing");
    handed.take(PLAN, "2026-06-01|4|Low Quay|").says("- Planned[", "entry: details of a list");
  }

  @Test
  void tripPlannedInTimeMayBePastWhenTheListComesAgain() {
    String[] plan = {PLAN, "2026-04-15|4|Low Quay|"};
    handed.on("2026-04-01").take(plan).says("list.csv: 1 trip planned");
    handed.on("2026-05-01").take(plan).says("1 taken, 0 skipped", "entry: nothing");
    handed.take(PLAN, "2026-04-15|5|Low Quay|").says("A2: \"2026-04-15\" is in the past.");
  }
}
