package traytally.performance;

import java.util.Optional;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/**
 * What is judged: a colour, a body style, or one plastic with both.
 *
 * @param plastic the plastic, if one is meant
 * @param colour the colour; empty where pooled over
 * @param body the body style; empty where pooled over
 */
public record Subject(Optional<Plastic> plastic, Optional<Name> colour, Optional<Name> body) {
  static Subject of(Grain grain, Plastic plastic) {
    return switch (grain) {
      case COLOUR -> new Subject(Optional.empty(), Optional.of(plastic.colour()), Optional.empty());
      case PLASTIC ->
          new Subject(
              Optional.of(plastic), Optional.of(plastic.colour()), Optional.of(plastic.body()));
      case BODY -> new Subject(Optional.empty(), Optional.empty(), Optional.of(plastic.body()));
    };
  }
}
