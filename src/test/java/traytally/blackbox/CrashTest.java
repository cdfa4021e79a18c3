package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/**
 * Commands killed at any moment leave the box, and every copy and file they write, as it was before
 * or as it is after; the next command goes on, and cleans up.
 *
 * <p>{@code mvn -Pcrash test} kills many more; {@code -Dcrash.times} and {@code -Dcrash.seed} say
 * how many, and when.
 */
class CrashTest {
  private static final int TIMES = Integer.getInteger("crash.times", 8);
  private static final long SEED = Long.getLong("crash.seed", 20260501);

  /** Above so many, some kills land before the command did anything, and some after it. */
  private static final int MANY = 50;

  /** The longest wait after the first change seen: most commands are done in less. */
  private static final long WINDOW_NANOS = TimeUnit.MILLISECONDS.toNanos(60);

  private static final int LONG_LOG = TIMES <= MANY ? 150 : 1_500;

  /** Commands to kill, in a folder that holds a box of the demo, a copy of it and a long log. */
  private static final String[][] COMMANDS = {
    {"first", "import", "demo-data/tray.xlsx", "demo-data/trips.xlsx"},
    {"stocked", "import", "%s/log.csv"},
    {
      "stocked",
      "trips",
      "log",
      "today Gull: brackwell motor oil paddle tail 75 30m 2t 1h -1 snag",
      "--yes"
    },
    {"stocked", "undo"},
    {"stocked", "backup", "%s/copy.box"},
    {"stocked", "restore", "%s/copy.box"},
    {"old", "ledger", "--format", "json"},
    {"stocked", "export", "%s/all.json"},
    {"stocked", "export", "%s/all"},
    {"stocked", "backup"},
    {"broken", "restore", "%s/copy.box"},
    {"stocked", "sheet", "box", "--out", "%s/box.csv"},
  };

  @TempDir Path folder;

  private Path tray;
  private Path temporary;
  private final Map<Killed.When, Integer> landed = new EnumMap<>(Killed.When.class);

  @BeforeEach
  void stock() throws IOException {
    tray = Files.createDirectory(folder.resolve("tray"));
    temporary = Files.createDirectory(folder.resolve("temporary"));
    Files.createDirectory(folder.resolve("first"));
    Files.createDirectory(folder.resolve("old"));
    Files.copy(
        Path.of("src/test/resources/boxes/v1.box"), folder.resolve("old").resolve("tray.box"));
    Path stocked = Files.createDirectory(folder.resolve("stocked"));
    Ran.importDemo(stocked);
    done(Ran.in(stocked, "backup", stocked.resolve("copy.box").toString()));
    done(Ran.in(stocked, "lost", "brackwell motor oil paddle tail 75", "1", "--yes"));
    Files.writeString(stocked.resolve("log.csv"), longLog());
    Path broken = Files.createDirectory(folder.resolve("broken"));
    Files.copy(stocked.resolve("copy.box"), broken.resolve("copy.box"));
    Files.writeString(broken.resolve("tray.box"), "this was a box once");
  }

  private static String longLog() {
    StringBuilder log = new StringBuilder("Date,Water,Body style,Colour,Length (mm),Takes,Lost\n");
    for (int i = 0; i < LONG_LOG; i++) {
      log.append("2025-0").append(1 + i % 9).append("-1").append(i % 10);
      log.append(",Gull,paddle tail,motor oil,75,").append(i % 4).append(",0\n");
    }
    return log.toString();
  }

  private static Ran done(Ran ran) {
    assertEquals(0, ran.code(), ran.out() + ran.err());
    return ran;
  }

  @Test
  void whatIsKilledIsAsBeforeOrAsAfter() throws IOException, InterruptedException {
    Random random = new Random(SEED);
    long[] took = new long[COMMANDS.length];
    List<Map<String, String>> befores = new ArrayList<>();
    List<Map<String, String>> afters = new ArrayList<>();
    for (int i = 0; i < TIMES; i++) {
      int which = i % COMMANDS.length;
      List<String> args = args(which);
      if (i == which) {
        renew(which);
        befores.add(state());
        renew(which);
        done(Ran.in(tray, args.toArray(String[]::new)));
        afters.add(state());
      }
      renew(which);
      Killed program = new Killed(tray, temporary);
      Killed.When when;
      if (TIMES <= MANY || random.nextBoolean()) {
        when = program.afterChange((long) (random.nextDouble() * WINDOW_NANOS), args);
      } else {
        if (took[which] == 0) {
          took[which] = program.whole(args);
          renew(which);
        }
        when = program.afterStart((long) (random.nextDouble() * 1.1 * took[which]), args);
      }
      landed.merge(when, 1, Integer::sum);
      judge("kill " + i + " (" + when + ") of " + args, befores.get(which), afters.get(which));
    }
    assertCleanTemporary();
    System.out.println("CrashTest, seed " + SEED + ", " + TIMES + " kills: " + landed);
    assertTrue(landed.getOrDefault(Killed.When.DURING, 0) >= TIMES / 4, landed.toString());
    for (Killed.When when : TIMES < MANY ? new Killed.When[0] : Killed.When.values()) {
      assertTrue(landed.getOrDefault(when, 0) >= TIMES / 50, landed.toString());
    }
  }

  private List<String> args(int which) {
    return Arrays.stream(COMMANDS[which]).skip(1).map(a -> a.replace("%s", "" + tray)).toList();
  }

  /** The folder as it is before the command. */
  private void renew(int which) throws IOException {
    empty(tray);
    try (Stream<Path> files = Files.list(folder.resolve(COMMANDS[which][0]))) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Files.copy(file, tray.resolve(file.getFileName()));
      }
    }
  }

  private static void empty(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(java.util.Comparator.reverseOrder()).toList()) {
        if (!file.equals(folder)) {
          Files.delete(file);
        }
      }
    }
  }

  private void judge(String what, Map<String, String> before, Map<String, String> after)
      throws IOException {
    if (Files.exists(tray.resolve("tray.box"))) {
      Ran check = Ran.in(tray, "check");
      // What was broken before may be broken still.
      boolean broken = what.contains("restore") && before.get("tray.box").equals("no box");
      assertTrue(check.code() == 0 || (broken && check.code() == 65), what + check.err());
    }
    Map<String, String> state = state();
    assertTrue(
        state.equals(before) || state.equals(after),
        () -> what + ": " + differing(state, before) + "; " + differing(state, after));
    // A journal with nothing in it yet stays until the next command that writes.
    assertNothingLies(what, "tray\\.box-journal");
    if (state.get("tray.box").startsWith("{")) {
      done(Ran.in(tray, "plan", "add", "2026-06-06 Gull 3h", "--yes"));
      assertEquals("The box is whole.\n", done(Ran.in(tray, "check")).out(), what);
      assertNothingLies(what, "tray\\.box");
    }
  }

  private static String differing(Map<String, String> state, Map<String, String> wanted) {
    Map<String, String> rest = new TreeMap<>(state);
    rest.entrySet().removeAll(wanted.entrySet());
    return rest.keySet() + " of " + state.keySet() + " against " + wanted.keySet();
  }

  /** Beside the box lie, after the next command, only files that commands leave on purpose. */
  private void assertNothingLies(String what, String orElse) throws IOException {
    try (Stream<Path> files = Files.walk(tray)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        String name = tray.relativize(file).toString();
        assertTrue(
            name.matches(
                "tray\\.box(\\.unreadable)?|copy\\.box|log\\.csv|box\\.csv|all\\.json|all/\\w+\\.csv"
                    + "|tray\\.box\\.(before-import|before-update|backups)/[^/]+\\.box|"
                    + orElse),
            what + " left " + name);
        if (name.matches("tray\\.box\\..*/.*")) {
          // Elsewhere, since looking at a copy of an older version brings it up to date.
          Path copy = folder.resolve("look.box");
          Files.copy(file, copy, StandardCopyOption.REPLACE_EXISTING);
          done(Ran.in(folder, "check", "--box", copy.toString()));
        }
      }
    }
  }

  /** What the box, its copy and the files written hold; when a batch was recorded is left out. */
  private Map<String, String> state() throws IOException {
    Map<String, String> state = new TreeMap<>();
    for (String box : List.of("tray.box", "copy.box")) {
      state.put(box, held(tray.resolve(box)));
    }
    try (Stream<Path> files = Files.walk(tray)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        String name = tray.relativize(file).toString();
        if (name.matches("box\\.csv|all\\.json|all/\\w+\\.csv")) {
          state.put(name, Files.readString(file));
        }
      }
    }
    return state;
  }

  private String held(Path box) throws IOException {
    Path export = folder.resolve("held.json");
    Files.deleteIfExists(export);
    if (!Files.exists(box)
        || Ran.in(folder, "export", export.toString(), "--box", box.toString()).code() != 0) {
      return "no box";
    }
    String text = Files.readString(export).replaceAll("\"recorded_at\": \"[^\"]*\"", "");
    // A box just made and not written to holds what no box holds.
    return text.contains("\"command\": ") ? text : "no box";
  }

  /** What killed programs left in the folder for temporary files is gone after the next start. */
  private void assertCleanTemporary() throws IOException, InterruptedException {
    new Killed(tray, temporary).whole(List.of("settings"));
    try (Stream<Path> files = Files.list(temporary)) {
      assertEquals(List.of(), files.toList());
    }
  }
}
