package traytally.intake;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.trip.LossCause;

/**
 * The pieces that a remark says were lost: {@code lost 2 to the reef}, {@code one bitten off}.
 *
 * <p>A fish lost is no piece lost. Only what can be nothing but the lure counts; what may be either
 * is doubtful.
 *
 * @param pieces those that are lost for certain
 * @param how what took most of them, if said
 * @param doubtful whether the remark speaks of a loss that may be a piece or not
 */
record LossInWords(int pieces, Optional<LossCause> how, boolean doubtful) {
  private static final String NUMBER =
      "(\\d{1,2}|a couple(?: of)?|another|an?|both|"
          + String.join("|", Numbers.WORDS.subList(1, Numbers.WORDS.size()))
          + ")";

  /** What is a lure and no fish, as an eel or a shrimp may be. */
  private static final String LURE =
      "(?:(?:of (?:them|these|those|the|my) )?(?:(?!(?:good|nice|big|decent|fish|on|to|in|at|with|off|from|by|near|using|after)\\b)"
          + "\\p{L}+ ){0,2}"
          + "(?:tails?|lures?|plastics?|soft ?baits?|softies|shads?|worms?|grubs?|curl(?:ie|y|ies)s?"
          + "|twisters?|paddle ?tails?))";

  /** What holds a lure fast. */
  private static final String SNAG =
      "(?:(?:the|an?|some|that|this|heavy|thick|big|same|sunken|old|bottom) )*"
          + "(?:reefs?|kelp|rocks?|weeds?|weed ?beds?|snags?|snaggy|bottom|seabed|wrecks?|ledges?"
          + "|boulders?|stones?|trees?|branch(?:es)?|timber|roots?|logs?|ropes?|pots?|pilings?"
          + "|mussels?|oysters?|oyster beds?|wrack|bladderwrack|cable|chains?)\\b";

  private static final String TO = "(?:to|in|on|into|under|among|amongst|round|around) ";

  private static final String OFF =
      "(?:bitten (?:clean )?off|bit off|bitten through|bite ?-?offs?|snagged off|snapped off"
          + "|cracked off)";

  /** Ways to say that so many pieces are gone, the number first or second; the first that fits. */
  private static final List<Pattern> LOST =
      List.of(
          words(
              "lost "
                  + NUMBER
                  + "(?: more| others?| "
                  + LURE
                  + ")?,? ?(?:- ?)?"
                  + "(?:(?:all|both|each|again) )?"
                  + TO
                  + SNAG),
          words(NUMBER + "(?: more| " + LURE + ")? (?:was |were |got )?lost " + TO + SNAG),
          words("lost " + NUMBER + " to (?:an? |the )?(?:" + Kinds.WORDS + "|teeth)\\b"),
          words("lost " + NUMBER + "[,;:]? ?(?:- ?)?\\(?(?:snags?|snagged|" + OFF + ")\\b\\)?"),
          words(
              "(?:snags?|snagged(?: up)?|stuck(?: fast)?|"
                  + OFF
                  + ")[,;:]? ?(?:- ?)?(?:and )?lost "
                  + NUMBER
                  + "\\b(?! (?:\\p{L}+ ){0,2}fish)"),
          words("lost " + NUMBER + " ?\\((?:" + TO + ")?" + SNAG + "[^()]*\\)"),
          words("lost " + NUMBER + " " + LURE + "\\b"),
          words(NUMBER + " " + LURE + " (?:was |were |got )?lost\\b"),
          words(
              "(?:"
                  + NUMBER
                  + " (?:more )?(?:"
                  + LURE
                  + " )?(?:was |were |got )?)?(?<!tail )(?<!half )"
                  + OFF
                  + "(?: (once|twice|(?:\\d|two|three|four) times))?\\b"));

  /** Losses that are none of the tray, or none at all. */
  private static final Pattern NO_PIECES =
      words(
          "(?:nothing|none|no (?:lures?|tails?|more)?) ?(?:were |was )?lost|lost (?:nothing|none|no)\\b"
              + "|no loss(?:es)?|(?:not|never|nearly|almost|without (?:being|getting)) (?:\\p{L}+ )?"
              + OFF
              + "|no "
              + OFF
              + "|(?:lost|dropped) (?:\\d{1,2}|\\p{L}+) "
              + "(?:(?!(?:to|in|on|tails?|lures?|shads?)\\b)\\p{L}+ ){0,2}(?:fish|"
              + Kinds.WORDS
              + ")\\b|(?:fish|"
              + Kinds.WORDS
              + ") (?:was |were )?(?:lost|dropped)");

  /** Words that leave open what was lost. */
  private static final Pattern DOUBTFUL =
      words(
          "(?:lost|lose|losing|dropped) (?:\\d{1,2}|an?other|one|it|them|both|some|several|a few|a couple"
              + "|loads|lots|many|too many|plenty|two|three|four|five|six|seven|eight|nine|ten)\\b"
              + "(?! (?:hours?|hrs?|minutes?|mins?|days?|casts?|hooks?|weights?|sinkers?|rods?|nets?))"
              + "|(?:lost|losing) (?:(?:my|the|our|last|some|a few|several|all|a) )*(?:good |big |nice )?"
              + "(?:tails?|lures?|plastics?|soft ?baits?|shads?|worms?|grubs?|jig ?heads?|ones?)\\b"
              + "|(?:lost|dropped) (?:an? )?(?:\\p{L}+ )?one\\b|lost "
              + TO
              + SNAG
              + "|\\b(?:one|two|three|\\d{1,2}) (?:more )?(?:lost|gone)\\b|"
              + OFF);

  /** The kinds of fish that bite lures off. */
  private static final class Kinds {
    private static final String WORDS =
        "(?:big |good |small )?(?:"
            + String.join("|", WordList.read("words.txt").words("fish.kind"))
            + ")";
  }

  private static Pattern words(String words) {
    return Pattern.compile("(?<![\\p{L}\\d.,-])(?:" + words + ")");
  }

  /** What {@code remark} says. */
  static LossInWords of(String remark) {
    String text = Numbers.plain(remark).toLowerCase(Locale.ROOT);
    if (!text.contains("los")
        && !text.contains("off")
        && !text.contains("drop")
        && !text.contains("bit")) {
      return new LossInWords(0, Optional.empty(), false);
    }
    String rest = NO_PIECES.matcher(text).replaceAll(" | ");
    int pieces = 0;
    int most = 0;
    Optional<LossCause> how = Optional.empty();
    for (Pattern pattern : LOST) {
      Matcher lost = pattern.matcher(rest);
      StringBuilder left = new StringBuilder();
      int from = 0;
      while (lost.find()) {
        int here = number(lost);
        pieces += here;
        if (here > most) {
          most = here;
          how = how(lost.group());
        }
        left.append(rest, from, lost.start()).append(" | ");
        from = lost.end();
      }
      rest = left.append(rest, from, rest.length()).toString();
    }
    boolean doubtful = DOUBTFUL.matcher(rest).find();
    return doubtful
        ? new LossInWords(0, Optional.empty(), true)
        : new LossInWords(pieces, how, false);
  }

  private static int number(Matcher lost) {
    Optional<String> times =
        lost.groupCount() > 1 ? Optional.ofNullable(lost.group(2)) : Optional.empty();
    String word = times.or(() -> Optional.ofNullable(lost.group(1))).orElse("one");
    String first = word.split(" ", -1)[0];
    if (word.startsWith("a couple") || word.equals("both") || word.equals("twice")) {
      return 2;
    }
    return Numbers.word(first)
        .map(BigDecimal::intValueExact)
        .orElseGet(() -> first.matches("\\d+") ? Integer.parseInt(first) : 1);
  }

  private static Optional<LossCause> how(String words) {
    return words.matches(".*\\b(?:bit|bitten|bite|teeth)\\b.*|.* to (?:an? |the )?" + Kinds.WORDS)
        ? Optional.of(LossCause.BITTEN_OFF)
        : Words.lossCause(words);
  }
}
