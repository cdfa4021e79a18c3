package traytally.intake;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Sums of money as people write them: {@code €4.95}, {@code 4,95}, {@code £5}, {@code 5.00 EUR}.
 */
final class Amounts {
  /**
   * A sum as written.
   *
   * @param units in the currency's unit, never negative
   * @param currency empty where only the number stands
   */
  record Written(BigDecimal units, Optional<Currency> currency) {}

  /** Signs of one currency; where several use it, the code to assume (ISO 4217). */
  private static final Map<String, String> SIGNS =
      Map.of("€", "EUR", "£", "GBP", "$", "USD", "¥", "JPY", "kr", "SEK", "zł", "PLN");

  /** The largest price believed; a slip of the keyboard beyond (an assumption). */
  private static final BigDecimal DEAREST = new BigDecimal("100000");

  private static final Pattern SUM =
      Pattern.compile(
          "(-?)\\s*([a-z]{1,8}|[^\\d\\s.,-]{1,3})?\\s*(-?\\d[\\d.,' ]*|[.,]\\d+)(?:,-)?\\s*([a-z]{1,8}|[^\\d\\s.,-]{1,3})?\\.?");

  private static final Pattern REMARKED = Pattern.compile("(.+?)\\s*\\([^()]*[a-z][^()]*\\)");

  private static final Set<String> FREE =
      Set.of("free", "none", "nil", "included", "inc", "gratis");

  private Amounts() {}

  /** The sum {@code text} is; {@code dollars} is the currency that a lone $ or kr stands for. */
  static Told<Written> parse(String text, Currency own) {
    String plain = Numbers.plain(text).toLowerCase(Locale.ROOT).strip();
    if (plain.isEmpty() || plain.equals("-")) {
      return Told.nothing();
    }
    if (FREE.contains(plain)) {
      return Told.of(new Written(BigDecimal.ZERO, Optional.empty()));
    }
    Matcher sum = SUM.matcher(plain);
    if (!sum.matches()) {
      return remarked(plain, own);
    }
    String mark = sum.group(2) != null ? sum.group(2) : sum.group(4) != null ? sum.group(4) : "";
    boolean twoMarks = sum.group(2) != null && sum.group(4) != null;
    Optional<BigDecimal> number = Numbers.parse(sum.group(3));
    if (number.isEmpty() || twoMarks) {
      return notAPrice();
    }
    if (sum.group(1).equals("-") || number.get().signum() < 0) {
      return Told.wrong("is below zero. Write the price of one pack.");
    }
    if (number.get().compareTo(DEAREST) > 0) {
      return Told.wrong("is more than any pack costs. Write the price of one pack.");
    }
    if (mark.equals("p")) {
      return Told.of(new Written(number.get().movePointLeft(2), currency("gbp", own)));
    }
    if (mark.equals("c") || mark.equals("ct")) {
      return Told.of(new Written(number.get().movePointLeft(2), Optional.empty()));
    }
    if (mark.isEmpty()) {
      return Told.of(new Written(number.get(), Optional.empty()));
    }
    return currency(mark, own)
        .map(currency -> Told.of(new Written(number.get(), Optional.of(currency))))
        .orElseGet(Amounts::notAPrice);
  }

  /** A price with words in brackets behind it, such as what it was before. */
  private static Told<Written> remarked(String plain, Currency own) {
    Matcher remarked = REMARKED.matcher(plain);
    if (!remarked.matches()) {
      return notAPrice();
    }
    Told<Written> bare = parse(remarked.group(1), own);
    return bare.value().isPresent()
        ? Told.assuming(
            bare.value().get(), "What stands in brackets behind a price was passed over")
        : bare;
  }

  private static Told<Written> notAPrice() {
    return Told.wrong("is not a price. Write a number such as 4.95.");
  }

  /**
   * The currency that a sign or code names; a sign shared by several is {@code own} if it can be.
   */
  static Optional<Currency> currency(String mark, Currency own) {
    String folded = Numbers.plain(mark).toLowerCase(Locale.ROOT).strip();
    String code = SIGNS.getOrDefault(folded, words(folded));
    if (folded.equals("$") && own.getCurrencyCode().endsWith("D")) {
      return Optional.of(own);
    }
    if (folded.equals("kr") && own.getCurrencyCode().endsWith("K")) {
      return Optional.of(own);
    }
    return Currency.getAvailableCurrencies().stream()
        .filter(c -> c.getCurrencyCode().equals(code))
        .findFirst();
  }

  private static String words(String folded) {
    return switch (folded) {
      case "euro", "euros" -> "EUR";
      case "pound", "pounds", "sterling", "quid" -> "GBP";
      case "dollar", "dollars", "us$" -> "USD";
      case "r", "rand", "rands" -> "ZAR";
      case "nz$" -> "NZD";
      case "a$", "au$" -> "AUD";
      case "c$", "ca$" -> "CAD";
      case "hk$" -> "HKD";
      case "s$" -> "SGD";
      default -> folded.toUpperCase(Locale.ROOT);
    };
  }

  /** The currency that a cell's number format shows, as {@code [$£-809]#,##0.00}. */
  static Optional<Currency> ofFormat(String format, Currency own) {
    for (String sign : new String[] {"€", "£", "¥", "zł", "kr"}) {
      if (format.contains(sign)) {
        return currency(sign, own);
      }
    }
    Matcher code =
        Pattern.compile("\\b(EUR|GBP|USD|CHF|SEK|NOK|DKK|PLN|AUD|CAD|NZD)\\b").matcher(format);
    if (code.find()) {
      return currency(code.group(1), own);
    }
    // "[$-809]" is a locale and no dollar; "[$$-409]", "\$" and a plain "$" are.
    return Pattern.compile("\\[\\$\\$|\"\\$\"|\\\\\\$|(?<!\\[)\\$").matcher(format).find()
        ? currency("$", own)
        : Optional.empty();
  }
}
