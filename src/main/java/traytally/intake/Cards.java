package traytally.intake;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import traytally.intake.CardLines.Line;
import traytally.intake.CardLines.Word;
import traytally.intake.Problem.Severity;
import traytally.sheet.Address;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/**
 * Outings, fished or planned, that do not stand in rows: a card of lines for each, or a column for
 * each beside the words that say what its cells tell; and plastics on cards with several words a
 * line.
 *
 * @param sheet the same under a row of headers, an outing a row
 * @param kind what they tell of
 * @param remarks what stands among the cards and is of none
 * @param how they stand, in a sentence
 */
record Cards(GivenSheet sheet, ListKind kind, List<Remark> remarks, String how) {
  private static final String STACKED =
      "Each %s stands on a card of its own, beside words for what it tells: each card was read as a"
          + " row.";
  private static final String ACROSS =
      "The headers stand down the left side and each %s in a column: each column was read as a"
          + " row.";

  /** Fewer words that a log has over its columns may be chance (an assumption). */
  private static final int FEWEST = 4;

  /** A day to come, or a plastic, has fewer things to tell. */
  private static final int FEWEST_OTHERWISE = 3;

  /** A cell that was left out, and as what. */
  record Remark(Cell cell, Address at, String left) {}

  Cards {
    remarks = List.copyOf(remarks);
  }

  /** The cards of {@code sheet}, if it holds nothing else. */
  static Optional<Cards> of(
      GivenSheet sheet, Optional<ListKind> wanted, Map<String, Optional<Field>> given) {
    return CardLines.stacked(sheet)
        .flatMap(lines -> new Reading(sheet, lines, STACKED).upright(wanted, given))
        .or(
            () ->
                CardLines.across(sheet)
                    .flatMap(lines -> new Reading(sheet, lines, ACROSS).upright(wanted, given)));
  }

  /** The cards of one sheet as they are set upright. */
  private static final class Reading {
    private final GivenSheet sheet;
    private final CardLines lines;
    private final String how;
    private final List<Card> cards = new ArrayList<>();
    private final Set<String> repeated = new HashSet<>();
    private final Map<Card.Key, Integer> columns = new LinkedHashMap<>();
    private final Map<Card.Key, String> typed = new HashMap<>();
    private final List<String> headers = new ArrayList<>();
    private final List<Row> rows = new ArrayList<>();
    private final Map<Address, Address> places = new HashMap<>();
    private final List<Remark> remarks = new ArrayList<>();

    Reading(GivenSheet sheet, CardLines lines, String how) {
      this.sheet = sheet;
      this.lines = lines;
      this.how = how;
      lines.remarks().forEach(this::remark);
      for (List<Line> run : lines.runs()) {
        Card.in(run).forEach(this::add);
      }
      // In the order of the rows, as one reads them, where they stand side by side.
      cards.sort(
          Comparator.<Card>comparingInt(card -> card.first().row())
              .thenComparingInt(card -> card.first().column()));
    }

    private void remark(Row row) {
      int column = Pairs.filled(row).stream().findFirst().orElse(0);
      Address at = new Address(row.number(), column);
      remarks.add(new Remark(row.cell(column), at, "was read as a remark and left out."));
    }

    /** Adds a card, or leaves out the sums and units beside the outings. */
    private void add(Card card) {
      if (card.tellsOuting()) {
        cards.add(card);
      } else {
        card.lines().values().stream()
            .filter(line -> !line.value().isBlank())
            .findFirst()
            .map(line -> new Remark(line.value(), line.at(), "is of no outing and was left out."))
            .ifPresent(remarks::add);
      }
    }

    Optional<Cards> upright(Optional<ListKind> wanted, Map<String, Optional<Field>> given) {
      if (cards.isEmpty()) {
        return Optional.empty();
      }
      cards.forEach(card -> repeated.addAll(card.repeated()));
      name();
      List<ColumnHeader> named = headers.stream().map(ColumnHeader::of).toList();
      Optional<ColumnGuess> guess =
          ColumnGuess.best(named, wanted, given).filter(g -> mayBe(g.kind()) && fits(g));
      if (guess.isEmpty()) {
        return Optional.empty();
      }
      cards.forEach(this::refuseDoubt);
      setUpright();
      GivenSheet upright =
          new GivenSheet(sheet.file(), sheet.name(), sheet.hidden(), rows, List.of(), places);
      ListKind kind = guess.get().kind();
      String what = kind == ListKind.BOX ? "plastic" : "outing";
      return Optional.of(new Cards(upright, kind, remarks, String.format(Locale.ROOT, how, what)));
    }

    /** Gives each word a column, and each word told of several plastics one for each of them. */
    private void name() {
      int most = 1;
      for (Card card : cards) {
        for (Map.Entry<Card.Key, Line> entry : card.lines().entrySet()) {
          most = Math.max(most, entry.getKey().plastic());
          Word word = entry.getValue().word();
          column(new Card.Key(word.stem(), 1), word.text());
          word.number().ifPresent(n -> typed.putIfAbsent(entry.getKey(), word.text()));
        }
      }
      List<Card.Key> first = List.copyOf(columns.keySet());
      for (int plastic = 2; plastic <= most; plastic++) {
        for (Card.Key key : first) {
          if (repeated.contains(key.word())) {
            Card.Key own = new Card.Key(key.word(), plastic);
            String word = typed.containsKey(key) ? key.word() : headers.get(columnOf(key));
            column(own, typed.getOrDefault(own, word + " " + plastic));
          }
        }
      }
    }

    private void column(Card.Key key, String header) {
      if (columns.putIfAbsent(key, columns.size()) == null) {
        headers.add(header);
      }
    }

    private int columnOf(Card.Key key) {
      boolean own = repeated.contains(key.word());
      return columns.getOrDefault(own ? key : new Card.Key(key.word(), 1), 0);
    }

    private boolean mayBe(ListKind kind) {
      return switch (kind) {
        case TRIPS, PLAN -> true;
        // Of one word a line they are read as a list with its headers down its side.
        case BOX -> lines.severalInRow() && repeated.isEmpty();
        case PRICES -> false;
      };
    }

    private boolean fits(ColumnGuess guess) {
      int known = guess.columns().size();
      long words = columns.keySet().stream().map(Card.Key::word).distinct().count();
      boolean day = guess.kind() == ListKind.BOX || mostTell(guess, Field.DATE);
      boolean lure = mostTell(guess, Field.BODY) || mostTell(guess, Field.COLOUR);
      return known >= (guess.kind() == ListKind.TRIPS ? FEWEST : FEWEST_OTHERWISE)
          && known >= words / 2
          && day
          && (lure || guess.kind() == ListKind.PLAN);
    }

    /** Whether most cards tell a day, or a plastic in words, under the header for it. */
    private boolean mostTell(ColumnGuess guess, Field field) {
      int column = guess.columns().getOrDefault(field, -1);
      int telling = 0;
      for (Card card : cards) {
        for (Map.Entry<Card.Key, Line> entry : card.lines().entrySet()) {
          boolean here = columnOf(entry.getKey()) == column;
          telling += here && tells(entry.getValue().value(), field) ? 1 : 0;
        }
      }
      return telling * 2 > cards.size();
    }

    private static boolean tells(Cell cell, Field field) {
      return field == Field.DATE
          ? cell instanceof Cell.DateTime || Dates.isDate(cell.shown())
          : cell instanceof Cell.Text && cell.shown().matches(".*\\p{L}{2}.*");
    }

    private void refuseDoubt(Card card) {
      Optional<Line> doubt = card.doubt(repeated);
      if (doubt.isPresent()) {
        Line line = doubt.get();
        String what =
            "may be of one plastic of this card or of all. Write it below each plastic, or each"
                + " plastic on a card of its own.";
        throw new ListRefusedException(
            Problem.of(
                    sheet,
                    line.at().row(),
                    line.at().column(),
                    line.word().text(),
                    what,
                    Severity.PROBLEM)
                .sentence());
      }
    }

    private void setUpright() {
      rows.addAll(lines.titles());
      int number = cards.stream().mapToInt(card -> card.first().row()).min().orElse(1);
      rows.add(new Row(number, headers.stream().map(Cell::text).toList(), false));
      for (Card card : cards) {
        number++;
        List<Cell> cells = new ArrayList<>(Collections.nCopies(headers.size(), Cell.blank()));
        for (Map.Entry<Card.Key, Line> entry : card.lines().entrySet()) {
          int column = columnOf(entry.getKey());
          cells.set(column, entry.getValue().value());
          places.put(new Address(number, column), entry.getValue().at());
        }
        rows.add(new Row(number, cells, false));
      }
    }
  }

  /** Says in the first of {@code lists}, read from them, what of {@code given} was left out. */
  void tell(GivenSheet given, List<Table> lists) {
    for (Table list : lists) {
      list.assume(how);
    }
    for (Remark remark : lists.isEmpty() ? List.<Remark>of() : remarks) {
      String text = remark.cell().shown().strip();
      Address at = remark.at();
      lists
          .get(0)
          .problems()
          .add(Problem.of(given, at.row(), at.column(), text, remark.left(), Severity.NOTE));
    }
  }
}
