package traytally.intake;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import traytally.plastic.Finish;
import traytally.trip.Clarity;
import traytally.trip.LossCause;

/** The short words of a list: yes and no, clarity, how a piece was lost. */
public final class Words {
  private static final WordList LIST = WordList.read("words.txt");

  private static final Set<String> YES =
      Set.of(
          "yes",
          "y",
          "true",
          "1",
          "x",
          "✓",
          "✔",
          "ja",
          "ok",
          "in",
          "in stock",
          "instock",
          "available",
          "plenty",
          "keep",
          "kept",
          "always",
          "*",
          "★",
          "low stock",
          "few left");
  private static final Set<String> NO =
      Set.of(
          "no",
          "n",
          "false",
          "0",
          "-",
          "out",
          "out of stock",
          "sold out",
          "none",
          "gone",
          "unavailable",
          "not in stock",
          "no stock",
          "discontinued",
          "on order",
          "never",
          "nein",
          "awaiting",
          "due in",
          "coming soon",
          "back soon",
          "back order",
          "oos",
          "n/a",
          "na",
          "not stocked",
          "not sold",
          "not listed",
          "don't stock",
          "dont stock");

  private static final Pattern DENIED =
      Pattern.compile("\\b(?:not|no|un|less|never|hardly|half|to)\\b");

  /** What parts a word of clarity from what is said of it. */
  private static final Pattern REASON =
      Pattern.compile(
          "\\s*[,;(]\\s*|\\s+(?=(?:after|since|following|from|because of|due to) )",
          Pattern.CASE_INSENSITIVE);

  /** Words after which the water is no more what it was. */
  private static final Pattern AGAINST =
      Pattern.compile(
          "\\b(?:not|no|un|less|never|hardly|half|to|but|then|later|by|clearing|colou?ring|in places"
              + "|patches|at first|turning|getting|until|till|or)\\b");

  private Words() {}

  static Told<Boolean> yesNo(String text) {
    String plain = Numbers.plain(text).toLowerCase(java.util.Locale.ROOT).strip();
    if (plain.isEmpty()) {
      return Told.nothing();
    }
    if (YES.contains(plain)) {
      return Told.of(true);
    }
    if (NO.contains(plain) || plain.startsWith("back in ") || plain.startsWith("due ")) {
      return Told.of(false);
    }
    // A shop's stock given as a number of packs.
    return Numbers.parse(
            plain.replaceFirst("^(?:only )?(\\d{1,4}) (?:left|packs?|in stock|in)$", "$1"))
        .filter(n -> n.signum() >= 0)
        .map(n -> Told.assuming(n.signum() > 0, "a number read as in stock"))
        .orElseGet(() -> Told.wrong("is neither yes nor no. Write yes or no."));
  }

  static Told<Clarity> clarity(String text) {
    Optional<Clarity> exact = Clarity.parse(text);
    if (exact.isPresent()) {
      return Told.of(exact.get());
    }
    if (WordList.fold(text).isEmpty()) {
      return Told.nothing();
    }
    return known(text)
        .or(() -> firstPart(text))
        .map(
            clarity -> Told.assuming(clarity, "\"" + text.strip() + "\" read as " + clarity.word()))
        .orElseGet(
            () -> Told.wrong("is no clarity known here. Write clear, stained, cloudy or dirty."));
  }

  /** The clarity that {@code text} as a whole is a word for. */
  private static Optional<Clarity> known(String text) {
    String word = WordList.fold(text).replaceFirst("^like (?:an? )?", "");
    String slight = word.replaceFirst("^(?:an? )?(?:bit|little|touch|tad)(?: of)? ", "slightly ");
    String bare = slight.replaceFirst("^(?:slightly|very|quite|fairly|rather|pretty|really) ", "");
    for (String said : List.of(word, slight, bare)) {
      for (Clarity clarity : Clarity.values()) {
        if (said.equals(clarity.word()) || LIST.words("clarity." + clarity.word()).contains(said)) {
          return Optional.of(clarity);
        }
      }
    }
    return Arrays.stream(Clarity.values())
        .filter(clarity -> word.endsWith(" " + clarity.word()) && !DENIED.matcher(word).find())
        .findFirst();
  }

  /** What the water is said to be before a comma or a reason: {@code cloudy after rain}. */
  static String beforeReason(String text) {
    return REASON.split(text.strip(), 2)[0];
  }

  /** The clarity of the first part of {@code text}, unless the rest speaks against it. */
  private static Optional<Clarity> firstPart(String text) {
    String first = beforeReason(text);
    String rest = text.strip().substring(first.length());
    Optional<Clarity> told = rest.isEmpty() ? Optional.empty() : known(first);
    return told.filter(clarity -> !speaksAgainst(rest, clarity));
  }

  private static boolean speaksAgainst(String rest, Clarity clarity) {
    String words = WordList.fold(rest);
    return AGAINST.matcher(words).find()
        || Arrays.stream(words.split(" ", -1))
            .flatMap(word -> known(word).stream())
            .anyMatch(other -> other != clarity);
  }

  /** How a piece was lost; the words may stand inside a sentence. */
  public static Optional<LossCause> lossCause(String text) {
    String words = " " + WordList.fold(text) + " ";
    Optional<LossCause> exact = LossCause.parse(words);
    if (exact.isPresent()) {
      return exact;
    }
    for (LossCause cause : LossCause.values()) {
      List<String> known = LIST.words("lost." + cause.word());
      if (known.stream().anyMatch(word -> words.contains(" " + word + " "))) {
        return Optional.of(cause);
      }
    }
    return Optional.empty();
  }

  static Told<Finish> finish(String text) {
    String word = WordList.fold(text);
    if (word.isEmpty()) {
      return Told.nothing();
    }
    for (Map.Entry<String, List<String>> entry : LIST.meanings().entrySet()) {
      if (entry.getKey().startsWith("finish.") && entry.getValue().contains(word)) {
        return Finish.parse(entry.getKey().substring("finish.".length()))
            .map(Told::of)
            .orElseGet(Told::nothing);
      }
    }
    return Told.wrong(
        "is no finish known here. Write solid, translucent, flake, laminate or luminous.");
  }
}
