package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/**
 * A box whose bytes a bad disk turned or cut off: every command says so in a sentence or two, and
 * none counts wrongly where {@code check} can tell. {@code -Ddamage.times} and {@code
 * -Ddamage.seed} say how many boxes are spoilt, and how.
 */
class DamagedBoxTest {
  private static final int TIMES = Integer.getInteger("damage.times", 12);
  private static final long SEED = Long.getLong("damage.seed", 20260501);

  /** Commands that look, all of whose results rest on what the box holds. */
  private static final List<String[]> LOOKING =
      List.of(
          new String[] {"box", "--format", "csv"},
          new String[] {"ledger", "--format", "csv"},
          new String[] {"trips", "--format", "csv"},
          new String[] {"restock", "--format", "csv"});

  /** Commands that change the box or copy it. */
  private static final List<String[]> CHANGING =
      List.of(
          new String[] {"bought", "sandeel, rust, 115", "2", "--yes"},
          new String[] {"undo"},
          new String[] {"backup"},
          new String[] {"import", "demo-data/prices.xlsx"});

  @TempDir Path folder;

  private Path box;
  private byte[] whole;

  private void spoil(Random random) throws IOException {
    byte[] bytes = whole.clone();
    if (random.nextInt(6) == 0) {
      bytes = Arrays.copyOf(bytes, 1 + random.nextInt(bytes.length - 1));
    }
    for (int turned = random.nextInt(4); turned >= 0; turned--) {
      int at = random.nextInt(bytes.length);
      bytes[at] ^= (byte) (1 << random.nextInt(8));
      if (random.nextInt(4) == 0) {
        Arrays.fill(bytes, at, Math.min(bytes.length, at + 512), (byte) random.nextInt());
      }
    }
    Files.write(box, bytes);
  }

  private static void assertSaysSo(String why, Ran ran) {
    assertTrue(Set.of(65, 74).contains(ran.code()), why + ran.code() + ran.out() + ran.err());
    String message = ran.err().strip();
    assertTrue(message.startsWith("traytally: "), why + message);
    assertFalse(message.contains("\tat ") || message.contains("fault of the program"), why);
    assertEquals(1, message.lines().count(), why + message);
  }

  @Test
  void damageIsSaidAndNeverCounted() throws IOException {
    box = folder.resolve("tray.box");
    Ran.importDemo(folder);
    whole = Files.readAllBytes(box);
    Map<String, String> right = new HashMap<>();
    for (String[] args : LOOKING) {
      right.put(args[0], Ran.in(folder, args).out());
    }
    Random random = new Random(SEED);
    int told = 0;
    for (int i = 0; i < TIMES; i++) {
      spoil(random);
      byte[] spoilt = Files.readAllBytes(box);
      String why = "seed " + SEED + ", box " + i + ": ";
      Ran check = Ran.in(folder, "check");
      boolean sound = check.code() == 0;
      if (check.code() != 0 && check.code() != 1) {
        assertSaysSo(why + "check: ", check);
      }
      told += sound ? 0 : 1;
      for (String[] args : LOOKING) {
        Ran ran = Ran.in(folder, args);
        if (ran.code() != 0) {
          assertSaysSo(why + args[0] + ": ", ran);
          assertFalse(sound, why + args[0] + ran.err());
        } else if (!sound) {
          assertEquals(right.get(args[0]), ran.out(), why + args[0] + " counts wrongly");
        }
      }
      for (String[] args : CHANGING) {
        Ran ran = Ran.in(folder, args);
        if (ran.code() != 0) {
          assertSaysSo(why + args[0] + ": ", ran);
        }
        Files.write(box, spoilt);
      }
    }
    System.out.println(
        "DamagedBoxTest, seed " + SEED + ": " + TIMES + " boxes spoilt, check told " + told);
    assertTrue(told >= TIMES / 4, "check told of " + told);
  }
}
