package traytally.cli;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.intake.Lengths;
import traytally.intake.Spelling;
import traytally.ledger.Book;
import traytally.ledger.Fact.Agreed;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/** Finds the plastic that somebody's words name. */
final class PlasticNames {
  private static final Pattern ROW = Pattern.compile("[1-9]\\d{0,4}");
  private static final Pattern LENGTH =
      Pattern.compile("(\\d{1,3}(?:\\.\\d{1,2})?)(mm|cm|in|\"|'')?");

  /** 3 inches is 76 mm and sold as 75: lengths this near are one length (common practice). */
  private static final double SAME_LENGTH_MM = 2;

  /** Matches shown where several fit: a screen's worth. */
  private static final int SHOWN = 20;

  private PlasticNames() {}

  /**
   * The one plastic that {@code words} name: the row of the last listing where they are but a
   * number, else the words of a plastic.
   *
   * @throws Refusal if they name none, or several
   */
  static Plastic one(Traytally root, Book book, String words) {
    List<Plastic> named = named(root, book, words);
    if (named.size() > 1) {
      Listing.of(root).remember(named);
      throw several(words, named);
    }
    return named.get(0);
  }

  /**
   * All plastics that {@code words} may mean, at least one: the row of the last listing where they
   * are but a number, else the words of a plastic.
   *
   * @throws Refusal if they name none
   */
  static List<Plastic> named(Traytally root, Book book, String words) {
    Listing listing = Listing.of(root);
    List<Plastic> last = ROW.matcher(words.strip()).matches() ? listing.last() : List.of();
    if (!last.isEmpty() && Integer.parseInt(words.strip()) <= last.size()) {
      Plastic plastic = last.get(Integer.parseInt(words.strip()) - 1);
      if (!book.plastics().contains(plastic)) {
        throw new Refusal(
            Exit.DATA,
            "row " + words + " was " + plastic + ", which is in the box no more. List it again.");
      }
      return List.of(plastic);
    }
    List<Plastic> named = fitting(words, book);
    if (named.isEmpty()) {
      throw none(words, book);
    }
    return named;
  }

  /** The name of {@code plastic} whole, in quotes: no other plastic is meant by it. */
  static String quoted(Plastic plastic) {
    // An inch mark in a name would end it; names are told apart without such marks.
    return '"' + plastic.toString().replace('"', ' ') + '"';
  }

  private static Refusal several(String words, List<Plastic> named) {
    StringBuilder text = new StringBuilder();
    text.append('"').append(words).append("\" fits ").append(named.size());
    text.append(" plastics. Say more of one, or give its row:");
    for (int i = 0; i < Math.min(named.size(), SHOWN); i++) {
      text.append(String.format(Locale.ROOT, "%n%5d  %s", i + 1, named.get(i)));
    }
    if (named.size() > SHOWN) {
      text.append(String.format(Locale.ROOT, "%n       and %d more", named.size() - SHOWN));
    }
    return new Refusal(Exit.DATA, text.toString());
  }

  private static Refusal none(String words, Book book) {
    String said = "no plastic in the box is called \"" + words + "\".";
    if (ROW.matcher(words.strip()).matches()) {
      return new Refusal(
          Exit.DATA, said + " To name one by its row, list them first: traytally box");
    }
    List<Plastic> near = near(words, book);
    StringBuilder text = new StringBuilder(said);
    text.append(near.isEmpty() ? " traytally box lists what there is." : " Nearest:");
    near.forEach(plastic -> text.append(String.format(Locale.ROOT, "%n       %s", plastic)));
    return new Refusal(Exit.DATA, text.toString());
  }

  /** Up to three plastics that have at least half the words asked for, slips forgiven. */
  private static List<Plastic> near(String words, Book book) {
    List<String> asked = asked(agreed(words, book));
    List<Plastic> near = new ArrayList<>();
    Set<Plastic> inBox = book.plastics();
    for (int wanted = asked.size(); wanted * 2 >= asked.size() && wanted > 0; wanted--) {
      for (Plastic plastic : inBox) {
        long has = asked.stream().filter(word -> has(plastic, word, true)).count();
        if (has == wanted && near.size() < 3) {
          near.add(plastic);
        }
      }
    }
    return near;
  }

  /** The plastics of the box that fit {@code words}, by the letter or else with slips forgiven. */
  static List<Plastic> fitting(String words, Book book) {
    Set<Plastic> inBox = book.plastics();
    Name whole = Name.of(words);
    List<Plastic> spelt =
        inBox.stream().filter(plastic -> Name.of(plastic.toString()).equals(whole)).toList();
    if (!spelt.isEmpty()) {
      return spelt;
    }
    String meant = agreed(words, book);
    List<Plastic> exact = matching(meant, inBox);
    return exact.isEmpty() ? matching(meant, inBox, true) : exact;
  }

  /** The words, where a spelling that the angler agreed to gives way to its name. */
  private static String agreed(String words, Book book) {
    String text = " " + String.join(" ", asked(words)) + " ";
    for (Agreed agreed : book.facts(Agreed.class)) {
      String spelling = " " + String.join(" ", asked(agreed.spelling().text())) + " ";
      text = text.replace(spelling, " " + agreed.name().text() + " ");
    }
    return text.strip();
  }

  /**
   * The plastics that have every word of {@code words}, in any order and case; words may be begun
   * only ({@code padd}). If some plastics' own words are all among those asked, only they are
   * meant: {@code paddle oil} is not {@code paddle motor oil} where both are owned.
   */
  static List<Plastic> matching(String words, Collection<Plastic> plastics) {
    return matching(words, plastics, false);
  }

  private static List<Plastic> matching(
      String words, Collection<Plastic> plastics, boolean forgiving) {
    List<String> asked = asked(words);
    if (asked.isEmpty()) {
      return List.of();
    }
    List<Plastic> fitting =
        plastics.stream()
            .filter(plastic -> asked.stream().allMatch(word -> has(plastic, word, forgiving)))
            .sorted()
            .toList();
    List<Plastic> whole =
        fitting.stream()
            .filter(plastic -> new HashSet<>(asked).containsAll(bodyAndColour(plastic)))
            .toList();
    return whole.isEmpty() ? fitting : whole;
  }

  private static List<String> asked(String words) {
    return Arrays.stream(words.toLowerCase(Locale.ROOT).strip().split("[\\s,;()]+"))
        .filter(word -> !word.equals("mm"))
        .map(word -> LENGTH.matcher(word).matches() ? word : Name.of(word).key())
        .filter(word -> !word.isEmpty())
        .toList();
  }

  private static boolean has(Plastic plastic, String word, boolean forgiving) {
    if (isLength(word, plastic)) {
      return true;
    }
    Set<String> own = new HashSet<>(bodyAndColour(plastic));
    own.addAll(wordsOf(plastic.maker()));
    if (own.contains(word)) {
      return true;
    }
    boolean number = LENGTH.matcher(word).matches();
    return !number
        && own.stream()
            .anyMatch(
                mine ->
                    mine.startsWith(word)
                        || (forgiving && Spelling.near(Name.of(word), Name.of(mine))));
  }

  /** Whether {@code word} is the plastic's length, in the unit it names or else the likely one. */
  private static boolean isLength(String word, Plastic plastic) {
    Matcher length = LENGTH.matcher(word);
    if (!length.matches() || !plastic.hasLength()) {
      return false;
    }
    double number = new BigDecimal(length.group(1)).doubleValue();
    String unit = Optional.ofNullable(length.group(2)).orElse("");
    boolean inches =
        Math.abs(number * Plastic.MM_PER_INCH - plastic.lengthMm()) <= SAME_LENGTH_MM
            && number <= Lengths.LONGEST_INCHES.doubleValue();
    return switch (unit) {
      case "mm" -> number == plastic.lengthMm();
      case "cm" -> number * 10 == plastic.lengthMm();
      case "" -> number == plastic.lengthMm() || inches;
      default -> inches;
    };
  }

  private static List<String> bodyAndColour(Plastic plastic) {
    List<String> words = new ArrayList<>(wordsOf(plastic.body()));
    words.addAll(wordsOf(plastic.colour()));
    return words;
  }

  private static List<String> wordsOf(Name name) {
    return Arrays.stream(name.text().split("[\\s-]+"))
        .map(word -> Name.of(word).key())
        .filter(key -> !key.isEmpty())
        .toList();
  }
}
