package traytally.intake;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.trip.LossCause;

/**
 * A line of a diary taken apart: the plastic, what it tells of the stint, and what is left.
 *
 * @param told what stands beside the plastic, the time in minutes
 * @param left words that tell none of it
 * @param fishLost words of fish that got off, which are no lost pieces
 * @param guess the time in words where it is a guess
 */
record StintLine(
    Anatomy plastic,
    Map<Field, String> told,
    List<String> left,
    Optional<String> fishLost,
    Optional<String> guess) {
  private static final String N = "(?:\\d+|an?|the|some|" + String.join("|", Numbers.WORDS) + ")";

  private static final String FISH =
      String.join(
          "|",
          "\\b(?:lost|dropped) " + N + " (?:\\p{L}+ ){0,2}fish\\b",
          "\\blost " + N + " (?:\\p{L}+ ){0,2}at the (?:net|boat|surface|side|bank|edge|top)\\b",
          "\\b" + N + " (?:fish )?(?:lost at the net|dropped)\\b",
          "\\b" + N + " fish (?:lost|off)\\b",
          "\\bdropped (?:\\d+|" + String.join("|", Numbers.WORDS) + ")\\b");

  private static final Pattern FISH_LOST = Pattern.compile(FISH, Pattern.CASE_INSENSITIVE);

  /** Words for a stint that brought nothing, on their own. */
  private static final Pattern NOTHING =
      Pattern.compile(
          "(?:nothing|nowt|zilch|nil|none|not a (?:touch|take|bite|knock|sniff|thing|nibble)"
              + "|no (?:interest|joy|luck|action|touches|response))"
              + "(?: (?:at all|doing|doin|to show(?: for it)?|whatsoever))?",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern BLANK =
      Pattern.compile("(?:(?:a )?blank(?:ed)?|skunked)", Pattern.CASE_INSENSITIVE);

  /** What took a piece, right behind the number lost. */
  private static final Pattern CAUSE =
      Pattern.compile(
          "\\|\\s*(\\([^()\\d]+\\)|(?:to|in|on|under|round|off|by)\\s+(?:(?:the|an?|some|my)\\s+)?\\p{L}+"
              + "|snagged(?: up| off)?|bitten off|bit off|torn|cast off)",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern PIECES = Pattern.compile(Pattern.quote("" + StintCounts.TAKEN));
  private static final Pattern BETWEEN = Pattern.compile("[,;]|\\s-\\s|\\.\\s");

  /** A number that stands alone in what would be a name. */
  private static final Pattern BARE_NUMBER = Pattern.compile("(?:.* )?\\d+(?: .*)?");

  /** Takes {@code text} apart. */
  static StintLine of(String text) {
    String plain = NoteLines.withoutBullet(Numbers.plain(text)).replaceFirst("[.!\\s]+$", "");
    Map<Field, String> told = new EnumMap<>(Field.class);
    TimeWithin time = TimeWithin.of(plain);
    time.minutes().ifPresent(minutes -> told.put(Field.MINUTES, minutes));
    String timed = time.rest();
    Matcher fish = FISH_LOST.matcher(timed);
    Optional<String> fishLost = fish.find() ? Optional.of(fish.group()) : Optional.empty();
    StintCounts counts = StintCounts.of(fish.replaceAll(String.valueOf(StintCounts.TAKEN)));
    counts.told().forEach(told::putIfAbsent);
    String rest =
        counts.told().containsKey(Field.LOST) ? cause(counts.rest(), told) : counts.rest();
    Optional<String> guess = Optional.of(time.words()).filter(words -> time.guess());
    return parted(rest, told).said(fishLost, guess);
  }

  /** What is left of a line once its numbers are taken out, sorted into plastic and remarks. */
  private static StintLine parted(String rest, Map<Field, String> told) {
    List<String> words = new ArrayList<>();
    List<String> left = new ArrayList<>();
    Anatomy plastic = Anatomy.of("");
    boolean behind = false;
    for (String piece : PIECES.split(rest, -1)) {
      for (String untidy : BETWEEN.split(piece, -1)) {
        String part = untidy.replaceAll("^[\\s-]+|[\\s-]+$", "");
        if (!part.isEmpty() && !tellsNothing(part, told)) {
          boolean lure = !behind || (!plastic.isWhole() && namesLure(part));
          (lure ? words : left).add(part);
          plastic = plastic(words);
        }
      }
      behind = true;
    }
    return withoutTail(String.join(" ", words), plastic, told, left);
  }

  /** Words behind the length are a remark where those before it tell the whole plastic. */
  private static StintLine withoutTail(
      String words, Anatomy plastic, Map<Field, String> told, List<String> left) {
    int end = Anatomy.lengthEnd(words);
    String tail = end < 0 ? "" : words.substring(end).strip();
    Anatomy before = Anatomy.of(end < 0 ? "" : words.substring(0, end).toLowerCase(Locale.ROOT));
    if (tail.isEmpty() || namesLure(tail) || !before.isWhole()) {
      return new StintLine(plastic, told, left, Optional.empty(), Optional.empty());
    }
    left.add(0, tail);
    return new StintLine(before, told, left, Optional.empty(), Optional.empty());
  }

  private StintLine said(Optional<String> fish, Optional<String> time) {
    return new StintLine(plastic, told, left, fish, time);
  }

  /** Puts down what took the pieces lost, and takes it out of {@code rest}. */
  private static String cause(String rest, Map<Field, String> told) {
    Matcher cause = CAUSE.matcher(rest);
    while (cause.find()) {
      Optional<LossCause> how = how(cause.group(1));
      if (how.isPresent()) {
        told.put(Field.LOST_HOW, how.get().word());
        return rest.substring(0, cause.start() + 1) + rest.substring(cause.end());
      }
    }
    return rest;
  }

  private static Optional<LossCause> how(String words) {
    String last = words.substring(words.lastIndexOf(' ') + 1).toLowerCase(Locale.ROOT);
    return FishByKind.namesKind(last) ? Optional.of(LossCause.BITTEN_OFF) : Words.lossCause(words);
  }

  /** Puts down that a part says nothing was caught, if it says so. */
  private static boolean tellsNothing(String part, Map<Field, String> told) {
    if (NOTHING.matcher(part).matches()) {
      told.putIfAbsent(Field.TAKES, "0");
      return true;
    }
    if (BLANK.matcher(part).matches()) {
      told.putIfAbsent(Field.LANDED, "0");
      return true;
    }
    return false;
  }

  private static boolean namesLure(String part) {
    return Anatomy.bodyWords(part) > 0
        || Anatomy.colourWords(part) > 0
        || Lengths.parse(part).filter(length -> length.unit().isPresent()).isPresent();
  }

  /** A comma may part a shape from a colour where no word of either is known. */
  private static Anatomy plastic(List<String> words) {
    Anatomy joined = Anatomy.of(String.join(" ", words).toLowerCase(Locale.ROOT));
    if (joined.isWhole()) {
      return joined;
    }
    Anatomy parted = Anatomy.of(String.join(", ", words).toLowerCase(Locale.ROOT));
    return parted.isWhole() && !parted.length().isEmpty() ? parted : joined;
  }

  /** Whether it names one plastic, tells what came of it, and tells of no other. */
  boolean isStint() {
    return plastic.isWhole()
        && plastic.quantity().isEmpty()
        && !BARE_NUMBER.matcher(plastic.colour()).matches()
        && !told.isEmpty()
        && left.stream().noneMatch(StintLine::tellsMore);
  }

  private static boolean tellsMore(String part) {
    Map<Field, String> counts = new EnumMap<>(Field.class);
    counts.putAll(StintCounts.of(part).told());
    counts.remove(Field.MINUTES);
    return !counts.isEmpty()
        || Anatomy.of(part).isWhole()
        || (Anatomy.lengthEnd(part) >= 0 && Anatomy.bodyWords(part) > 0);
  }

  /** Whether it seems to tell of a stint, though not of which plastic. */
  boolean mayBeStint() {
    boolean lure = !plastic.body().isEmpty() || left.stream().anyMatch(StintLine::namesLure);
    return !told.isEmpty() && (lure || told.containsKey(Field.MINUTES));
  }
}
