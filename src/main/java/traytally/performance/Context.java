package traytally.performance;

import java.util.Locale;
import traytally.plastic.Worded;
import traytally.trip.Season;

/** A side of the conditions that colours may differ by. */
enum Context {
  SPECIES,
  CLARITY,
  SEASON;

  /** The level of what a log does not say. */
  static final String UNSAID = "";

  /** The level of a turn. */
  String of(Turn turn, boolean southern) {
    return switch (this) {
      case SPECIES -> turn.species().key();
      case CLARITY -> turn.clarity().map(Worded::word).orElse(UNSAID);
      case SEASON -> Season.of(turn.trip().date().getMonth(), southern).word();
    };
  }

  String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
