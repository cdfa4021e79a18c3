package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/**
 * Fifty things told by hand through the command line, at the keyboard and through a pipe, some
 * taken back, against a plain retelling: a list of what stands, from which each tray is worked out
 * anew.
 */
class FiftyOperationsTest {
  private static final int OPERATIONS = 50;
  private static final List<String> NAMES =
      List.of("paddle tail, motor oil, 75", "paddle tail, white, 75", "curl tail, chalk, 90");
  private static final List<String> WORDS =
      List.of("padle motor oil", "WHITE paddle", "chalk 90mm");

  /** Trips planned are held as the pieces of a plastic that is never counted. */
  private static final int PLAN = NAMES.size();

  @TempDir Path folder;

  /**
   * One thing told, all on one day, in the order of the batches.
   *
   * @param count whether {@code pieces} were seen; else they came or went
   */
  private record Told(long batch, int plastic, boolean count, int pieces) {}

  /** What batch {@code by} took back. */
  private record Undone(long by, List<Told> told) {}

  private final List<Told> standing = new ArrayList<>();
  private final List<Undone> undone = new ArrayList<>();
  private final StringBuilder tale = new StringBuilder();
  private long batch;

  private void run(String... args) {
    done(Ran.in(folder, args), args);
  }

  private void done(Ran ran, String... args) {
    tale.append(String.join(" ", args)).append('\n');
    assertEquals(0, ran.code(), tale + ran.err());
    batch++;
  }

  /** What the tray holds: the last count and what came and went after it, never below nothing. */
  private int tray(int plastic) {
    int held = 0;
    int afterCount = 0;
    for (Told told :
        standing.stream().sorted((a, b) -> Long.compare(a.batch(), b.batch())).toList()) {
      if (told.plastic() == plastic && told.count()) {
        held = told.pieces();
        afterCount = 0;
      } else if (told.plastic() == plastic) {
        afterCount += told.pieces();
      }
    }
    // Within one day only its end counts: what was lost before it was bought was there all the
    // same.
    return Math.max(0, held + afterCount);
  }

  private void compare() {
    List<Json> rows = Json.parse(Ran.in(folder, "box", "--format", "json").out()).rows();
    for (int plastic = 0; plastic < NAMES.size(); plastic++) {
      String[] parts = NAMES.get(plastic).split(", ", -1);
      int held =
          rows.stream()
              .filter(r -> r.text("colour").equals(parts[1]))
              .mapToInt(r -> (int) r.number("pieces"))
              .sum();
      assertEquals(tray(plastic), held, NAMES.get(plastic) + " after\n" + tale);
    }
    Json plan = Json.parse(Ran.in(folder, "plan", "--format", "json").out());
    assertEquals(tray(PLAN), plan.rows().size(), "planned after\n" + tale);
  }

  private void step(Random random) {
    int plastic = random.nextInt(NAMES.size());
    String words = WORDS.get(plastic);
    int pieces = 1 + random.nextInt(6);
    switch (random.nextInt(12)) {
      case 0 -> {
        run("count", words, pieces + " pieces");
        standing.add(new Told(batch, plastic, true, pieces));
      }
      case 1, 2 -> {
        run("bought", words, String.valueOf(pieces));
        standing.add(new Told(batch, plastic, false, pieces));
      }
      case 3 -> {
        run("lost", words, String.valueOf(pieces), "--yes");
        standing.add(new Told(batch, plastic, false, -pieces));
      }
      case 4 -> {
        run("given", words, String.valueOf(pieces), "--yes");
        standing.add(new Told(batch, plastic, false, -pieces));
      }
      case 5 -> {
        run("trips", "log", "today Gull: " + words + " 30m -" + pieces + " snag", "--yes");
        standing.add(new Told(batch, plastic, false, -pieces));
      }
      case 6 -> {
        String[] args = {"trips", "log"};
        String keys = "today Gull\r" + words + "\t 20m -" + pieces + "\rsnag\r\ry\r";
        done(Ran.typing(folder, keys, args), args);
        standing.add(new Told(batch, plastic, false, -pieces));
      }
      case 7 -> {
        String[] args = {"count", "--tray", "A"};
        // The tray's order: curl tail, motor oil, white; the second is skipped.
        done(Ran.piping(folder, pieces + "\nskip\n7\n", args), args);
        standing.add(new Told(batch, 2, true, pieces));
        standing.add(new Told(batch, 1, true, 7));
      }
      case 8 -> {
        run("plan", "add", "2026-06-01 Gull 3h", "--weekly", String.valueOf(pieces), "--yes");
        standing.add(new Told(batch, PLAN, false, pieces));
      }
      case 9 -> movedToAnotherComputer();
      case 10 -> undoOne(random);
      default -> redoOne(random);
    }
  }

  /** Everything is written out and read back, and the story goes on in that box. */
  private void movedToAnotherComputer() {
    tale.append("export and import\n");
    Path export = folder.resolve("export-" + batch + "-" + tale.length());
    assertEquals(0, Ran.in(folder, "export", export.toString()).code(), tale.toString());
    try {
      Files.delete(folder.resolve("tray.box"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    assertEquals(0, Ran.in(folder, "import", export.toString()).code(), tale.toString());
  }

  private void undoOne(Random random) {
    long which = standing.get(random.nextInt(standing.size())).batch();
    // The opening counts stay: a plastic nobody speaks of has no name to be called by.
    if (which > NAMES.size()) {
      List<Told> told = standing.stream().filter(t -> t.batch() == which).toList();
      run("undo", String.valueOf(which));
      standing.removeAll(told);
      undone.add(new Undone(batch, told));
    }
  }

  private void redoOne(Random random) {
    if (!undone.isEmpty()) {
      Undone back = undone.remove(random.nextInt(undone.size()));
      run("undo", String.valueOf(back.by()));
      // It stands again as it was told first, in its old place.
      standing.addAll(back.told());
    }
  }

  @Test
  void theCountIsRightAfterFiftyMixedOperations() {
    Random random = new Random(20260501);
    for (int plastic = 0; plastic < NAMES.size(); plastic++) {
      run("count", "4", "--new", NAMES.get(plastic), "--tray", "A");
      standing.add(new Told(batch, plastic, true, 4));
    }
    for (int i = 0; i < OPERATIONS; i++) {
      step(random);
      compare();
    }
    assertEquals("The box is whole.\n", Ran.in(folder, "check").out(), tale.toString());
  }
}
