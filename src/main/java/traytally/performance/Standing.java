package traytally.performance;

import java.util.Locale;

/** How far a colour has earned its place, best first. */
public enum Standing {
  TRUSTED,
  PROMISING,
  UNPROVEN,
  DOUBTFUL;

  /** The word used in output. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
