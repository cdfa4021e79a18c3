package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import traytally.cli.Ran;
import traytally.ledger.Fact.Offered;
import traytally.ledger.Offer;
import traytally.plastic.Plastic;
import traytally.sheet.SharedFolder;
import traytally.store.Box;

/** Lists people kept before there was a program, each with what a careful reader finds in it. */
class SamplesTest {
  private static final Pattern ARGUMENT = Pattern.compile("'([^']*)'|\\S+");

  @TempDir Path folder;

  static List<Path> samples() throws IOException {
    try (Stream<Path> folders = Files.list(SharedFolder.require("samples"))) {
      return folders.filter(f -> Files.exists(f.resolve("truth.json"))).sorted().toList();
    }
  }

  private Ran run(Path sample) throws IOException {
    List<String> args = new ArrayList<>();
    ARGUMENT
        .matcher(Files.readString(sample.resolve("args.txt")).strip())
        .results()
        .forEach(found -> args.add(found.group(1) == null ? found.group() : found.group(1)));
    args.replaceAll(arg -> isFile(sample, arg) ? sample.resolve(arg).toString() : arg);
    args.addAll(List.of("--format", "json"));
    return Ran.in(folder, args.toArray(String[]::new));
  }

  private static boolean isFile(Path sample, String arg) {
    return Files.isRegularFile(sample.resolve(arg));
  }

  private Json json(String... command) {
    List<String> args = new ArrayList<>(List.of(command));
    args.addAll(List.of("--format", "json"));
    Ran ran = Ran.in(folder, args.toArray(String[]::new));
    assertEquals(0, ran.code(), ran.err());
    return Json.parse(ran.out());
  }

  @ParameterizedTest
  @MethodSource("samples")
  void aSampleReadsAsACarefulPersonReadsIt(Path sample) throws IOException {
    Json truth = Json.parse(Files.readString(sample.resolve("truth.json")));
    Ran ran = run(sample);
    assertEquals(0, ran.code(), ran.err());
    Json report = Json.parse(ran.out());
    assertEquals(truth.text("kind"), report.text("kind"));
    assertEquals(
        report.number("rows_read"), report.number("rows_taken") + report.number("rows_skipped"));
    assertEquals(rows(truth, "problems"), reported(report, "problem"), ran.out());
    if (truth.yes("approximate_must_be_reported")) {
      assertEquals(rows(truth, "approximate"), reported(report, "approximate"), ran.out());
    }
    if (truth.has("box")) {
      assertEquals(pieces(truth.rows("box")), pieces(json("box").rows()));
    }
    if (truth.has("log")) {
      checkLog(truth.object("log"));
    }
    if (truth.has("offers")) {
      assertEquals(offers(truth), offersInTheBox());
    }
  }

  private static Set<Integer> rows(Json truth, String key) {
    Set<Integer> rows = new TreeSet<>();
    if (truth.has(key)) {
      truth.rows(key).forEach(row -> rows.add((int) row.number("row")));
    }
    return rows;
  }

  private static Set<Integer> reported(Json report, String severity) {
    Set<Integer> rows = new TreeSet<>();
    report.rows().stream()
        .filter(row -> row.text("severity").equals(severity))
        .forEach(row -> rows.add((int) row.number("row")));
    return rows;
  }

  private static Map<Plastic, Integer> pieces(List<Json> rows) {
    Map<Plastic, Integer> pieces = new TreeMap<>();
    rows.forEach(row -> pieces.put(plastic(row, ""), (int) row.number("pieces")));
    return pieces;
  }

  private static Plastic plastic(Json row, String maker) {
    int lengthMm = (int) row.number("length_mm");
    return Plastic.of(maker, row.text("body"), row.text("colour"), lengthMm);
  }

  private void checkLog(Json log) {
    List<Json> stints = json("trips").rows();
    assertEquals(log.number("stints"), stints.size());
    for (String key : List.of("minutes", "takes", "hooked", "landed", "lost")) {
      double sum = stints.stream().mapToDouble(stint -> stint.number(key)).sum();
      assertEquals(log.number(key), sum, 0, key);
    }
    List<String> dates = stints.stream().map(s -> s.text("date")).distinct().sorted().toList();
    assertEquals(log.texts("dates"), dates);
    Map<Plastic, Double> lost = new TreeMap<>();
    stints.stream()
        .filter(stint -> stint.number("lost") > 0)
        .forEach(stint -> lost.merge(plastic(stint, ""), stint.number("lost"), Double::sum));
    Map<Plastic, Double> wanted = new TreeMap<>();
    log.rows("lost_by_plastic").forEach(row -> wanted.put(plastic(row, ""), row.number("lost")));
    assertEquals(wanted, lost);
  }

  private static Set<String> offers(Json truth) {
    Set<String> offers = new TreeSet<>();
    for (Json offer : truth.rows("offers")) {
      offers.add(
          offer.text("shop")
              + ": "
              + plastic(offer, offer.text("maker"))
              + ", "
              + (int) offer.number("pack_size")
              + " at "
              + offer.text("pack_price")
              + " "
              + offer.text("currency")
              + (offer.yes("in_stock") ? "" : ", sold out"));
    }
    return sameCase(offers);
  }

  private Set<String> offersInTheBox() {
    Set<String> offers = new TreeSet<>();
    try (Box box = Box.open(folder.resolve("tray.box"), Clock.systemUTC())) {
      for (Offered offered : box.book().facts(Offered.class)) {
        Offer offer = offered.offer();
        offers.add(
            offer.shop()
                + ": "
                + offer.plastic()
                + ", "
                + offer.packSize()
                + " at "
                + offer.packPrice()
                + (offer.inStock() ? "" : ", sold out"));
      }
    }
    assertFalse(offers.isEmpty());
    return sameCase(offers);
  }

  /** Capitals never count in names. */
  private static Set<String> sameCase(Set<String> lines) {
    Set<String> same = new TreeSet<>();
    lines.forEach(line -> same.add(line.toLowerCase(Locale.ROOT)));
    return same;
  }
}
