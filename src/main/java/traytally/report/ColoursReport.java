package traytally.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import traytally.ledger.Book;
import traytally.ledger.Fact.ColourWord;
import traytally.ledger.Palette;
import traytally.plastic.Colour;
import traytally.plastic.Look;
import traytally.plastic.Swatch;
import traytally.report.Column.Kind;

/** How the colours of a box look, and the words that look is assumed from. */
public final class ColoursReport {
  private static final List<Column> COLUMNS =
      List.of(
          Swatches.COLUMNS.get(0),
          Swatches.COLUMNS.get(1),
          new Column("colour", "Colour", Kind.TEXT),
          new Column("base", "Base swatch", Kind.TEXT),
          new Column("flake", "Flake swatch", Kind.TEXT),
          new Column("finish", "Finish", Kind.TEXT),
          new Column("tone", "Tone", Kind.TEXT),
          new Column("assumed", "Assumed", Kind.YES_NO));

  private static final List<Column> WORDS =
      List.of(
          new Column("word", "Word", Kind.TEXT),
          new Column("swatch", "Swatch", Kind.TEXT),
          new Column("own", "Yours", Kind.YES_NO));

  private ColoursReport() {}

  /** Every colour of a book. */
  public static Report of(Book book, LocalDate asOf) {
    List<List<Value>> rows = new ArrayList<>();
    int assumed = 0;
    for (Palette.Entry entry : Palette.of(book).entries().values()) {
      Colour colour = entry.colour();
      assumed += entry.assumed() ? 1 : 0;
      rows.add(
          List.of(
              Value.ofSwatch(colour.base(), entry.assumed()),
              Value.ofSwatch(colour.flake(), entry.assumed()),
              Value.of(colour.name().text()),
              colour.base().map(Swatch::toString).map(Value::of).orElse(Value.UNKNOWN),
              colour.flake().map(Swatch::toString).map(Value::of).orElse(Value.UNKNOWN),
              Words.orUnknown(colour.finish()),
              Words.orUnknown(colour.look().map(Look::tone)),
              Value.of(entry.assumed())));
    }
    List<String> notes =
        assumed == 0
            ? List.of()
            : List.of(
                Words.count(assumed, "look")
                    + " assumed from everyday words in the name. Give a swatch in your list, or say"
                    + " what a word stands for: traytally colours set WORD #RRGGBB.");
    return new Report("colours", "Colours", asOf, List.of(), COLUMNS, rows, List.of(), notes);
  }

  /** The words that stand for a swatch. */
  public static Report words(Book book, LocalDate asOf) {
    List<List<Value>> rows = new ArrayList<>();
    Palette.of(book)
        .lexicon()
        .swatches()
        .forEach(
            (word, swatch) ->
                rows.add(
                    List.of(
                        Value.of(word.text()),
                        Value.of(swatch.toString()),
                        Value.of(
                            book.facts(ColourWord.class).stream()
                                .anyMatch(own -> own.word().equals(word))))));
    return new Report(
        "colours",
        "Colour words",
        asOf,
        List.of(),
        WORDS,
        rows,
        List.of(),
        List.of("A colour without a swatch is taken to look as the words of its name say."));
  }
}
