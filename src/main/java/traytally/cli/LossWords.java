package traytally.cli;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import traytally.ledger.MovementKind;
import traytally.plastic.Name;
import traytally.trip.LossCause;

/** The words for how pieces were lost, long and short. */
final class LossWords {
  /** Lost, nobody knows how. */
  static final Gone UNKNOWN = new Gone(MovementKind.LOST, Optional.empty());

  private static final Gone WORN = new Gone(MovementKind.WORN, Optional.empty());

  private static final Map<String, Gone> WORDS =
      Map.ofEntries(
          Map.entry("snag", lost(LossCause.SNAGGED)),
          Map.entry("snags", lost(LossCause.SNAGGED)),
          Map.entry("snagged", lost(LossCause.SNAGGED)),
          Map.entry("bite", lost(LossCause.BITTEN_OFF)),
          Map.entry("biteoff", lost(LossCause.BITTEN_OFF)),
          Map.entry("bitten", lost(LossCause.BITTEN_OFF)),
          Map.entry("bittenoff", lost(LossCause.BITTEN_OFF)),
          Map.entry("torn", lost(LossCause.TORN)),
          Map.entry("cast", lost(LossCause.CAST_OFF)),
          Map.entry("castoff", lost(LossCause.CAST_OFF)),
          Map.entry("worn", WORN),
          Map.entry("wornout", WORN),
          Map.entry("lost", UNKNOWN));

  private LossWords() {}

  private static Gone lost(LossCause cause) {
    return new Gone(MovementKind.LOST, Optional.of(cause));
  }

  static Optional<Gone> parse(String word) {
    return Optional.ofNullable(WORDS.get(Name.of(word.toLowerCase(Locale.ROOT)).key()));
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
