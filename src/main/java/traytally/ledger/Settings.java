package traytally.ledger;

import java.util.Currency;
import java.util.EnumMap;
import java.util.Map;

/** The angler's choices, complete: what was not chosen has its standard value. */
public record Settings(Map<Setting, String> values) {
  public Settings {
    Map<Setting, String> all = new EnumMap<>(Setting.class);
    for (Setting setting : Setting.values()) {
      String value = values.getOrDefault(setting, setting.standard());
      if (values.containsKey(setting) && !setting.accepts(value)) {
        throw new IllegalArgumentException(
            setting.key() + " wants " + setting.wantedWords() + ": " + value);
      }
      all.put(setting, value);
    }
    values = Map.copyOf(all);
  }

  public static Settings standard() {
    return new Settings(Map.of());
  }

  public String get(Setting setting) {
    String value = values.get(setting);
    if (value == null) {
      throw new IllegalStateException("settings are complete: " + setting);
    }
    return value;
  }

  public double number(Setting setting) {
    return Double.parseDouble(get(setting));
  }

  public int days(Setting setting) {
    return Integer.parseInt(get(setting));
  }

  public Currency currency() {
    return Currency.getInstance(get(Setting.CURRENCY));
  }
}
