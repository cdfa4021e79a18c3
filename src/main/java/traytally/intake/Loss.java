package traytally.intake;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.trip.LossCause;

/**
 * What a row of a log says was lost.
 *
 * @param how the cause of most of it, if said
 */
record Loss(int pieces, Optional<LossCause> how) {
  private static final String SEVERAL =
      "Where pieces of a row were lost in several ways, the commonest was taken for all of them.";

  private static final Pattern PART = Pattern.compile("(\\d{0,3})\\s*(\\D+)");

  /** A number in words, and the comma that may stand between a number and its cause. */
  private static final Pattern COUNTED =
      Pattern.compile(
          "\\b(\\d{1,3}|" + String.join("|", Numbers.WORDS) + ")\\b\\s*,?\\s*(?=\\p{L})");

  /** The first of them wins where as many were lost to two. */
  private static final Map<Field, LossCause> CAUSES =
      Collections.unmodifiableMap(
          new EnumMap<>(
              Map.of(
                  Field.SNAGGED, LossCause.SNAGGED,
                  Field.BITTEN_OFF, LossCause.BITTEN_OFF,
                  Field.TORN, LossCause.TORN,
                  Field.CAST_OFF, LossCause.CAST_OFF)));

  /** More pieces than anyone loses in a stint (an assumption). */
  private static final int MOST_LOST = 200;

  /** What the row says of it; what cannot be read is said. */
  static Loss of(RowReader reader) {
    Loss told = toldAtOnce(reader);
    Loss byCause = byCause(reader);
    if (byCause.pieces() > told.pieces() && !reader.text(Field.LOST).isEmpty()) {
      reader.problem(
          Field.LOST,
          "is less than the pieces lost by cause (" + byCause.pieces() + "). Check the numbers.");
    }
    int pieces = Math.max(told.pieces(), byCause.pieces());
    if (pieces > MOST_LOST) {
      reader.problem(Field.LOST, "is more than a stint loses. Check the number.");
    }
    return new Loss(pieces, told.how().or(() -> byCause.how()));
  }

  /** What columns of their own say of each cause. */
  private static Loss byCause(RowReader reader) {
    int pieces = 0;
    int most = 0;
    Optional<LossCause> how = Optional.empty();
    for (Map.Entry<Field, LossCause> cause : CAUSES.entrySet()) {
      int here = reader.pieces(cause.getKey(), OptionalInt.empty()).orElse(0);
      pieces += here;
      if (here > most) {
        most = here;
        how = Optional.of(cause.getValue());
      }
    }
    if (most < pieces) {
      reader.table().assume(SEVERAL);
    }
    return new Loss(pieces, how);
  }

  /** What the columns of all losses and of their cause say. */
  private static Loss toldAtOnce(RowReader reader) {
    String cause = reader.text(Field.LOST_HOW);
    Optional<LossCause> how = cause.isEmpty() ? Optional.empty() : cause(cause, reader.table());
    if (how.isEmpty() && !cause.isEmpty()) {
      reader.note(
          Field.LOST_HOW,
          "is no cause known here (snagged, bitten off, torn, cast off). The rest of the row was"
              + " taken.");
    }
    String lost = reader.text(Field.LOST);
    if (isPlain(lost)) {
      int plain = reader.pieces(Field.LOST, OptionalInt.empty()).orElse(0);
      return new Loss(plain, plain > 0 ? how : Optional.empty());
    }
    Optional<Loss> told = told(lost, reader.table());
    if (told.isPresent()) {
      return new Loss(told.get().pieces(), how.or(() -> told.get().how()));
    }
    int pieces = reader.pieces(Field.LOST, OptionalInt.empty()).orElse(0);
    return new Loss(pieces, pieces > 0 ? how : Optional.empty());
  }

  private static boolean isPlain(String text) {
    int i = 0;
    while (i < text.length() && Character.isDigit(text.charAt(i))) {
      i++;
    }
    return i == text.length();
  }

  /** The cause in a cell of its own, the commonest where it counts several. */
  private static Optional<LossCause> cause(String text, Table table) {
    Optional<Loss> counted =
        text.chars().anyMatch(Character::isDigit) ? told(text, table) : Optional.empty();
    return counted.flatMap(Loss::how).or(() -> Words.lossCause(text));
  }

  /** Causes of loss with their numbers in one cell: "2 (snag)", "1 snagged, 1 bitten off". */
  private static Optional<Loss> told(String lost, Table table) {
    int pieces = 0;
    int most = 0;
    Optional<LossCause> how = Optional.empty();
    String plain =
        COUNTED
            .matcher(lost.toLowerCase(Locale.ROOT))
            .replaceAll(
                found ->
                    Numbers.word(found.group(1))
                            .map(BigDecimal::toPlainString)
                            .orElse(found.group(1))
                        + " ");
    for (String part : plain.split("\\s*(?:[,;+&/]|\\band\\b)\\s*", -1)) {
      Matcher counted = PART.matcher(part);
      Optional<LossCause> cause =
          counted.matches() ? Words.lossCause(counted.group(2)) : Optional.empty();
      if (cause.isEmpty()) {
        return Optional.empty();
      }
      boolean bare = counted.group(1).isEmpty();
      int here = bare ? 1 : Integer.parseInt(counted.group(1));
      if (bare) {
        table.assume("A cause of loss without a number was taken as one piece lost.");
      }
      pieces += here;
      if (here > most) {
        most = here;
        how = cause;
      }
    }
    if (most < pieces) {
      table.assume(SEVERAL);
    }
    return Optional.of(new Loss(pieces, pieces > 0 ? how : Optional.empty()));
  }
}
