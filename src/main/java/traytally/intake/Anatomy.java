package traytally.intake;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A text that names a plastic in one breath, taken apart: {@code Paddle 75mm motor oil x6}.
 *
 * @param body the body style, empty if it cannot be told
 * @param colour the colour, empty if it cannot be told
 * @param length the length with its unit, empty if there is none
 * @param quantity the count, empty if there is none
 */
record Anatomy(String body, String colour, String length, String quantity) {
  private static final WordList LIST = WordList.read("words.txt");
  private static final Set<String> NOUNS = new TreeSet<>(LIST.words("body.noun"));
  private static final Set<String> ADJECTIVES = new TreeSet<>(LIST.words("body.adjective"));
  private static final Set<String> COLOURS = new TreeSet<>(LIST.words("colour.word"));

  private static final Pattern LENGTH =
      Pattern.compile(
          "(?<![\\w.,])(\\d+[ -]\\d/\\d|\\d/\\d|\\d+(?:[.,]\\d+)?)\\s*-?"
              + "(\"|''|(?:inches|inch|ins|in|mm|cm)(?![\\w]))\\.?",
          Pattern.CASE_INSENSITIVE);

  /** A bare number between words is a length in millimetres, as pieces stand at an end. */
  private static final Pattern BARE_MM =
      Pattern.compile("(?<=\\p{L}\\s)\\s*([3-9]\\d|1\\d\\d|2[0-4]\\d)(?=\\s+\\p{L})");

  private static final Pattern BARE_END =
      Pattern.compile("(.*\\p{L})\\s+([3-9]\\d|1\\d\\d|2[0-4]\\d)");

  private static final String PACKS = "(?:(?:full|sealed|new) )?(?:packs?|pks?|packets?|bags?)";

  /** A remark in brackets at the end, behind the count. */
  private static final Pattern REMARK = Pattern.compile("(.*\\S)\\s*\\([^()]*\\p{L}[^()]*\\)\\s*");

  /** A count at the end: x6, (6), - 6, : 6, = 2 packs of 8; or a count in front: 6 x, 6x. */
  private static final List<Pattern> COUNTS =
      List.of(
          Pattern.compile("(.*\\S)\\s*\\(\\s*x?\\s*([~\\d][^()]*|none|nil)\\)\\s*"),
          Pattern.compile(
              "(.*?\\S)\\s+((?:\\d+|an?|half an?|one|two|three)\\s+" + PACKS + "\\b.*)"),
          Pattern.compile("(.*?\\S)[\\s,;]+(" + PACKS + "\\s+of\\s+\\d+)\\s*"),
          Pattern.compile("(.*?\\S)\\s+(\\d+\\s*x\\s*\\d+.*)"),
          Pattern.compile("(.*\\S)\\s+[x*]\\s*(~?\\d+\\+?)\\s*"),
          Pattern.compile(
              "(.*\\S)\\s*(?:\\s-|[:=,;])\\s*((?:~|about|approx\\.?|around|ca?\\.?)?\\s*\\d.*|none.*|nil|a"
                  + " few|lots)"),
          Pattern.compile(
              "(.*\\S)\\s+(~?\\d+\\+?(?:\\s*(?:pcs|pieces|left|packs?|pks?|off))?)\\s*"),
          Pattern.compile(
              "(?i)(.*\\S)\\s+((?:none|nil|"
                  + String.join("|", Numbers.WORDS)
                  + ")(?: left)?)\\s*"));

  private static final Pattern COUNT_FIRST =
      Pattern.compile(
          "(~?\\d+\\+?)\\s*(?:x\\s|x(?=\\D)|off\\s|pcs\\s|\\s(?!\"|''|in|mm|cm|/))\\s*(.*\\S)");

  /** Takes {@code text} apart; what cannot be told is left empty. */
  static Anatomy of(String text) {
    String rest = NoteLines.withoutBullet(Numbers.plain(text));
    String quantity = "";
    Matcher first = COUNT_FIRST.matcher(rest);
    Matcher remark = REMARK.matcher(rest);
    Optional<String[]> last =
        countLast(rest).or(() -> remark.matches() ? countLast(remark.group(1)) : Optional.empty());
    if (first.matches()) {
      quantity = first.group(1);
      rest = first.group(2);
    } else if (last.isPresent()) {
      rest = last.get()[0];
      quantity = last.get()[1];
    }
    Matcher bare = BARE_MM.matcher(rest);
    if (!LENGTH.matcher(rest).find() && bare.find()) {
      rest = rest.substring(0, bare.end()) + " mm" + rest.substring(bare.end());
    }
    Matcher length = LENGTH.matcher(rest);
    if (!length.find()) {
      return split(rest, "", quantity);
    }
    if (LENGTH.matcher(rest.substring(length.end())).find()) {
      return new Anatomy("", "", "", quantity);
    }
    String before = tidy(rest.substring(0, length.start()));
    String after = tidy(rest.substring(length.end()));
    if (before.isEmpty() || after.isEmpty()) {
      return split(before + after, length.group(), quantity);
    }
    boolean bodyLast = bodyWords(after) > bodyWords(before);
    boolean lone = bodyWords(before) == 0 && bodyWords(after) == 0 && colourWords(before) > 0;
    return bodyLast || lone
        ? new Anatomy(after, before, length.group(), quantity)
        : new Anatomy(before, after, length.group(), quantity);
  }

  /** What stands before the count at the end of {@code text}, and the count. */
  private static Optional<String[]> countLast(String text) {
    for (Pattern pattern : COUNTS) {
      Matcher last = pattern.matcher(text);
      if (last.matches() && isCount(last.group(2))) {
        return Optional.of(new String[] {last.group(1), last.group(2)});
      }
    }
    return Optional.empty();
  }

  private static boolean isCount(String text) {
    return Lengths.parse(text).filter(l -> l.unit().isPresent()).isEmpty()
        && Quantities.parse(text, OptionalInt.of(1)).value().isPresent();
  }

  /** The length with its unit that stands in {@code text}, and the text without it. */
  static Optional<Anatomy> lengthWithin(String text) {
    String plain = Numbers.plain(text);
    Matcher length = LENGTH.matcher(plain);
    if (!length.find()) {
      return Optional.empty();
    }
    String rest =
        tidy(tidy(plain.substring(0, length.start())) + " " + tidy(plain.substring(length.end())));
    return rest.isEmpty()
        ? Optional.empty()
        : Optional.of(new Anatomy(rest, "", length.group(), ""));
  }

  /** The same where a bare number of millimetres ends the text: {@code Paddle 75}. */
  static Optional<Anatomy> bareLengthWithin(String text) {
    Matcher bare = BARE_END.matcher(Numbers.plain(text));
    return bare.matches()
        ? Optional.of(new Anatomy(tidy(bare.group(1)), "", bare.group(2) + " mm", ""))
        : Optional.empty();
  }

  /** Where the first length with its unit ends in {@code text}, below 0 if it has none. */
  static int lengthEnd(String text) {
    Matcher length = LENGTH.matcher(text);
    return length.find() ? length.end() : -1;
  }

  /** Whether {@code text} goes on with a unit of length, as behind the number of {@code 3"}. */
  static boolean startsWithUnit(String text) {
    return text.matches("(?i)(?:\"|''|(?:inches|inch|ins|in|mm|cm)(?!\\w)).*");
  }

  private static String tidy(String text) {
    return text.replaceAll("^[\\s,;:/()\\-]+|[\\s,;:/(\\-]+$", "")
        .replaceAll("\\(\\s*\\)", "")
        .strip();
  }

  /** Body and colour out of words without a length between them. */
  private static Anatomy split(String words, String length, String quantity) {
    String tidied = tidy(words);
    String[] parts = tidied.split("\\s*[,;/|]\\s*|\\s+-\\s+|:\\s+", -1);
    if (parts.length == 2 && !parts[0].isEmpty() && !parts[1].isEmpty()) {
      boolean bodyLast = bodyWords(parts[1]) > bodyWords(parts[0]);
      return bodyLast
          ? new Anatomy(parts[1], parts[0], length, quantity)
          : new Anatomy(parts[0], parts[1], length, quantity);
    }
    List<String> tokens = Arrays.asList(tidied.split("\\s+", -1));
    int lead = run(tokens);
    int trail = trail(tokens);
    if ((lead == 0) == (trail == 0) || lead == tokens.size()) {
      return new Anatomy("", "", length, quantity);
    }
    return lead > 0
        ? new Anatomy(join(tokens, 0, lead), join(tokens, lead, tokens.size()), length, quantity)
        : new Anatomy(
            join(tokens, tokens.size() - trail, tokens.size()),
            join(tokens, 0, tokens.size() - trail),
            length,
            quantity);
  }

  /** How many words at the end name a body. */
  static int trail(List<String> tokens) {
    List<String> backwards = new ArrayList<>(tokens);
    Collections.reverse(backwards);
    return run(backwards);
  }

  private static String join(List<String> tokens, int from, int to) {
    return String.join(" ", tokens.subList(from, to));
  }

  /** How many words from the start name a body: at least one of them a noun. */
  private static int run(List<String> tokens) {
    int words = 0;
    boolean noun = false;
    for (String token : tokens) {
      String word = WordList.fold(token);
      boolean isNoun = NOUNS.contains(word);
      if (!isNoun && !ADJECTIVES.contains(word)) {
        break;
      }
      noun |= isNoun;
      words++;
    }
    return noun ? words : 0;
  }

  /** Whether {@code text} has a word that is a shape's by itself, as "ribbed" is not. */
  static boolean namesShape(String text) {
    return Arrays.stream(WordList.fold(text).split(" ", -1)).anyMatch(NOUNS::contains);
  }

  /** How many words of {@code text} name shapes. */
  static long bodyWords(String text) {
    return Arrays.stream(WordList.fold(text).split(" ", -1))
        .filter(word -> NOUNS.contains(word) || ADJECTIVES.contains(word))
        .filter(word -> NOUNS.contains(word) || !COLOURS.contains(word))
        .count();
  }

  /** How many words of {@code text} name colours. */
  static long colourWords(String text) {
    return Arrays.stream(WordList.fold(text).toLowerCase(Locale.ROOT).split(" ", -1))
        .filter(COLOURS::contains)
        .count();
  }

  /** Whether both a body and a colour were told. */
  boolean isWhole() {
    return !body.isEmpty() && !colour.isEmpty();
  }
}
