package traytally.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import traytally.intake.ListRow.Place;
import traytally.sheet.Cell;

/**
 * The rows above the first heading between the rows of a list: where shops or waters stand as
 * headings, the title over the list is theirs.
 */
final class FirstSection {
  private static final int LONGEST_NAME = 40;
  private static final int MOST_WORDS = 4;

  private static final Pattern ASIDE = Pattern.compile("\\s+[-–]\\s|\\s*[,:(]");

  /** Words of titles that only say what stands below. */
  private static final Pattern SAYS_WHAT =
      Pattern.compile(
          "(?i).*(?:\\d|\\b(?:logs?|trips?|diary|diaries|sessions?|fishing|fished|season|year|notes?"
              + "|catch(?:es)?|results?|prices?|list|shopping|shops?|orders?|offers?|packs?|plastics?"
              + "|lures?|cost|total|rained|blank(?:ed)?|lost|nothing|no)\\b).*");

  private final Table table;
  private final Field field;
  private final List<ListRow> bare = new ArrayList<>();

  FirstSection(Table table, Field field) {
    this.table = table;
    this.field = field;
  }

  /** Whether {@code text}, alone in a row, may be a name and no remark. */
  static boolean mayName(String text) {
    return text.length() < LONGEST_NAME
        && text.split("\\s+", -1).length <= MOST_WORDS
        && !SAYS_WHAT.matcher(text).matches();
  }

  /** The name that a title begins with, before a remark on it: {@code Splice Shed - post 3.20}. */
  static Optional<String> nameIn(String title) {
    return Optional.of(beforeAside(title)).filter(FirstSection::mayName);
  }

  /** What stands before the first remark in a heading. */
  static String beforeAside(String heading) {
    return ASIDE.split(heading, 2)[0].strip();
  }

  /** Takes in a row that stands under no heading. */
  void add(ListRow row) {
    bare.add(row);
  }

  /** Gives the rows the name in the nearest of {@code titles}. */
  void fill(List<String> titles) {
    Optional<String> name = titles.stream().findFirst().flatMap(FirstSection::nameIn);
    if (name.isEmpty()) {
      return;
    }
    Place place = new Place(Cell.text(name.get()), -1, true);
    bare.stream().filter(row -> row.isBlank(field)).forEach(row -> row.fill(field, place));
    boolean whole = name.get().equals(titles.get(0));
    table.assume(
        "The "
            + field.word()
            + (whole ? "" : " \"" + name.get() + "\"")
            + " was taken from the title \""
            + titles.get(0)
            + (whole ? "\"." : "\", whose other words were passed over."));
  }
}
