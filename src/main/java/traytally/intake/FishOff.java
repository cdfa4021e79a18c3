package traytally.intake;

import java.util.Set;
import java.util.regex.Pattern;
import traytally.sheet.Address;

/** Columns of fish that got off: they tell neither lost pieces nor what was fished for. */
final class FishOff {
  private static final Pattern HEADER =
      Pattern.compile(
          "(?:(?:no|nr|number|how many|of) )*"
              + "(?:fish (?:that )?(?:were )?(?:lost|dropped|off|got off|came off|shed)"
              + "|(?:lost|dropped|shed) fish|dropped|got off|shook off|threw the hook)"
              + "(?: at (?:the )?net)?");

  /** What may be of fish where another column tells the lost pieces in so many words. */
  private static final Set<String> LOST = Set.of("lost", "losses", "gone");

  private FishOff() {}

  /** Whether such a column stands under {@code header}, folded. */
  static boolean is(String header) {
    return HEADER.matcher(header).matches();
  }

  /** Says which columns of a log were passed over for it. */
  static void say(Table log) {
    boolean pieces = log.header(Field.LOST).filter(h -> !LOST.contains(h.folded())).isPresent();
    for (int column = 0; column < log.headers().size(); column++) {
      ColumnHeader header = log.headers().get(column);
      boolean fish = is(header.folded()) || (pieces && LOST.contains(header.folded()));
      if (fish && !log.guess().columns().containsValue(column)) {
        log.assume(
            "Column "
                + Address.columnLetters(column)
                + " (\""
                + header.text()
                + "\") was taken for fish that got off, not for pieces, and passed over.");
      }
    }
  }
}
