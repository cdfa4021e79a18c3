package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import traytally.ledger.Book;
import traytally.plastic.Plastic;

class StandInsTest {
  private static final Plastic WANTED = Plastic.of("", "paddle", "dark olive", 75);
  private static final Plastic OLIVE = Plastic.of("", "paddle", "olive", 75);
  private static final Plastic WHITE = Plastic.of("", "paddle", "white", 75);
  private static final Plastic CURL = Plastic.of("", "curl", "olive", 75);
  private static final Plastic LONG = Plastic.of("", "paddle", "dark olive", 100);

  private static Optional<Plastic> standIn(BoxBuilder box) {
    Book book = box.book();
    Outlook outlook = Outlook.of(book, BoxBuilder.TODAY);
    return new StandIns(book, outlook.prospects().values(), LowRule.of(book.settings())).of(WANTED);
  }

  private static BoxBuilder box(int olive, int white, int longer) {
    return new BoxBuilder()
        .counted(BoxBuilder.TODAY, WANTED, 0)
        .counted(BoxBuilder.TODAY, OLIVE, olive)
        .counted(BoxBuilder.TODAY, WHITE, white)
        .counted(BoxBuilder.TODAY, CURL, 50)
        .counted(BoxBuilder.TODAY, LONG, longer);
  }

  @Test
  void theSameColourComesFirst() {
    assertEquals(Optional.of(LONG), standIn(box(9, 9, 1)));
  }

  /** No swatch is given: the words of the names say how they look. */
  @Test
  void elseTheNearestColourInTheSameBody() {
    assertEquals(Optional.of(OLIVE), standIn(box(1, 90, 0)));
  }

  @Test
  void whatIsItselfGoneStandsInForNothing() {
    assertEquals(Optional.of(WHITE), standIn(box(0, 2, 0)));
    assertEquals(Optional.of(CURL), standIn(box(0, 0, 0)), "no paddle is left");
  }
}
