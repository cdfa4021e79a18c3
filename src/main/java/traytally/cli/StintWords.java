package traytally.cli;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import traytally.ledger.MovementKind;
import traytally.plastic.Plastic;
import traytally.report.Words;
import traytally.trip.Fish;
import traytally.trip.LossCause;
import traytally.trip.Stint;
import traytally.trip.Trip;

/**
 * A stint as typed: {@code paddle 75 motor oil 60m 3t 2h 2l -1 snag}. Counts may stand anywhere;
 * what is left names the plastic. A name in quotes is taken as it stands, whatever is in it.
 */
final class StintWords {
  /** A day has no more minutes, nor a rod. */
  private static final int DAY_MINUTES = 24 * 60;

  /** More than one stint ever sees: a slip of the hand (common practice). */
  private static final int MOST = 2000;

  private enum Count {
    MINUTES("minutes?|mins?|m"),
    CASTS("casts?|c"),
    FOLLOWS("follows?|f"),
    TAKES("takes?|t"),
    HOOKED("hooked|h"),
    LANDED("landed|l"),
    RODS("rods?|r");

    private final Pattern pattern;

    Count(String words) {
      // A letter stands at its number ("3t"); a word may stand apart from it ("3 takes").
      String apart = words.substring(0, words.lastIndexOf('|'));
      String letter = words.substring(words.lastIndexOf('|') + 1);
      pattern =
          Pattern.compile("(?<!\\S)(\\d{1,6})(?:\\s*(?:" + apart + ")|" + letter + ")(?![^\\s,])");
    }

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  private static final Pattern CLOCK = Pattern.compile("(?<!\\S)(\\d{1,2}):(\\d\\d)(?![^\\s,])");
  private static final Pattern LOSS =
      Pattern.compile(
          "(?<!\\S)-(\\d{1,4})(?:\\s*(snag(?:s|ged)?|bite(?:[ -]?off)?|bitten(?:[ -]?off)?|torn"
              + "|cast(?:[ -]?off)?|worn(?:[ -]?out)?|lost))?(?![^\\s,])");

  /** An inch mark stands behind its number, and opens no quote. */
  private static final Pattern QUOTED = Pattern.compile("(?<!\\S)\"([^\"]+)\"(?![^\\s,])");

  private static final Pattern LOST_SOMEHOW = Pattern.compile("-\\d+");

  private final Map<Count, Integer> counts = new EnumMap<>(Count.class);
  private final TreeSet<LossCause> causes = new TreeSet<>();

  /** The counts as typed, in the order read. */
  private final List<String> typed = new ArrayList<>();

  private final String quoted;
  private String rest;
  private int lost;
  private int worn;

  private StintWords(String text) {
    Matcher name = QUOTED.matcher(text);
    quoted = name.find() ? name.group(1) : "";
    rest = (quoted.isEmpty() ? text : name.replaceFirst(" ")).toLowerCase(Locale.ROOT);
    rest = rest.replace('"', ' ');
  }

  /**
   * Reads the text of one stint.
   *
   * @throws Refusal if its counts cannot be
   */
  static StintWords parse(String text) {
    StintWords words = new StintWords(text);
    words.takeClock();
    for (Count count : Count.values()) {
      words.take(count);
    }
    words.takeLosses();
    words.fillFish();
    if (words.plastic().isEmpty()) {
      throw new Refusal(Exit.DATA, "it names no plastic. Write its row or words of its name.");
    }
    return words;
  }

  /** What is left once the counts are taken out: the plastic. */
  String plastic() {
    return (quoted + " " + rest).strip().replaceAll("\\s+", " ");
  }

  /** Whether it says nothing but the plastic. */
  boolean isBare() {
    return typed.isEmpty();
  }

  /** Whether pieces were lost and nothing says how. */
  boolean asksHow() {
    return typed.stream().anyMatch(LOST_SOMEHOW.asMatchPredicate());
  }

  /** The same stint, where what was lost somehow was lost as {@code how} says. */
  String text(Plastic plastic, String how) {
    return text(
        plastic,
        typed.stream().map(t -> LOST_SOMEHOW.matcher(t).matches() ? t + " " + how : t).toList());
  }

  /** The same stint in words that name {@code plastic} and no other. */
  String text(Plastic plastic) {
    return text(plastic, typed);
  }

  private static String text(Plastic plastic, List<String> counts) {
    return (PlasticNames.quoted(plastic) + " " + String.join(" ", counts)).strip();
  }

  /** What several stints come to, in words. */
  static String tally(Collection<StintWords> stints) {
    StintWords all = new StintWords("");
    for (StintWords stint : stints) {
      stint.counts.forEach((count, number) -> all.counts.merge(count, number, Integer::sum));
      all.lost += stint.lost;
      all.worn += stint.worn;
      all.causes.addAll(stint.causes);
    }
    all.counts.remove(Count.RODS);
    return Words.count(stints.size(), "stint") + ": " + all.said();
  }

  /** Where the last count of an unfinished stint ends, and more of the name may begin. */
  static int afterCounts(String before) {
    String text = before.toLowerCase(Locale.ROOT);
    List<Pattern> counted = new ArrayList<>(List.of(CLOCK, LOSS));
    for (Count count : Count.values()) {
      counted.add(count.pattern);
    }
    int end =
        counted.stream()
            .flatMap(pattern -> pattern.matcher(text).results())
            .mapToInt(MatchResult::end)
            .max()
            .orElse(0);
    while (end < text.length() && Character.isWhitespace(text.charAt(end))) {
      end++;
    }
    return end;
  }

  /** The words of an unfinished stint that are no counts. */
  static String nameIn(String before) {
    StintWords words = new StintWords(before);
    words.rest = CLOCK.matcher(words.rest).replaceAll(" ");
    for (Count count : Count.values()) {
      words.rest = count.pattern.matcher(words.rest).replaceAll(" ");
    }
    words.rest = LOSS.matcher(words.rest).replaceAll(" ");
    return words.plastic();
  }

  private void takeClock() {
    Matcher clock = CLOCK.matcher(rest);
    if (clock.find()) {
      put(Count.MINUTES, Integer.parseInt(clock.group(1)) * 60 + Integer.parseInt(clock.group(2)));
      typed.add(clock.group());
      rest = clock.replaceFirst(" ");
    }
  }

  private void take(Count count) {
    for (MatchResult found : count.pattern.matcher(rest).results().toList()) {
      put(count, Integer.parseInt(found.group(1)));
      typed.add(found.group());
    }
    rest = count.pattern.matcher(rest).replaceAll(" ");
  }

  private void put(Count count, int number) {
    if (counts.put(count, number) != null) {
      throw new Refusal(Exit.DATA, "it says its " + count.word() + " twice.");
    }
    if (number > (count == Count.MINUTES ? DAY_MINUTES : MOST)) {
      throw new Refusal(Exit.DATA, number + " " + count.word() + " are too many to believe.");
    }
  }

  private void takeLosses() {
    for (MatchResult found : LOSS.matcher(rest).results().toList()) {
      typed.add(found.group());
      int pieces = Integer.parseInt(found.group(1));
      Gone gone =
          Optional.ofNullable(found.group(2)).map(LossWords::required).orElse(LossWords.UNKNOWN);
      if (gone.kind() == MovementKind.WORN) {
        worn += pieces;
      } else {
        lost += pieces;
        gone.how().ifPresent(causes::add);
      }
    }
    rest = LOSS.matcher(rest).replaceAll(" ");
    if (lost > MOST || worn > MOST) {
      throw new Refusal(Exit.DATA, "it lost too many to believe.");
    }
  }

  /** A landed fish was hooked, and a hooked one took: what is not said follows. */
  private void fillFish() {
    int landed = counts.getOrDefault(Count.LANDED, 0);
    int hooked = counts.getOrDefault(Count.HOOKED, landed);
    int takes = counts.getOrDefault(Count.TAKES, hooked);
    if (landed > hooked || hooked > takes) {
      throw new Refusal(
          Exit.DATA,
          "%d takes, %d hooked, %d landed cannot be: every landed fish was hooked, every hooked one took."
              .formatted(takes, hooked, landed));
    }
    counts.put(Count.TAKES, takes);
    counts.put(Count.HOOKED, hooked);
    counts.put(Count.LANDED, landed);
  }

  Stint stint(TripWords trip, Plastic plastic) {
    int rods = counts.getOrDefault(Count.RODS, trip.rods().orElse(1));
    if (rods < 1) {
      throw new Refusal(Exit.DATA, "at least one rod fishes.");
    }
    return new Stint(
        new Trip(trip.date(), trip.water()),
        trip.species(),
        trip.clarity(),
        plastic,
        counts.containsKey(Count.MINUTES)
            ? OptionalDouble.of(counts.getOrDefault(Count.MINUTES, 0))
            : OptionalDouble.empty(),
        counts.containsKey(Count.CASTS)
            ? OptionalInt.of(counts.getOrDefault(Count.CASTS, 0))
            : OptionalInt.empty(),
        new Fish(
            counts.getOrDefault(Count.FOLLOWS, 0),
            counts.getOrDefault(Count.TAKES, 0),
            counts.getOrDefault(Count.HOOKED, 0),
            counts.getOrDefault(Count.LANDED, 0)),
        lost,
        causes.size() == 1 ? Optional.of(causes.first()) : Optional.empty(),
        worn,
        rods,
        causes.size() > 1 ? "lost: " + causeWords() : "");
  }

  private String causeWords() {
    return causes.stream().map(LossCause::word).collect(Collectors.joining(", "));
  }

  /** What was understood beside the plastic: {@code 60 minutes, 3 takes, 2 hooked, 1 lost}. */
  String said() {
    List<String> said = new ArrayList<>();
    for (Count count : Count.values()) {
      int number = counts.getOrDefault(count, 0);
      if (number > 0) {
        said.add(number + " " + (number == 1 ? count.word().replaceFirst("s$", "") : count.word()));
      }
    }
    if (counts.getOrDefault(Count.TAKES, 0) == 0) {
      said.add("no takes");
    }
    if (lost > 0) {
      said.add(lost + " lost" + (causes.isEmpty() ? "" : " (" + causeWords() + ")"));
    }
    if (worn > 0) {
      said.add(worn + " worn");
    }
    return String.join(", ", said);
  }
}
