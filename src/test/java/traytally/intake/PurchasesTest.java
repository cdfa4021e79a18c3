package traytally.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.sheet.Workbook;

/** Lists of purchases that are kept up and added again and again. */
class PurchasesTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 1);
  private static final String HEAD = "Style,Colour,Length,Pieces";
  private static final String PRICES = "Shop,Style,Colour,Length,Pack size,Price";

  @TempDir private Path folder;
  private final Recorder box = new Recorder();

  private Imported add(String... lines) throws IOException {
    List<String> all = new ArrayList<>(List.of(lines));
    if (!lines[0].equals(PRICES)) {
      all.add(0, HEAD);
    }
    Path file = folder.resolve("bought.csv");
    Files.write(file, all);
    try (Workbook workbook = Workbook.open(file)) {
      Imported imported =
          Import.read(GivenSheet.of("bought.csv", workbook), box.book(), options(), TODAY);
      if (!imported.entry().isEmpty()) {
        box.record(imported.entry());
      }
      return imported;
    }
  }

  private static ImportOptions options() {
    return new ImportOptions(
        Optional.empty(),
        Map.of(),
        List.of(),
        Optional.empty(),
        true,
        false,
        false,
        false,
        false,
        Optional.empty(),
        Optional.empty());
  }

  private int pieces() {
    return box.book().ledger().movements().stream().mapToInt(m -> m.what().pieces()).sum();
  }

  @Test
  void grownListAddsOnlyWhatIsNew() throws IOException {
    add("Paddle,Motor oil,75mm,8");
    Imported grown = add("Paddle,Motor oil,75mm,8", "Paddle,Chalk,75mm,8");
    assertEquals(16, pieces());
    assertTrue(grown.notices().get(0).contains("8 of its 16 pieces were added before"));
    Imported same = add("Paddle,Motor oil,75mm,8", "Paddle,Chalk,75mm,8");
    assertEquals(16, pieces());
    assertTrue(same.entry().isEmpty());
  }

  @Test
  void mendedRowAddsTheDifference() throws IOException {
    add("Paddle,Motor oil,75mm,8");
    add("Paddle,Motor oil,75mm,10");
    assertEquals(10, pieces());
  }

  @Test
  void listOfOtherPlasticsIsNewAsAWhole() throws IOException {
    add("Paddle,Motor oil,75mm,8");
    add("Paddle,Chalk,75mm,4");
    assertEquals(12, pieces());
  }

  @Test
  void listThatShrankIsRefusedUntilToldWhatItIs() throws IOException {
    add("Paddle,Motor oil,75mm,8", "Paddle,Chalk,75mm,8");
    ListRefusedException refused =
        assertThrows(
            ListRefusedException.class,
            () -> add("Paddle,Motor oil,75mm,6", "Paddle,Chalk,75mm,8"));
    assertTrue(String.valueOf(refused.getMessage()).contains("--again"));
    assertEquals(16, pieces());
  }

  @Test
  void priceListIsNoPurchase() throws IOException {
    Imported prices = add(PRICES, "Splice Shed,Paddle,Motor oil,75mm,8,4.95");
    assertEquals(0, pieces());
    assertTrue(prices.notices().get(0).contains("--add"));
  }
}
