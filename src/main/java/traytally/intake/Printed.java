package traytally.intake;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import traytally.sheet.Row;

/** Tells a shopping list that this program printed: it is for the shop, and no list of the box. */
final class Printed {
  /** Headings that stand together in no list but that one. */
  private static final Set<String> HEADINGS =
      Set.of("got", "run out chance", "packs", "why", "stand in");

  /** The heading stands below a title and a few lines on the trips counted (an assumption). */
  private static final int HEADING_WITHIN = 30;

  static final String SENTENCE =
      "This is a shopping list that traytally printed, not a list of yours";

  private Printed() {}

  static boolean is(GivenSheet sheet) {
    List<Row> rows = sheet.rows();
    return rows.stream().limit(HEADING_WITHIN).anyMatch(Printed::isHeading);
  }

  private static boolean isHeading(Row row) {
    Set<String> headings = new TreeSet<>();
    row.cells().forEach(cell -> headings.add(WordList.fold(cell.shown())));
    return headings.containsAll(HEADINGS);
  }
}
