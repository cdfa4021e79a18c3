package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.function.IntPredicate;
import org.apache.commons.numbers.gamma.LogGamma;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/**
 * Every number of the shopping list, worked out again from what {@code why} shows: by the formulas
 * of docs/trust-and-use.md, with a general-purpose library (Apache Commons Statistics and Numbers)
 * and plain sums, none of the program's own code.
 */
class WhyTest {
  /** JSON numbers have six significant digits. */
  private static final double ROUNDED = 2e-4;

  @TempDir Path folder;

  @BeforeEach
  void importTheDemo() {
    Ran.importDemo(folder);
  }

  private Json why(Json line) {
    String name =
        line.text("body") + " " + line.text("colour") + " " + (int) line.number("length_mm");
    Ran ran = Ran.in(folder, "why", name, "--format", "json");
    assertEquals(0, ran.code(), ran.err());
    return Json.parse(ran.out());
  }

  @Test
  void everyNumberOfALineFollowsFromWhatWhyShows() {
    Json list = Json.parse(Ran.in(folder, "restock", "--format", "json").out());
    assertTrue(list.rows().size() >= 3);
    for (Json line : list.rows()) {
      Json why = why(line);
      assertEquals(list.number("trips_counted"), why.rows().size());
      trust(line, why);
      use(line, why);
      double total = line.number("packs") * line.numberOr("pack_size", 0);
      assertEquals(total, why.number("bought_pieces"));
      assertEquals(
          chance(
              why.number("expected_use_after"),
              why.number("use_variance_after"),
              (int) (line.number("pieces") + total)),
          line.number("run_out_after"),
          ROUNDED);
    }
  }

  private static void trust(Json line, Json why) {
    double trust =
        NormalDistribution.of(why.number("log_ratio_mean"), why.number("log_ratio_sd"))
            .survivalProbability(0);
    assertEquals(trust, line.number("trust"), ROUNDED);
    assertEquals(
        Math.exp(why.number("log_ratio_mean")),
        why.number("rate_ratio"),
        ROUNDED * why.number("rate_ratio"));
    assertEquals(
        why.number("takes") / (why.number("minutes") / 60), why.number("raw_per_hour"), 1e-3);
  }

  private static void use(Json line, Json why) {
    double mean = 0;
    double asItIs = 0;
    double variance = 0;
    double doubt = Math.exp(why.number("rate_variance")) * (1 + why.number("share_variance")) - 1;
    for (Json trip : why.rows()) {
      double share = trip.number("share");
      double m = trip.number("rod_hours") * share * trip.number("loss_per_hour");
      assertEquals(m, trip.number("expected_use"), ROUNDED);
      double spread = 1 + (1 - share) / (share * trip.number("turns"));
      mean += m;
      asItIs +=
          trip.number("rod_hours") * trip.number("share_as_it_is") * trip.number("loss_per_hour");
      variance +=
          m
              + m
                  * m
                  * (1 + doubt)
                  * ((1 + 1 / why.number("dispersion"))
                          * spread
                          * Math.exp(trip.number("day_variance"))
                      - 1);
    }
    variance += doubt * mean * mean;
    assertEquals(mean, line.number("expected_use"), ROUNDED);
    assertEquals(variance, why.number("use_variance"), ROUNDED * (1 + variance));
    assertEquals(asItIs, why.number("expected_use_as_it_is"), ROUNDED);
    int bound =
        first(
            n -> 1 - chance(why.number("expected_use"), why.number("use_variance"), n + 1) >= 0.9);
    assertEquals(bound, line.number("use_p90"));
    assertEquals(
        chance(
            why.number("expected_use_as_it_is"),
            why.number("use_variance_as_it_is"),
            (int) line.number("pieces")),
        line.number("run_out_chance"),
        ROUNDED);
  }

  private static int first(IntPredicate holds) {
    int n = 0;
    while (!holds.test(n)) {
      n++;
    }
    return n;
  }

  /** P(U ≥ pieces), U negative binomial with this mean and variance. */
  private static double chance(double mean, double variance, int pieces) {
    double size = mean * mean / (variance - mean);
    double below = 0;
    for (int u = 0; u < pieces; u++) {
      below +=
          Math.exp(
              LogGamma.value(u + size)
                  - LogGamma.value(size)
                  - LogGamma.value(u + 1)
                  + size * Math.log(size / (size + mean))
                  + u * Math.log(mean / (size + mean)));
    }
    return 1 - below;
  }

  @Test
  void theEvidenceAddsUp() {
    Json why = Json.parse(Ran.in(folder, "why", "sandeel bone 115", "--format", "json").out());
    double minutes = 0;
    double takes = 0;
    double own = 0;
    double expected = 0;
    int days = 0;
    for (Json day : why.rows("evidence")) {
      minutes += day.number("minutes");
      takes += day.number("takes");
      if (day.number("others_minutes") > 0) {
        own += day.number("takes");
        expected +=
            day.number("minutes") * day.number("others_takes") / day.number("others_minutes");
      }
      days++;
    }
    assertEquals(why.number("minutes"), minutes, 0.5);
    assertEquals(why.number("takes"), takes);
    assertEquals(why.number("days"), days);
    assertEquals(own / expected, why.number("same_day_ratio"), 1e-3);
    assertTrue(why.rows("conditions").size() > 4);
  }

  @Test
  void itReadsWellInEightyColumns() {
    Ran ran =
        Ran.with(
            Map.of("TRAYTALLY_BOX", folder.resolve("tray.box").toString(), "COLUMNS", "80"),
            "why",
            "sandeel bone 115");
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.out().contains("it 3.0 an hour █████·"), ran.out());
    ran.out().lines().forEach(line -> assertTrue(line.length() <= 80, line));
  }

  /** What would change the verdict does change it, once it has happened. */
  @Test
  void theDaysThatWouldChangeTheVerdictDo(@TempDir Path other) throws IOException {
    StringBuilder log =
        new StringBuilder("Date,Water,Body style,Colour,Length (mm),Minutes,Takes\n");
    for (int day = 1; day <= 6; day++) {
      String head = "2026-03-%02d,Gull Rocks,paddle tail,".formatted(day);
      log.append(head).append("ink,75,60,").append(day % 2 == 0 ? 3 : 2).append('\n');
      log.append(head).append("chalk,75,60,").append(day % 3 == 0 ? 3 : 2).append('\n');
      log.append(head).append("rust,75,30,1\n");
    }
    Json before = whyInk(other, log);
    assertEquals("trusted", before.text("change_to"));
    assertTrue(!before.text("standing").equals("trusted"), before.text("standing"));
    int days = (int) before.number("change_days");
    for (int day = 1; day < days; day++) {
      addDay(log, day, (int) before.number("change_takes"));
    }
    assertTrue(!whyInk(other, log).text("standing").equals("trusted"), "a day too few");
    addDay(log, days, (int) before.number("change_takes"));
    Json after = whyInk(other, log);
    assertEquals("trusted", after.text("standing"));
    assertEquals(0, after.number("change_takes"), "now days without a take would end it");
  }

  /** Chalk is the other colour fished most, with its usual two takes an hour. */
  private static void addDay(StringBuilder log, int day, int takes) {
    String head = "2026-03-%02d,Gull Rocks,paddle tail,".formatted(6 + day);
    String ink = head + "ink,75,60," + takes + "\n";
    String chalk = head + "chalk,75,60,2\n";
    log.append(day % 2 == 1 ? ink + chalk : chalk + ink);
  }

  private static Json whyInk(Path folder, StringBuilder log) throws IOException {
    Path file = folder.resolve("trips.csv");
    Files.writeString(file, log);
    Ran imported = Ran.in(folder, "import", file.toString());
    assertEquals(0, imported.code(), imported.err());
    Ran ran = Ran.in(folder, "why", "paddle ink 75", "--format", "json");
    assertEquals(0, ran.code(), ran.err());
    return Json.parse(ran.out());
  }

  @Test
  void wordsThatFitSeveralPlasticsListThem() {
    Ran ran = Ran.in(folder, "why", "motor", "oil");
    assertEquals(65, ran.code());
    assertTrue(ran.err().contains("paddle tail, motor oil, 75 mm"), ran.err());
    assertEquals("", ran.out());
  }

  @Test
  void wordsThatFitNothingAreRefused() {
    assertEquals(65, Ran.in(folder, "why", "submarine").code());
  }
}
