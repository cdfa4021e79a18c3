package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

class IdleAndAuditTest {
  @TempDir private Path folder;

  @BeforeEach
  void bringInTheDemo() {
    for (String sheet : List.of("tray.xlsx", "trips.xlsx", "plan.xlsx", "prices.xlsx")) {
      Ran ran = Ran.in(folder, "import", "demo-data/" + sheet);
      assertEquals(0, ran.code(), ran.err());
    }
  }

  @Test
  void idleSaysPiecesMoneyAndWhomTheyMightSuit() {
    Ran ran = Ran.in(folder, "idle", "--years", "2", "--format", "json");
    assertEquals(0, ran.code(), ran.err());
    Json idle = Json.parse(ran.out());
    assertEquals("traytally/idle/1", idle.text("schema"));
    Json most = idle.rows().get(0);
    assertEquals("coral pink", most.text("colour"));
    assertEquals(most.number("pieces") - most.number("use_p90"), most.number("idle_pieces"));
    double sum = idle.rows().stream().mapToDouble(row -> row.number("idle_pieces")).sum();
    assertEquals(sum, idle.number("idle_pieces"));
    assertEquals("EUR", idle.text("currency"));
    assertTrue(Double.parseDouble(idle.text("money")) > 0);
    assertTrue(idle.rows().stream().anyMatch(row -> row.text("wanted_by").contains("takes in")));
  }

  @Test
  void yearsOutOfReachAreRefused() {
    Ran ran = Ran.in(folder, "idle", "--years", "0");
    assertEquals(2, ran.code());
    assertTrue(ran.err().contains("0.1 to 20 years"), ran.err());
  }

  @Test
  void auditSaysTheSameTwiceAndBeatsCroston() {
    Ran once = Ran.in(folder, "audit", "--trips", "12", "--format", "json");
    Ran twice = Ran.in(folder, "audit", "--trips", "12", "--format", "json");
    assertEquals(0, once.code(), once.err());
    assertEquals(once.out(), twice.out());
    Json audit = Json.parse(once.out());
    assertEquals(12, audit.number("trips_replayed"));
    assertTrue(audit.number("pinball_90") < audit.number("croston_90"), once.out());
    assertTrue(audit.number("bound_held") > 0.8, once.out());
  }

  @Test
  void auditTellsAPersonWhatCameTrue() {
    Ran ran = Ran.in(folder, "audit", "--trips", "6");
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.out().contains("Croston"), ran.out());
    assertTrue(ran.out().contains("Trips replayed: 6"), ran.out());
  }

  @Test
  void whereNothingIsLoggedNothingIsReplayedNorIdle(@TempDir Path other) {
    assertEquals(0, Ran.in(other, "import", "demo-data/tray.xlsx").code());
    Ran audit = Ran.in(other, "audit");
    assertEquals(0, audit.code(), audit.err());
    assertTrue(audit.out().contains("nothing to replay yet"), audit.out());
    Ran idle = Ran.in(other, "idle");
    assertTrue(idle.out().contains("cannot be told yet"), idle.out());
  }
}
