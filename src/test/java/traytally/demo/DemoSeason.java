package traytally.demo;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * Two invented years on an invented coast: what an angler did, and what a tray and a log would say.
 *
 * <p>The truth behind it is chosen for the story: motor oil, kelp green and rust out-fish the rest,
 * coral pink does not. The angler starts with a favourite, rotates, and goes back to what did best.
 */
final class DemoSeason {
  static final LocalDate COUNTED = LocalDate.of(2026, 3, 15);
  private static final LocalDate RAN_OUT = LocalDate.of(2026, 4, 5);
  private static final LocalDate FIRST = LocalDate.of(2024, 5, 4);
  private static final LocalDate LAST = LocalDate.of(2026, 4, 26);
  private static final int TRIPS = 70;
  private static final long SEED = 20260501;

  /** Log rate of each colour against the middle of the tray. */
  private static final Map<String, Double> COLOURS = new LinkedHashMap<>();

  /** Pieces used in a rod-hour, by body style. */
  private static final Map<String, Double> BODIES =
      Map.of("paddle tail", 0.75, "curl tail", 0.65, "stick", 0.4, "sandeel", 0.55, "craw", 0.95);

  static {
    COLOURS.put("motor oil", 0.80);
    COLOURS.put("kelp green", 0.70);
    COLOURS.put("rust", 0.55);
    COLOURS.put("amber", 0.25);
    COLOURS.put("bone", 0.15);
    COLOURS.put("ink", 0.10);
    COLOURS.put("smoke", 0.0);
    COLOURS.put("moss", 0.0);
    COLOURS.put("copper", 0.0);
    COLOURS.put("plum", -0.1);
    COLOURS.put("sand", -0.1);
    COLOURS.put("slate", -0.2);
    COLOURS.put("chalk", -0.3);
    COLOURS.put("lemon", -0.5);
    COLOURS.put("coral pink", -1.3);
    COLOURS.put("dusk", 0.2);
  }

  record Kind(String maker, String body, String colour, int lengthMm, int left, String tray) {}

  record Fished(
      LocalDate date,
      String water,
      String fish,
      String clarity,
      Kind kind,
      int minutes,
      int follows,
      int takes,
      int hooked,
      int landed,
      int lost,
      String how,
      int worn,
      String note) {}

  private final Random random = new Random(SEED);
  private final List<Kind> tray = new ArrayList<>();
  private final List<Fished> log = new ArrayList<>();
  private final Map<Kind, int[]> evidence = new HashMap<>();

  DemoSeason() {
    fillTray();
    for (LocalDate day : days()) {
      fish(day);
    }
  }

  List<Kind> tray() {
    return tray;
  }

  List<Fished> log() {
    return log;
  }

  /** Pieces the list of {@link #COUNTED} showed: what is left now and what went since. */
  int counted(Kind kind) {
    return kind.left()
        + log.stream()
            .filter(f -> f.kind().equals(kind) && !f.date().isBefore(COUNTED))
            .mapToInt(f -> f.lost() + f.worn())
            .sum();
  }

  private void fillTray() {
    String[][] bodies = {
      {"Brackwell", "paddle tail", "75", "A"},
      {"Brackwell", "paddle tail", "100", "A"},
      {"Ottermoss", "curl tail", "90", "B"},
      {"Ottermoss", "craw", "70", "B"},
      {"Quillan Bay", "sandeel", "115", "C"},
      {"Quillan Bay", "stick", "127", "C"},
    };
    List<String> colours = List.copyOf(COLOURS.keySet());
    for (int b = 0; b < bodies.length; b++) {
      for (int c = 0; c < colours.size() - 1; c++) {
        if ((c + 2 * b) % 3 != 2 || (c < 3 && b < 4) || (b == 0 && c == colours.size() - 2)) {
          int left = 4 + random.nextInt(9);
          add(bodies[b], colours.get(c), left);
        }
      }
    }
    add(bodies[0], "dusk", 8);
    add(bodies[4], "dusk", 6);
  }

  private void add(String[] body, String colour, int left) {
    String plastic = body[1] + " " + colour + " " + body[2];
    int pieces =
        switch (plastic) {
          case "paddle tail motor oil 75" -> 3;
          case "paddle tail motor oil 100" -> 9;
          case "curl tail kelp green 90" -> 0;
          case "paddle tail kelp green 75" -> 6;
          case "sandeel rust 115" -> 1;
          case "paddle tail amber 75", "curl tail bone 90" -> 1;
          case "paddle tail coral pink 75" -> 40;
          default -> left;
        };
    int lengthMm = Integer.parseInt(body[2]);
    tray.add(new Kind(body[0], body[1], colour, lengthMm, pieces, body[3]));
  }

  private List<LocalDate> days() {
    List<LocalDate> weekends = new ArrayList<>();
    for (LocalDate d = FIRST; !d.isAfter(LAST); d = d.plusDays(1)) {
      boolean winter = d.getMonthValue() <= 2 || d.getMonthValue() == 12;
      boolean weekend =
          d.getDayOfWeek() == DayOfWeek.SATURDAY || d.getDayOfWeek() == DayOfWeek.SUNDAY;
      if (weekend && !(winter && d.getDayOfMonth() > 7)) {
        weekends.add(d);
      }
    }
    List<LocalDate> days = new ArrayList<>();
    for (int i = 0; i < TRIPS; i++) {
      days.add(weekends.get(i * (weekends.size() - 1) / (TRIPS - 1)));
    }
    return days;
  }

  private void fish(LocalDate day) {
    String[][] marks = {
      {"Gannet Stack", "pollack"},
      {"Merrow Point", "wrasse"},
      {"Pell Estuary", "bass"},
      {"Old Slip", "bass"},
      {"Black Ledge", "pollack"},
    };
    String[] mark = marks[random.nextInt(marks.length)];
    boolean estuary = mark[1].equals("bass");
    String clarity =
        List.of("clear", "clear", "stained", estuary ? "dirty" : "cloudy").get(random.nextInt(4));
    double dayRate = 1.3 * Math.exp(0.6 * random.nextGaussian());
    int stints = 3 + random.nextInt(4);
    Map<Kind, Double> today = new HashMap<>();
    for (int s = 0; s < stints; s++) {
      Kind kind = choose(day, s, stints, mark[1], today);
      int minutes = 5 * (5 + random.nextInt(7));
      double hours = minutes / 60.0;
      double rate =
          dayRate * Math.exp(COLOURS.getOrDefault(kind.colour(), 0.0)) * bodyRate(kind.body());
      int takes = poisson(rate * hours * gamma(2.5) / 2.5);
      int hooked = binomial(takes, 0.65);
      int landed = binomial(hooked, 0.8);
      int follows = poisson(0.7 * rate * hours);
      double use = BODIES.getOrDefault(kind.body(), 0.5) * (estuary ? 0.6 : 1.25) * hours;
      int lost = Math.max(s == 0 ? springLoss(day) : 0, poisson(use * 0.8));
      int worn = poisson(use * 0.2);
      today.merge(kind, takes / hours, Math::max);
      int[] seen = evidence.computeIfAbsent(kind, k -> new int[2]);
      seen[0] += takes;
      seen[1] += minutes;
      log.add(
          new Fished(
              day,
              mark[0],
              mark[1],
              clarity,
              kind,
              minutes,
              follows,
              takes,
              hooked,
              landed,
              lost,
              lost == 0
                  ? ""
                  : estuary ? "snagged" : pick("snagged", "snagged", "bitten off", "torn"),
              worn,
              ""));
    }
  }

  /** First a favourite, in between something else, in the end what did best today. */
  private Kind choose(LocalDate day, int stint, int stints, String fish, Map<Kind, Double> today) {
    if (stint == 0 && day.isAfter(COUNTED)) {
      return day.isBefore(RAN_OUT) ? kind("curl tail kelp green") : kind("paddle tail motor oil");
    }
    List<Kind> usable = tray.stream().filter(k -> usable(k, day, fish)).toList();
    if (stint > 1 && stint == stints - 1 && !today.isEmpty()) {
      return today.entrySet().stream()
          .max(Map.Entry.<Kind, Double>comparingByValue().thenComparing(e -> e.getKey().toString()))
          .orElseThrow()
          .getKey();
    }
    if (stint == 0 && random.nextDouble() < 0.75) {
      return usable.stream()
          .filter(k -> evidence.getOrDefault(k, new int[2])[1] >= 60)
          .sorted(Comparator.comparingDouble(this::known).reversed())
          .skip(random.nextInt(3))
          .findFirst()
          .orElse(usable.get(random.nextInt(usable.size())));
    }
    return usable.get(random.nextInt(usable.size()));
  }

  /** The first of the tray's plastics with this body and colour. */
  private Kind kind(String bodyAndColour) {
    return tray.stream()
        .filter(k -> (k.body() + " " + k.colour()).equals(bodyAndColour))
        .findFirst()
        .orElseThrow();
  }

  /** The story of the last spring: two favourites go, a snag at a time. */
  private static int springLoss(LocalDate day) {
    return day.isAfter(COUNTED) ? 2 : 0;
  }

  private boolean usable(Kind kind, LocalDate day, String fish) {
    boolean ranOut = kind.left() == 0 && !day.isBefore(RAN_OUT);
    boolean untried = kind.colour().equals("dusk");
    boolean wrongFish = kind.body().equals("craw") && !fish.equals("wrasse");
    return !ranOut && !untried && !wrongFish;
  }

  private double known(Kind kind) {
    int[] seen = evidence.getOrDefault(kind, new int[2]);
    return (seen[0] + 1.0) / (seen[1] + 60.0);
  }

  private static double bodyRate(String body) {
    return switch (body) {
      case "paddle tail" -> 1.15;
      case "sandeel" -> 1.1;
      case "stick" -> 0.85;
      default -> 1.0;
    };
  }

  private String pick(String... words) {
    return words[random.nextInt(words.length)];
  }

  /** Knuth's product of uniforms; the means here are small. */
  private int poisson(double mean) {
    double limit = Math.exp(-mean);
    int count = 0;
    for (double product = random.nextDouble(); product > limit; product *= random.nextDouble()) {
      count++;
    }
    return count;
  }

  private int binomial(int n, double chance) {
    int count = 0;
    for (int i = 0; i < n; i++) {
      count += random.nextDouble() < chance ? 1 : 0;
    }
    return count;
  }

  /** Marsaglia and Tsang's method for shape 1 or more, ACM TOMS 26 (2000) 363. */
  private double gamma(double shape) {
    double d = shape - 1.0 / 3;
    double c = 1 / Math.sqrt(9 * d);
    while (true) {
      double x = random.nextGaussian();
      double v = Math.pow(1 + c * x, 3);
      if (v > 0 && Math.log(random.nextDouble()) < 0.5 * x * x + d - d * v + d * Math.log(v)) {
        return d * v;
      }
    }
  }
}
