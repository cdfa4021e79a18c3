package traytally.intake;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import traytally.intake.HeaderSearch.Remembered;
import traytally.ledger.Book;
import traytally.ledger.Fact;

/** Finds the lists of the sheets of one import, and says of a file without one what was sought. */
final class ListSearch {
  /** A key is written beside a list that a person looks through (an assumption). */
  private static final int LONGEST_KEYED = 5_000;

  private final List<GivenSheet> sheets;
  private final Book book;
  private final ImportOptions options;
  private final LocalDate today;

  ListSearch(List<GivenSheet> sheets, Book book, ImportOptions options, LocalDate today) {
    this.sheets = List.copyOf(sheets);
    this.book = book;
    this.options = options;
    this.today = today;
  }

  /**
   * The lists of each sheet.
   *
   * @throws ListRefusedException if a file holds none
   */
  Map<GivenSheet, List<Table>> lists() {
    Map<GivenSheet, List<Table>> found = new LinkedHashMap<>();
    Map<String, Remembered> remembered = remembered();
    Set<String> files = new LinkedHashSet<>();
    for (GivenSheet sheet : sheets) {
      files.add(sheet.file());
      if (options.sheets().isEmpty()
          || options.sheets().stream().anyMatch(s -> s.equalsIgnoreCase(sheet.name()))) {
        found.put(sheet, Printed.is(sheet) ? List.of() : lists(sheet, remembered));
      }
    }
    for (String file : files) {
      if (found.entrySet().stream()
          .noneMatch(e -> e.getKey().file().equals(file) && !e.getValue().isEmpty())) {
        throw new ListRefusedException(unrecognised(file));
      }
    }
    List<Table> tables = found.values().stream().flatMap(List::stream).toList();
    found.forEach(
        (sheet, lists) -> {
          if (lists.isEmpty() && !sheet.name().isEmpty() && !Printed.is(sheet)) {
            new Legend(sheet).spellOut(tables);
          }
          if (!lists.isEmpty() && sheet.rows().size() < LONGEST_KEYED) {
            new Legend(sheet, lists).spellOut(lists);
          }
        });
    return found;
  }

  /** What was bought tells shops and prices too: with --add, it is the pieces that are meant. */
  private List<Table> lists(GivenSheet sheet, Map<String, Remembered> remembered) {
    List<Table> lists =
        new TableSearch(sheet, options.kind(), options.map(), remembered, today).tables();
    boolean prices = lists.stream().anyMatch(list -> list.kind() == ListKind.PRICES);
    if (!options.add() || options.kind().isPresent() || !prices) {
      return lists;
    }
    List<Table> bought =
        new TableSearch(sheet, Optional.of(ListKind.BOX), options.map(), Map.of(), today).tables();
    return bought.isEmpty() ? lists : bought;
  }

  private String unrecognised(String file) {
    List<String> names =
        sheets.stream().filter(s -> s.file().equals(file)).map(GivenSheet::name).toList();
    if (!options.sheets().isEmpty()
        && names.stream().noneMatch(n -> options.sheets().stream().anyMatch(n::equalsIgnoreCase))) {
      return file
          + ": no sheet is called "
          + String.join(" or ", options.sheets())
          + ". Its sheets: "
          + String.join(", ", names)
          + ".";
    }
    if (sheets.stream().anyMatch(s -> s.file().equals(file) && Printed.is(s))) {
      return file
          + ": "
          + Printed.SENTENCE
          + ". To enter what you bought, import a list of it with --add.";
    }
    if (options.kind().isPresent()) {
      return file
          + ": no list of this kind was found. Looked for a row of headers such as "
          + ColumnGuess.wanted(options.kind().get())
          + ". Name them so, or pass --map 'their header=our field'.";
    }
    Optional<String> uncounted =
        sheets.stream()
            .filter(sheet -> sheet.file().equals(file))
            .flatMap(sheet -> new Uncounted(sheet, options.map()).question().stream())
            .findFirst();
    if (uncounted.isPresent()) {
      return file + ": " + uncounted.get();
    }
    StringBuilder looked = new StringBuilder();
    for (ListKind kind : ListKind.values()) {
      looked
          .append(looked.length() == 0 ? "" : "; ")
          .append(ColumnGuess.wanted(kind))
          .append(" (")
          .append(kind.word())
          .append(')');
    }
    return file
        + ": no list was found. Looked for a row of headers such as "
        + looked
        + ". Name them so, or pass --as and --map 'their header=our field'.";
  }

  private Map<String, Remembered> remembered() {
    Map<String, Remembered> remembered = new HashMap<>();
    for (Fact.Mapped mapped : book.facts(Fact.Mapped.class)) {
      Mapping.parse(mapped).ifPresent(r -> remembered.put(mapped.headers(), r));
    }
    return remembered;
  }
}
