package traytally.report;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import traytally.ledger.Book;
import traytally.ledger.Fact.Guided;
import traytally.ledger.Setting;
import traytally.performance.Conditions;
import traytally.performance.StartingGuide;
import traytally.plastic.Tone;
import traytally.report.Column.Kind;
import traytally.trip.Leaning;
import traytally.trip.Months;

/** The starting guide: what to try first where the log is silent. */
public final class GuideReport {
  private static final List<Column> COLUMNS =
      List.of(
          new Column("species", "Fish", Kind.TEXT),
          new Column("clarity", "Water", Kind.TEXT),
          new Column("months", "Months", Kind.TEXT),
          new Column("tone", "Tone", Kind.TEXT),
          new Column("leaning", "Leaning", Kind.WHOLE),
          new Column("own", "Yours", Kind.YES_NO));

  private GuideReport() {}

  /** The guide of a book: the usual one, with the angler's changes. */
  public static StartingGuide guide(Book book) {
    boolean southern = book.settings().get(Setting.HEMISPHERE).equals("south");
    return StartingGuide.usual(southern)
        .with(book.facts(Guided.class).stream().map(Guided::leaning).toList());
  }

  /** The guide, line by line. */
  public static Report of(Book book, LocalDate asOf) {
    Set<Leaning> own =
        book.facts(Guided.class).stream().map(Guided::leaning).collect(Collectors.toSet());
    List<List<Value>> rows =
        guide(book).leanings().stream()
            .map(
                leaning ->
                    List.of(
                        Words.orUnknown(leaning.species()),
                        Words.orUnknown(leaning.clarity()),
                        leaning.months().map(Months::text).map(Value::of).orElse(Value.UNKNOWN),
                        Value.of(leaning.tone().word()),
                        Value.of(leaning.strength()),
                        Value.of(own.contains(leaning))))
            .toList();
    return new Report(
        "guide",
        "Starting guide",
        asOf,
        List.of(),
        COLUMNS,
        rows,
        List.of(),
        List.of(
            "Common practice, not evidence: it settles ties in a line-up where your log is silent,"
                + " and never moves trust. 2 is try it first, -2 is better left; a dash is any."));
  }

  /** What it says of a trip: {@code dark muted (+2), mid bright (-1)}. */
  static String words(StartingGuide guide, Conditions conditions) {
    String words =
        Arrays.stream(Tone.values())
            .filter(tone -> guide.leaning(tone, conditions) != 0)
            .map(tone -> tone.word() + signed(guide.leaning(tone, conditions)))
            .collect(Collectors.joining(", "));
    return words.isEmpty() ? "nothing for this trip" : words;
  }

  private static String signed(int leaning) {
    return " (" + (leaning > 0 ? "+" : "") + leaning + ")";
  }
}
