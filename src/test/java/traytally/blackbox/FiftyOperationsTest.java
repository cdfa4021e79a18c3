package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.SortedSet;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/**
 * Fifty things told through the command line, by hand, at the keyboard, through a pipe and in
 * lists, some taken back, copied and put back, against a plain retelling: a list of what stands,
 * from which each tray is worked out anew.
 *
 * <p>{@code -Dslow=true} tells fifty such stories; {@code -Doperations.stories} says how many,
 * {@code -Doperations.seed} which.
 */
class FiftyOperationsTest {
  private static final int OPERATIONS = 50;
  private static final int STORIES =
      Integer.getInteger("operations.stories", Boolean.getBoolean("slow") ? 50 : 1);
  private static final long SEED = Long.getLong("operations.seed", 20260501);
  private static final List<String> NAMES =
      List.of("paddle tail, motor oil, 75", "paddle tail, white, 75", "curl tail, chalk, 90");
  private static final List<String> WORDS =
      List.of("padle motor oil", "WHITE paddle", "chalk 90mm");

  private static final String HEADER = "Body style,Colour,Length (mm)";

  /** Trips planned are held as the pieces of a plastic that is never counted. */
  private static final int PLAN = NAMES.size();

  @TempDir Path root;

  private Path folder = Path.of("");

  /**
   * One thing told, all on one day, in the order of the batches.
   *
   * @param count whether {@code pieces} were seen; else they came or went
   * @param listed whether a list said so
   */
  private record Told(long batch, int plastic, boolean count, int pieces, boolean listed) {
    Told(long batch, int plastic, boolean count, int pieces) {
      this(batch, plastic, count, pieces, false);
    }
  }

  /** The story up to a copy of the box. */
  private record Mark(List<Told> standing, List<Undone> undone, SortedSet<Long> told, long batch) {}

  /** What batch {@code by} took back. */
  private record Undone(long by, List<Told> told) {}

  private final List<Told> standing = new ArrayList<>();
  private final List<Undone> undone = new ArrayList<>();
  private final StringBuilder tale = new StringBuilder();

  /** The batches that stand and are no undo. */
  private final SortedSet<Long> told = new TreeSet<>();

  private Optional<Mark> mark = Optional.empty();
  private long batch;

  private void run(String... args) {
    done(Ran.in(folder, args), args);
  }

  private void done(Ran ran, String... args) {
    tale.append(String.join(" ", args)).append('\n');
    assertEquals(0, ran.code(), tale + ran.err());
    batch++;
    if (!args[0].equals("undo")) {
      told.add(batch);
    }
  }

  /** How many batches the box knows of. */
  private long batches() {
    return Json.parse(Ran.in(folder, "ledger", "--batches", "--format", "json").out())
        .rows()
        .size();
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
    switch (random.nextInt(18)) {
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
      case 10, 11 -> undoOne(random);
      case 12 -> redoOne(random);
      case 13 -> listed(plastic, pieces);
      case 14 -> {
        String log = HEADER + ",Water,Lost\n" + row(plastic) + ",Gull " + batch + "," + pieces;
        run("import", list("Date," + log.replace("\n", "\n2026-05-01,")));
        standing.add(new Told(batch, plastic, false, -pieces));
      }
      case 15 -> beside(random, words);
      case 16 -> copyOrPutBack(random);
      default -> undoLast();
    }
  }

  private static String row(int plastic) {
    return NAMES.get(plastic).replace(", ", ",");
  }

  /** A file of its own each time: a list of the same name is an edited one. */
  private String list(String text) {
    tale.append(text).append('\n');
    try {
      return Files.writeString(folder.resolve("list-" + tale.length() + ".csv"), text + "\n")
          .toString();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A list of one plastic: what it says is a count, unless the list before it said the same. */
  private void listed(int plastic, int pieces) {
    boolean news =
        standing.stream()
            .filter(t -> t.plastic() == plastic && t.listed())
            .max((a, b) -> Long.compare(a.batch(), b.batch()))
            .filter(last -> last.pieces() == pieces)
            .isEmpty();
    recordedOrNot("import", list(HEADER + ",Pieces\n" + row(plastic) + "," + pieces));
    if (news) {
      standing.add(new Told(batch, plastic, true, pieces, true));
    }
  }

  /** What moves no piece. */
  private void beside(Random random, String words) {
    switch (random.nextInt(3)) {
      case 0 -> recordedOrNot("keep", words, "--yes");
      case 1 -> recordedOrNot("agree", "spelling " + random.nextInt(5), "=", "chalk");
      default -> recordedOrNot("settings", "delivery-days", "" + (1 + random.nextInt(9)));
    }
  }

  /** A command that may find nothing new to record. */
  private void recordedOrNot(String... args) {
    tale.append(String.join(" ", args)).append('\n');
    Ran ran = Ran.in(folder, args);
    assertEquals(0, ran.code(), tale + ran.out() + ran.err());
    long now = batches();
    if (now > batch) {
      batch++;
      told.add(batch);
    }
    assertEquals(batch, now, tale.toString());
  }

  private void copyOrPutBack(Random random) {
    String copy = folder.resolve("copy.box").toString();
    if (mark.isEmpty() || random.nextBoolean()) {
      tale.append("backup\n");
      assertEquals(0, Ran.in(folder, "backup", copy).code(), tale.toString());
      mark =
          Optional.of(
              new Mark(List.copyOf(standing), List.copyOf(undone), new TreeSet<>(told), batch));
      return;
    }
    tale.append("restore\n");
    assertEquals(0, Ran.in(folder, "restore", copy).code(), tale.toString());
    Mark back = mark.get();
    standing.clear();
    standing.addAll(back.standing());
    undone.clear();
    undone.addAll(back.undone());
    told.clear();
    told.addAll(back.told());
    batch = back.batch();
  }

  private void undoLast() {
    // The opening counts stay: a plastic nobody speaks of has no name to be called by.
    if (told.last() > NAMES.size()) {
      takeBack(told.last());
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
    if (which > NAMES.size()) {
      takeBack(which);
    }
  }

  /** Undoes a batch, the last one without its number; what later ones count on stays. */
  private void takeBack(long which) {
    String[] args =
        which == told.last() ? new String[] {"undo"} : new String[] {"undo", "" + which};
    Ran ran = Ran.in(folder, args);
    if (ran.code() == 65 && ran.err().contains("cannot be undone yet")) {
      assertEquals(batch, batches(), tale.toString());
      return;
    }
    done(ran, args);
    assertTrue(ran.out().startsWith("Undone: batch " + which + ","), tale + ran.out());
    List<Told> gone = standing.stream().filter(t -> t.batch() == which).toList();
    told.remove(which);
    standing.removeAll(gone);
    if (!gone.isEmpty()) {
      undone.add(new Undone(batch, gone));
    }
  }

  private void redoOne(Random random) {
    if (!undone.isEmpty()) {
      Undone back = undone.remove(random.nextInt(undone.size()));
      run("undo", String.valueOf(back.by()));
      // It stands again as it was told first, in its old place.
      standing.addAll(back.told());
      told.add(back.told().get(0).batch());
    }
  }

  @Test
  void theCountIsRightAfterFiftyMixedOperations() throws IOException {
    for (long seed = SEED; seed < SEED + STORIES; seed++) {
      folder = Files.createDirectory(root.resolve("story-" + seed));
      tell(new Random(seed), "seed " + seed);
    }
  }

  private void tell(Random random, String title) {
    standing.clear();
    undone.clear();
    told.clear();
    mark = Optional.empty();
    batch = 0;
    tale.setLength(0);
    tale.append(title).append('\n');
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
