package traytally.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which of several lists of the box are what is there now: not the wish list, not what was lost,
 * not a summary of the others, and of several counts of the same plastics the newest.
 */
final class InStock {
  private static final Pattern NOT_THERE =
      Pattern.compile(
          "(?:(?:my|the|all|plastics|lures|baits|pieces|ones|what|i) )*"
              + "(?:wish ?list|wish|wants?|wanted|needs?|needed|to order|on order|ordered|to buy|to get|shopping list|lost|given away|gave away|gave to|given to|swapped"
              + "|sold|used up|broken|worn out)(?: \\S+){0,4}");

  /** What anglers keep and count beside soft plastics (common practice). */
  private static final Pattern OTHER_TACKLE =
      Pattern.compile(
          "(?:(?:my|the|all|spare) )*(?:jig ?heads?|heads|hooks?|weights?|leads?|sinkers?|swivels?"
              + "|lines?|leaders?|braid|rods?|reels?|clips?|beads?|floats?|flies|spoons?|spinners?"
              + "|plugs?|metals?|hard ?(?:baits?|lures?)|crank ?baits?|top ?water|terminal tackle)"
              + "(?: \\S+){0,2}");

  private static final Pattern SUMMARY =
      Pattern.compile("(?:summary|totals?|overview|all|all together|everything|grand totals?)");
  private static final Pattern OLD =
      Pattern.compile("(?:.* )?(?:old|backup|copy|archived?|previous|before)(?: .*)?");

  private static final String MONTH = "(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\\.?";
  private static final Pattern MONTH_ONLY = Pattern.compile("\\b" + MONTH + "(?: (20\\d\\d))?");
  private static final Pattern YEAR_ONLY = Pattern.compile("(?<!\\d)(20\\d\\d)(?!\\d)");
  private static final String MONTHS = "janfebmaraprmayjunjulaugsepoctnovdec";

  /** Counts of the same plastics share at least half of them (an assumption). */
  private static final int HALF = 2;

  private final ImportOptions options;
  private final LocalDate today;
  private final Map<Table, Set<String>> plastics = new LinkedHashMap<>();
  private final Map<Table, String> passed = new LinkedHashMap<>();

  /**
   * Looks through the lists of the box of one import.
   *
   * @throws ListRefusedException if none is of what is there, and nobody said it is
   */
  InStock(List<Table> lists, ImportOptions options, LocalDate today) {
    this.options = options;
    this.today = today;
    for (Table list : lists) {
      Set<String> named = new HashSet<>();
      list.rows().forEach(row -> named.add(plastic(row)));
      plastics.put(list, named);
    }
    lists.forEach(this::look);
    if (lists.size() > 1) {
      newest();
    }
    if (passed.size() == lists.size()) {
      passed.forEach(this::settle);
      passed.clear();
    }
  }

  /** The lists to be passed over, and why: {@code The list "Want" is not of what is there}. */
  Map<Table, String> passed() {
    return passed;
  }

  /** There is no other list: it is taken if the person meant it so. */
  private void settle(Table list, String why) {
    if (options.kind().isEmpty()) {
      String add = cameIn(list) ? " To add what came to what is there, pass --add." : "";
      throw new ListRefusedException(
          list.sheet().source() + ": " + why + ". If it is, pass --as box." + add);
    }
    list.assume(why + ", but --as box says it is.");
  }

  /** Whether {@code folded} names tackle that holds no plastics. */
  static boolean isOtherTackle(String folded) {
    return OTHER_TACKLE.matcher(folded).matches() && Anatomy.bodyWords(folded) == 0;
  }

  private static String plastic(ListRow row) {
    return WordList.fold(
        String.join(
            "|",
            row.text(Field.MAKER),
            row.text(Field.BODY),
            row.text(Field.COLOUR),
            row.text(Field.LENGTH)));
  }

  /** Whether it counts what came, and the person did not say that it is to be added. */
  private boolean cameIn(Table list) {
    return !options.add()
        && list.header(Field.PIECES)
            .filter(h -> HeaderWords.isUsual(h.folded(), Field.BOUGHT_SINCE, ListKind.BOX))
            .filter(h -> !HeaderWords.isUsual(h.folded(), Field.PIECES, ListKind.BOX))
            .isPresent()
        && !options.map().containsKey(list.header(Field.PIECES).get().folded());
  }

  private void look(Table list) {
    if (cameIn(list)) {
      pass(
          list,
          list.header(Field.PIECES).orElseThrow().text(),
          "counts what came: it is not of what is there");
    }
    for (String name : list.names()) {
      String folded = WordList.fold(name);
      if (NOT_THERE.matcher(folded).matches()) {
        pass(list, name, "is not of what is there");
      } else if (isOtherTackle(folded) && !namesShapes(list)) {
        pass(list, name, "is of other tackle");
      } else if (SUMMARY.matcher(folded).matches() && others(list).containsAll(named(list))) {
        pass(list, name, "repeats the others");
      } else if (addsUp(list)) {
        pass(list, name, "adds up the others");
      } else if (OLD.matcher(folded).matches() && shares(named(list), others(list))) {
        pass(list, name, "is an older one of the same plastics");
      }
    }
  }

  /** Whether most rows name shapes and colours, whatever the tab is called. */
  private static boolean namesShapes(Table list) {
    long named =
        list.rows().stream()
            .filter(
                row -> Anatomy.bodyWords(row.text(Field.BODY)) > 0 && !row.isBlank(Field.COLOUR))
            .count();
    return named * 2 > list.rows().size();
  }

  /** Whether a list without colours counts shapes of which the others tell the colours. */
  private boolean addsUp(Table list) {
    Set<String> coloured = new HashSet<>();
    for (Table other : plastics.keySet()) {
      if (other.rows().stream().anyMatch(row -> !row.isBlank(Field.COLOUR))) {
        other.rows().forEach(row -> coloured.add(WordList.fold(row.text(Field.BODY))));
      }
    }
    return !list.rows().isEmpty()
        && list.rows().stream()
            .allMatch(
                row ->
                    row.isBlank(Field.COLOUR)
                        && !row.isBlank(Field.BODY)
                        && coloured.contains(WordList.fold(row.text(Field.BODY))));
  }

  private void pass(Table list, String name, String why) {
    passed.putIfAbsent(list, "The list \"" + name + "\" " + why);
  }

  private Set<String> named(Table list) {
    return plastics.getOrDefault(list, Set.of());
  }

  private Set<String> others(Table list) {
    Set<String> others = new HashSet<>();
    plastics.forEach((other, named) -> others.addAll(other.equals(list) ? Set.of() : named));
    return others;
  }

  private static boolean shares(Set<String> some, Set<String> others) {
    long shared = some.stream().filter(others::contains).count();
    return shared * HALF >= Math.min(some.size(), others.size()) && shared > 0;
  }

  /** A list under a date, and the name that tells it. */
  private record Dated(Table list, String name, LocalDate date) {}

  /** Passes over what a later list counts again. */
  private void newest() {
    List<Dated> dated = new ArrayList<>();
    for (Table list : plastics.keySet()) {
      if (!passed.containsKey(list)) {
        list.names().stream()
            .flatMap(name -> date(name).map(date -> new Dated(list, name, date)).stream())
            .findFirst()
            .ifPresent(dated::add);
      }
    }
    for (Dated older : dated) {
      boolean again =
          dated.stream()
              .anyMatch(
                  later ->
                      later.date().isAfter(older.date())
                          && !isPartOf(later, older)
                          && shares(named(older.list()), named(later.list())));
      if (again) {
        pass(older.list(), older.name(), "is older than another of the same plastics");
      }
    }
  }

  /**
   * Whether some of one list's plastics stand again under a later day further down: each plastic
   * then goes by its own newest day.
   */
  private boolean isPartOf(Dated later, Dated older) {
    return later.list().sheet().equals(older.list().sheet())
        && later.list().rows().size() < older.list().rows().size()
        && named(older.list()).containsAll(named(later.list()))
        && BoxRows.tellsCount(later.name())
        && BoxRows.tellsCount(older.name());
  }

  /** The day, month or year that a name tells, as a day; a month without a year is the last one. */
  private Optional<LocalDate> date(String name) {
    String plain = Numbers.plain(name).toLowerCase(Locale.ROOT);
    Optional<LocalDate> day = Dates.within(plain, today);
    if (day.isPresent()) {
      return day;
    }
    Matcher month = MONTH_ONLY.matcher(plain);
    if (month.find()) {
      int number = MONTHS.indexOf(month.group(1)) / 3 + 1;
      int year =
          month.group(2) != null
              ? Integer.parseInt(month.group(2))
              : today.getYear() - (number > today.getMonthValue() ? 1 : 0);
      return Optional.of(LocalDate.of(year, number, 1));
    }
    Matcher year = YEAR_ONLY.matcher(plain);
    return year.find()
        ? Optional.of(LocalDate.of(Integer.parseInt(year.group(1)), 1, 1))
        : Optional.empty();
  }
}
