package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** Plans and prices that make no sense: a sentence each, never a silent guess. */
class OddPricesTest {
  private static final String PRICES =
      "Shop,Body style,Colour,Length (mm),Pack size,Pack price,Currency,In stock,Postage\n";

  @TempDir private Path folder;

  @BeforeEach
  void countABox() throws IOException {
    bring("box.csv", "Body style,Colour,Length (mm),Pieces,Kept\npaddle,ink,75,0,yes\n");
    bring(
        "trips.csv",
        """
        Date,Water,Body style,Colour,Length (mm),Minutes,Takes,Hooked,Landed,Lost
        2026-04-10,Gull Rocks,paddle,ink,75,120,4,2,1,3
        """);
  }

  private Ran bring(String name, String text) throws IOException {
    return Ran.in(folder, "import", Files.writeString(folder.resolve(name), text).toString());
  }

  private String list(String... more) {
    String[] args = new String[more.length + 1];
    args[0] = "restock";
    System.arraycopy(more, 0, args, 1, more.length);
    Ran ran = Ran.in(folder, args);
    assertEquals(0, ran.code(), ran.err());
    return ran.out().replaceAll("\\s+", " ");
  }

  @Test
  void aTripInThePastIsNoPlan() throws IOException {
    Ran ran = bring("plan.csv", "Date,Water,Hours\n2026-03-01,Gull Rocks,4\n");
    assertTrue(ran.out().contains("\"2026-03-01\" is in the past"), ran.out());
    assertTrue(list().contains("no trip planned"), list());
  }

  @Test
  void ofAListInTwoCurrenciesEachPriceKeepsItsOwn() throws IOException {
    Ran ran =
        bring(
            "prices.csv",
            PRICES + "Quay,paddle,ink,75,8,5.20,EUR,yes,2\nPier,paddle,ink,75,8,1.10,GBP,yes,2\n");
    assertEquals(0, ran.code(), ran.err());
    assertTrue(list().contains("Pier has prices not in EUR: left out."), list());
    assertTrue(list().contains("5.20"), list());
    assertFalse(list().contains("1.10"), list());
  }

  @Test
  void whereOnlySomePricesTellTheirCurrencyTheListIsRefused() throws IOException {
    Ran ran =
        bring(
            "prices.csv",
            PRICES
                + "Quay,paddle,ink,75,8,5.20,EUR,yes,2\nPier,paddle,ink,75,8,4.80,GBP,yes,2\n"
                + "Mole,paddle,ink,75,8,4.80,,yes,2\n");
    assertEquals(65, ran.code());
    assertTrue(ran.err().contains("EUR and GBP"), ran.err());
  }

  @Test
  void pricesInAnotherCurrencyAreLeftOutAndSaidToBe() throws IOException {
    bring("euro.csv", PRICES + "Quay,paddle,ink,75,8,5.20,EUR,yes,2\n");
    bring("pound.csv", PRICES + "Pier,paddle,ink,75,8,1.10,GBP,yes,2\n");
    assertTrue(list().contains("Pier has prices not in EUR: left out."), list());
    assertTrue(list().contains("5.20"), list());
    assertFalse(list().contains("1.10"), list());
  }

  @Test
  void aPriceOfNothingIsNoOffer() throws IOException {
    Ran ran = bring("prices.csv", PRICES + "Quay,paddle,ink,75,8,0,EUR,yes,2\n");
    assertTrue(ran.out().contains("Not taken: prices.csv, F2"), ran.out());
    assertTrue(list().contains("no shop on your price lists has it"), list());
  }

  @Test
  void aPackOfNothingIsNoOffer() throws IOException {
    Ran ran = bring("prices.csv", PRICES + "Quay,paddle,ink,75,0,5.20,EUR,yes,2\n");
    assertTrue(ran.out().contains("Not taken: prices.csv, E2"), ran.out());
    assertTrue(list().contains("no shop on your price lists has it"), list());
  }

  @Test
  void aShopThatStatesNoPostageIsSaidToBeTakenAtNone() throws IOException {
    bring("prices.csv", PRICES + "Quay,paddle,ink,75,8,5.20,EUR,yes,\n");
    assertTrue(list().contains("Quay states no postage: taken as none."), list());
  }

  @Test
  void oneShopAskedForIsNotAllShops() throws IOException {
    bring(
        "prices.csv",
        PRICES + "Quay,paddle,ink,75,8,5.20,EUR,yes,2\nPier,craw,olive,70,8,4.80,EUR,yes,2\n");
    String list = list("--shop", "Pier");
    assertTrue(list.contains("Low, and not at Pier"), list);
    assertTrue(list.contains("to be had at Quay"), list);
  }
}
