package traytally.ledger;

import java.util.Arrays;
import java.util.Currency;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** One thing the angler may choose; the defaults are assumptions of this tool unless said. */
public enum Setting {
  UNITS("mm", "mm|in", "mm or in"),
  CURRENCY("EUR", "[A-Z]{3}", "an ISO 4217 currency such as EUR"),
  /** The sheet that lists are printed on. */
  PAPER("a4", "a4|letter", "a4 or letter"),
  HEMISPHERE("north", "north|south", "north or south"),
  /** Run-out chance above which a trusted or kept plastic is low (method: service level 95 %). */
  TRUSTED_RISK("0.05", Setting.SHARE, "a share between 0 and 1"),
  /** Run-out chance above which a promising plastic is low. */
  PROMISING_RISK("0.20", Setting.SHARE, "a share between 0 and 1"),
  /** Days between one order and the next: the angler's habit. */
  ORDER_EVERY_DAYS("30", Setting.DAYS, "whole days, 1 to 365"),
  /** Days from order to tray where a shop does not say. */
  DELIVERY_DAYS("4", Setting.DAYS, "whole days, 1 to 365"),
  /** Minutes one cast and retrieve takes. */
  MINUTES_PER_CAST("1.0", "0\\.[0-9]*[1-9][0-9]*|[1-9][0-9]?(\\.[0-9]+)?", "minutes, above 0"),
  /** Pieces used in a rod-hour before there is a log. */
  ASSUMED_USE_PER_HOUR("0.5", "0\\.[0-9]*[1-9][0-9]*|[1-9][0-9]?(\\.[0-9]+)?", "pieces, above 0"),
  TRUSTED_FROM("0.80", Setting.SHARE, "a probability between 0 and 1"),
  PROMISING_FROM("0.65", Setting.SHARE, "a probability between 0 and 1"),
  DOUBTFUL_TO("0.10", Setting.SHARE, "a probability between 0 and 1");

  private static final String SHARE = "0?\\.[0-9]*[1-9][0-9]*";
  private static final String DAYS = "[1-9]|[1-9][0-9]|[12][0-9][0-9]|3[0-5][0-9]|36[0-5]";

  private final String standard;
  private final String wanted;
  private final String wantedWords;

  Setting(String standard, String wanted, String wantedWords) {
    this.standard = standard;
    this.wanted = wanted;
    this.wantedWords = wantedWords;
  }

  /** The setting with this key, without regard to case. */
  public static Optional<Setting> parse(String key) {
    String asked = key.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(s -> s.key().equals(asked)).findFirst();
  }

  /** The word the angler types: {@code order-every-days}. */
  public String key() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The value while nothing else was chosen. */
  public String standard() {
    return standard;
  }

  /** Whether {@code value} is one this setting can take. */
  public boolean accepts(String value) {
    return Pattern.matches(wanted, value) && (this != CURRENCY || isCurrency(value));
  }

  private static boolean isCurrency(String code) {
    return Currency.getAvailableCurrencies().stream()
        .anyMatch(currency -> currency.getCurrencyCode().equals(code));
  }

  /** What it can take, in words. */
  public String wantedWords() {
    return wantedWords;
  }
}
