package traytally.store;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Objects;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.Movement;
import traytally.ledger.Recorded;

/** Boxes made by every past version of the schema: what an angler wrote must open for ever. */
final class OldBoxTest {
  @TempDir Path folder;

  @Test
  void boxOfTheFirstVersionOpensAndHoldsWhatItHeld() throws IOException {
    Path file = folder.resolve("v1.box");
    try (InputStream old =
        Objects.requireNonNull(OldBoxTest.class.getResourceAsStream("/boxes/v1.box"))) {
      Files.copy(old, file);
    }
    try (Box box = Box.open(file, Clock.systemUTC())) {
      Book book = box.book();
      assertEquals(
          Sample.facts().toString(),
          book.facts().stream().<Fact>map(Recorded::what).toList().toString());
      assertEquals(
          Sample.movements().toString(),
          book.ledger().movements().stream().<Movement>map(Recorded::what).toList().toString());
      assertEquals(3, book.batches().size());
      assertEquals(OptionalLong.of(3), book.batches().get(1).undoneBy());
      assertEquals(List.of(), box.check());
      // It can still be undone, redone and written to.
      assertEquals(4, box.record(box.undo(3).entry(book)));
      assertEquals(2, box.book().kept().size());
    }
  }
}
