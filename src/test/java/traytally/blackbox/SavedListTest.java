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

/** A list kept, and booked when the parcel comes. */
class SavedListTest {
  private static final String BOX =
      "Body style,Colour,Length (mm),Pieces,Kept\npaddle,ink,75,0,yes\ncraw,olive,70,1,yes\n";
  private static final String TRIPS =
      """
      Date,Water,Body style,Colour,Length (mm),Minutes,Takes,Hooked,Landed,Lost
      2026-04-01,Gull Rocks,paddle,ink,75,120,4,2,1,3
      2026-04-12,Gull Rocks,craw,olive,70,120,3,2,1,2
      2026-04-20,Gull Rocks,paddle,ink,75,120,4,2,1,3
      """;
  private static final String PRICES =
      """
      Shop,Body style,Colour,Length (mm),Pack size,Pack price,Currency,In stock,Postage
      Quay,paddle,ink,75,8,5.20,EUR,yes,2.00
      Pier,craw,olive,70,6,4.10,EUR,yes,2.00
      """;

  @TempDir private Path folder;
  private Path list;

  @BeforeEach
  void keepAList() throws IOException {
    for (String[] sheet :
        List.of(
            new String[] {"box.csv", BOX},
            new String[] {"trips.csv", TRIPS},
            new String[] {"prices.csv", PRICES})) {
      Path file = Files.writeString(folder.resolve(sheet[0]), sheet[1]);
      done("import", file.toString());
    }
    list = folder.resolve("list.csv");
    Ran ran = done("restock", "--trips", "6", "--save", list.toString());
    assertTrue(ran.err().contains("bought --list"), ran.err());
  }

  private Ran done(String... args) {
    Ran ran = Ran.in(folder, args);
    assertEquals(0, ran.code(), ran.err());
    return ran;
  }

  private double pieces(String colour) {
    return Json.parse(done("box", "--format", "json").out()).rows().stream()
        .filter(row -> row.text("colour").equals(colour))
        .mapToDouble(row -> row.number("pieces"))
        .sum();
  }

  private int packs(String colour) throws IOException {
    String row =
        Files.readAllLines(list).stream().filter(l -> l.contains(colour)).findFirst().orElseThrow();
    return Integer.parseInt(row.split(",", -1)[6]);
  }

  @Test
  void theWholeParcelIsBookedOnceAndUndoneWhole() throws IOException {
    double ink = 8.0 * packs("ink");
    double olive = 1 + 6.0 * packs("olive");
    Ran ran = done("bought", "--list", list.toString());
    assertTrue(ran.out().contains("of 2 plastics"), ran.out());
    assertEquals(ink, pieces("ink"));
    assertEquals(olive, pieces("olive"));
    Ran again = done("bought", "--list", list.toString());
    assertTrue(again.out().contains("booked before"), again.out());
    assertTrue(again.out().contains("Nothing changed"), again.out());
    assertEquals(ink, pieces("ink"));
    done("undo");
    assertEquals(0, pieces("ink"));
    done("bought", "--list", list.toString());
    assertEquals(ink, pieces("ink"));
  }

  @Test
  void oneShopsParcelIsBookedAndTheOtherLater() throws IOException {
    double ink = 8.0 * packs("ink");
    done("bought", "--list", list.toString(), "--shop", "Quay");
    assertEquals(ink, pieces("ink"));
    assertEquals(1, pieces("olive"));
    done("bought", "--list", list.toString());
    assertEquals(ink, pieces("ink"));
    assertEquals(1 + 6.0 * packs("olive"), pieces("olive"));
  }

  @Test
  void whatDidNotComeIsLeftOut() {
    done("bought", "--list", list.toString(), "--except", "Olive craw");
    assertEquals(1, pieces("olive"));
    assertTrue(pieces("ink") > 0);
  }

  @Test
  void countsChangedInTheFileAreTheCounts() throws IOException {
    String text = Files.readString(list);
    Files.writeString(
        list,
        text.replace("75," + packs("ink") + ",8", "75,9,8")
            .replace("70," + packs("olive") + ",6", "70,0,6"));
    done("bought", "--list", list.toString());
    assertEquals(72, pieces("ink"));
    assertEquals(1, pieces("olive"));
  }

  @Test
  void aFileThatIsNoListIsRefusedAndNothingBooked() throws IOException {
    Path other = Files.writeString(folder.resolve("other.csv"), "a,b\n1,2\n");
    Ran ran = Ran.in(folder, "bought", "--list", other.toString());
    assertEquals(65, ran.code());
    assertTrue(ran.err().contains("restock --save"), ran.err());
    Files.writeString(list, Files.readString(list).replace(",8,5.20", ",0,5.20"));
    Ran zero = Ran.in(folder, "bought", "--list", list.toString());
    assertEquals(65, zero.code());
    assertTrue(zero.err().contains("row 2") || zero.err().contains("row 3"), zero.err());
    assertFalse(done("ledger").out().contains("the list of"));
    assertEquals(66, Ran.in(folder, "bought", "--list", "gone.csv").code());
    assertEquals(2, Ran.in(folder, "bought", "--shop", "Quay").code());
    assertEquals(2, Ran.in(folder, "restock", "--save", "list.txt").code());
  }
}
