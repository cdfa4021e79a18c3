package traytally.cli;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import traytally.intake.Words;
import traytally.ledger.MovementKind;
import traytally.plastic.Name;
import traytally.trip.LossCause;

/** The words for how pieces were lost, long and short. */
final class LossWords {
  /** Lost, nobody knows how. */
  static final Gone UNKNOWN = new Gone(MovementKind.LOST, Optional.empty());

  private static final Gone WORN = new Gone(MovementKind.WORN, Optional.empty());

  private static final Set<String> WORN_OUT = Set.of("worn", "wornout");

  /** Short forms that are too common in sentences for lists to be read by them. */
  private static final Map<String, LossCause> SHORT =
      Map.of("bite", LossCause.BITTEN_OFF, "cast", LossCause.CAST_OFF);

  private LossWords() {}

  private static Gone lost(LossCause cause) {
    return new Gone(MovementKind.LOST, Optional.of(cause));
  }

  static Optional<Gone> parse(String word) {
    String key = Name.of(word).key();
    if (WORN_OUT.contains(key)) {
      return Optional.of(WORN);
    }
    if (key.equals("lost")) {
      return Optional.of(UNKNOWN);
    }
    return Optional.ofNullable(SHORT.get(key)).or(() -> Words.lossCause(word)).map(LossWords::lost);
  }

  static Gone required(String word) {
    return parse(word)
        .orElseThrow(
            () ->
                new Refusal(
                    Exit.USAGE,
                    "\""
                        + word
                        + "\" is no way to lose a piece. Say snagged, bitten off, torn, cast off"
                        + " or worn."));
  }
}
