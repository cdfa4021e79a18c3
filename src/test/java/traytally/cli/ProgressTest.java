package traytally.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ProgressTest {
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private Instant now = Instant.parse("2026-05-01T12:00:00Z");

  /** A clock that goes on only when the test says so. */
  private final Clock clock =
      new Clock() {
        @Override
        public ZoneId getZone() {
          return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
          return this;
        }

        @Override
        public Instant instant() {
          return now;
        }
      };

  private Progress progress(boolean terminal) {
    PrintStream out = new PrintStream(err, true, StandardCharsets.UTF_8);
    return new Progress(
        new Desk(InputStream.nullInputStream(), out, out, clock, Map.of(), terminal, () -> {}));
  }

  private void millis(long millis) {
    now = now.plus(Duration.ofMillis(millis));
  }

  private String said() {
    return err.toString(StandardCharsets.UTF_8);
  }

  @Test
  void saysNothingWithinTheFirstSecond() {
    try (Progress progress = progress(true)) {
      progress.read("trips.csv", 1000);
      millis(999);
      progress.read("trips.csv", 2000);
    }
    assertEquals("", said());
  }

  @Test
  void saysHowFarItIsAndWipesTheLineAtTheEnd() {
    try (Progress progress = progress(true)) {
      millis(1000);
      progress.read("trips.csv", 12000);
      assertEquals("\rReading trips.csv: 12,000 rows", said());
      millis(100);
      progress.read("trips.csv", 13000);
      assertEquals("\rReading trips.csv: 12,000 rows", said());
      millis(100);
      progress.record(5);
      assertEquals(
          "\rReading trips.csv: 12,000 rows\rRecording 5 changes" + " ".repeat(11), said());
    }
    assertEquals(
        "\rReading trips.csv: 12,000 rows\rRecording 5 changes"
            + " ".repeat(11)
            + "\r"
            + " ".repeat(19)
            + "\r",
        said());
  }

  @Test
  void saysNothingWhereNobodySeesIt() {
    try (Progress progress = progress(false)) {
      millis(5000);
      progress.read("trips.csv", 1000);
    }
    assertEquals("", said());
  }
}
