package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import traytally.cli.Ran;

/** Logs that say next to nothing, or nothing that can be: words and numbers, never NaN. */
class DegenerateLogsTest {
  private static final String HEAD =
      "Date,Water,Species,Clarity,Body style,Colour,Length (mm),Minutes,Takes,Lost\n";

  @TempDir Path folder;

  private static String stint(int day, String colour, String minutes, int takes) {
    return "2026-03-%02d,Gull Rocks,%s,%s,paddle tail,%s,75,%s,%d,0\n"
        .formatted(
            day,
            day % 2 == 0 ? "pollack" : "bass",
            day % 3 == 0 ? "clear" : "dirty",
            colour,
            minutes,
            takes);
  }

  private static String log(String kind) {
    StringBuilder log = new StringBuilder(HEAD);
    switch (kind) {
      case "one trip" -> log.append(stint(1, "ink", "60", 2)).append(stint(1, "rust", "60", 1));
      case "one colour" -> log.append(stint(1, "ink", "60", 2)).append(stint(2, "ink", "60", 0));
      case "no minutes" -> log.append(stint(1, "ink", "0", 0)).append(stint(2, "rust", "0", 0));
      case "takes without minutes" ->
          log.append(stint(1, "ink", "", 3)).append(stint(2, "rust", "0", 1));
      default -> {
        for (int day = 1; day <= 12; day++) {
          // A list's row holds fewer than a thousand: ten thousand are in twenty stints.
          int stints = kind.equals("plenty") ? 20 : 1;
          int most = kind.equals("plenty") ? 500 : kind.equals("alike") ? 2 : 0;
          for (int i = 0; i < stints; i++) {
            log.append(stint(day, "ink", "30", most));
            log.append(stint(day, "rust", "30", kind.equals("plenty") ? most / 3 : most));
          }
        }
      }
    }
    return log.toString();
  }

  private String run(String... args) {
    Ran ran = Ran.in(folder, args);
    assertEquals(0, ran.code(), String.join(" ", args) + ": " + ran.err());
    for (String no : List.of("NaN", "Infinity", "∞", "Exception")) {
      assertFalse((ran.out() + ran.err()).contains(no), String.join(" ", args) + ran.out());
    }
    return ran.out();
  }

  @ParameterizedTest
  @CsvSource({
    "one trip",
    "one colour",
    "no takes",
    "no minutes",
    "takes without minutes",
    "alike",
    "plenty"
  })
  void everyLogGetsWords(String kind) throws IOException {
    Path box = folder.resolve("box.csv");
    Files.writeString(
        box, "Body style,Colour,Length (mm),Pieces\npaddle tail,ink,75,5\npaddle tail,rust,75,5\n");
    Path trips = folder.resolve("trips.csv");
    Files.writeString(trips, log(kind));
    run("import", box.toString());
    run("import", trips.toString());
    for (String grain : List.of("colour", "plastic", "body")) {
      for (String fish : List.of("follows", "takes", "hooked", "landed")) {
        Json trust = Json.parse(run("trust", grain, "--by", fish, "--format", "json"));
        for (Json row : trust.rows()) {
          double chance = row.number("trust");
          assertTrue(chance >= 0 && chance <= 1, kind + ": " + chance);
          assertTrue(row.number("low") <= row.number("high"), kind);
        }
      }
    }
    run("trust", "--for", "bass", "--in", "cloudy", "--month", "7");
    run("lineup");
    run("lineup", "--for", "wrasse", "--hours", "0.1");
    run("restock");
    run("why", "paddle ink 75");
    run("why", "paddle ink 75", "--format", "json");
    double ink = trust("ink");
    if (kind.equals("plenty")) {
      assertTrue(ink > 0.9, "ink " + ink);
    } else if (kind.equals("alike") || kind.equals("no takes") || kind.equals("one colour")) {
      assertEquals(0.5, ink, 0.01);
    }
  }

  private double trust(String colour) {
    return Json.parse(run("trust", "--format", "json")).rows().stream()
        .filter(row -> row.text("colour").equals(colour))
        .findFirst()
        .orElseThrow()
        .number("trust");
  }

  @ParameterizedTest
  @CsvSource({"0", "13", "May"})
  void oddMonthsAreRefused(String month) throws IOException {
    Path box = folder.resolve("box.csv");
    Files.writeString(box, "Body style,Colour,Length (mm),Pieces\npaddle tail,ink,75,5\n");
    run("import", box.toString());
    Ran ran = Ran.in(folder, "trust", "--month", month);
    assertEquals(2, ran.code());
    assertEquals("", ran.out());
  }
}
