package traytally.performance;

import traytally.plastic.Worded;

/** How far a colour has earned its place, best first. */
public enum Standing implements Worded {
  TRUSTED,
  PROMISING,
  UNPROVEN,
  DOUBTFUL;
}
