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

  private static BoxBuilder with(Object... plasticsAndPieces) {
    BoxBuilder box = new BoxBuilder().counted(BoxBuilder.TODAY, WANTED, 0);
    for (int i = 0; i < plasticsAndPieces.length; i += 2) {
      Plastic plastic = (Plastic) plasticsAndPieces[i];
      box.counted(BoxBuilder.TODAY, plastic, (Integer) plasticsAndPieces[i + 1]);
    }
    return box;
  }

  private static Plastic inColour(String body, int lengthMm) {
    return Plastic.of("", body, "dark olive", lengthMm);
  }

  @Test
  void ofOneColourTheFullerTrayThenTheSameBodyThenTheNearestLength() {
    Plastic craw = inColour("craw", 75);
    Plastic longer = inColour("paddle", 90);
    Plastic shorter = inColour("paddle", 50);
    assertEquals(Optional.of(craw), standIn(with(craw, 4, longer, 3, shorter, 3)));
    assertEquals(Optional.of(longer), standIn(with(craw, 3, longer, 3, shorter, 3)));
    assertEquals(Optional.of(longer), standIn(with(LONG, 3, longer, 3)));
  }

  @Test
  void ofLikeLooksTheFullerTray() {
    Plastic small = Plastic.of("", "paddle", "olive", 50);
    assertEquals(Optional.of(OLIVE), standIn(with(small, 2, OLIVE, 3)));
    assertEquals(Optional.of(small), standIn(with(small, 4, OLIVE, 3)));
  }

  @Test
  void colourNobodyCanPictureStandsInForNothing() {
    Plastic unknown = Plastic.of("", "paddle", "pier 9", 75);
    assertEquals(Optional.of(CURL), standIn(with(unknown, 9, CURL, 1)));
    assertEquals(Optional.empty(), standIn(with(unknown, 9)));
  }
}
