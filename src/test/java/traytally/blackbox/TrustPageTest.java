package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;
import traytally.ledger.Setting;

/** What docs/trust.md tells with its small log is what the program makes of it. */
class TrustPageTest {
  private static final Path PAGE = Path.of("docs/trust.md");
  private static final Pattern DAY =
      Pattern.compile("(?m)^\\| (a slow|the day|a grey)[^|]*\\| ([^|]*) \\| ([^|]*) \\|$");
  private static final Pattern FISHED = Pattern.compile("(\\d) hours?, (\\d|none).*");

  @TempDir Path folder;

  private static void add(List<String> log, String day, String colour, String told) {
    Matcher fished = FISHED.matcher(told);
    if (fished.matches()) {
      String takes = fished.group(2).equals("none") ? "0" : fished.group(2);
      int minutes = 60 * Integer.parseInt(fished.group(1));
      log.add("%s,Gull Rock,paddle tail,%s,75,%d,%s".formatted(day, colour, minutes, takes));
    }
  }

  @Test
  void theLogOfThePageBearsItsTaleOut() throws IOException {
    List<String> log = new ArrayList<>();
    log.add("Date,Water,Body style,Colour,Length (mm),Minutes,Takes");
    Matcher days = DAY.matcher(Files.readString(PAGE));
    int day = 11;
    while (days.find()) {
      add(log, "2026-04-" + day, "motor oil", days.group(2));
      add(log, "2026-04-" + day, "chalk", days.group(3));
      day++;
    }
    assertEquals(6, log.size(), log.toString());
    Path list = Files.write(folder.resolve("trips.csv"), log);
    Ran imported = Ran.in(folder, "import", list.toString());
    assertEquals(0, imported.code(), imported.err());
    Map<String, Json> colours = new TreeMap<>();
    Json.parse(Ran.in(folder, "trust", "--format", "json").out())
        .rows()
        .forEach(row -> colours.put(row.text("colour"), row));
    Json oil = colours.get("motor oil");
    Json chalk = colours.get("chalk");
    assertTrue(chalk.number("raw_per_hour") > oil.number("raw_per_hour"), colours.toString());
    assertTrue(oil.number("trust") > chalk.number("trust"), colours.toString());
  }

  @Test
  void itsBoundsAreTheStandardOnes() throws IOException {
    String page = Files.readString(PAGE);
    for (Setting bound :
        List.of(Setting.TRUSTED_FROM, Setting.PROMISING_FROM, Setting.DOUBTFUL_TO)) {
      long percent = Math.round(Double.parseDouble(bound.standard()) * 100);
      assertTrue(page.contains("| " + percent + " % or "), bound + ": " + percent);
    }
  }
}
