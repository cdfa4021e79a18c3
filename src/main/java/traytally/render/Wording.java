package traytally.render;

import java.text.DecimalFormatSymbols;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import traytally.plastic.Money;
import traytally.report.Column;
import traytally.report.Report;
import traytally.report.Value;

/** The words and figures a person reads in place of a report's values. */
final class Wording {
  static final String UNKNOWN = "–";

  private static final String DASHED =
      "A swatch with a dashed outline is guessed from the words of the colour's name.";

  private final Report report;
  private final Look look;
  private final List<Currency> currencies;
  private final boolean ownDigits; // 0 to 9, which not every country writes

  Wording(Report report, Look look) {
    this.report = report;
    this.look = look;
    this.ownDigits = DecimalFormatSymbols.getInstance(look.locale()).getZeroDigit() == '0';
    this.currencies = currencies(report);
  }

  private static List<Currency> currencies(Report report) {
    List<Column> columns = report.columns();
    int[] money =
        IntStream.range(0, columns.size())
            .filter(i -> columns.get(i).kind() == Column.Kind.MONEY)
            .toArray();
    Stream<List<Value>> rows = money.length > 0 ? report.rows().stream() : Stream.empty();
    Stream<Value> values =
        Stream.concat(
            rows.flatMap(row -> Arrays.stream(money).mapToObj(row::get)),
            report.facts().stream().map(Report.Single::value));
    return values
        .filter(Value.Sum.class::isInstance)
        .map(value -> ((Value.Sum) value).money().currency())
        .collect(
            Collectors.toCollection(
                () -> new TreeSet<>(Comparator.comparing(Currency::getCurrencyCode))))
        .stream()
        .toList();
  }

  /** The title and the day it holds for. */
  String title() {
    String title = clean(report.title());
    String day = report.asOf().toString();
    return title.contains(day) ? title : title + " · " + day;
  }

  /** What holds for all rows, and is said above them. */
  List<Report.Single> facts() {
    return factsForPeople(false);
  }

  /** What the rows come to, said below them as on a bill: facts that are money. */
  List<Report.Single> sums() {
    return factsForPeople(true);
  }

  private List<Report.Single> factsForPeople(boolean money) {
    return report.facts().stream()
        .filter(f -> f.column().forPeople() && money == (f.column().kind() == Column.Kind.MONEY))
        .toList();
  }

  List<String> notes() {
    return report.notes().stream().map(this::sentence).toList();
  }

  /** The notes where swatches are drawn, with what a dashed one means if there is one. */
  List<String> notesOnPictures() {
    boolean guessed =
        report.rows().stream()
            .flatMap(List::stream)
            .anyMatch(value -> value instanceof Value.Tint tint && tint.assumed());
    return guessed ? Stream.concat(notes().stream(), Stream.of(DASHED)).toList() : notes();
  }

  /** Whether amounts of several currencies stand in the report, so that each must name its own. */
  boolean mixedMoney() {
    return currencies.size() > 1;
  }

  /** The heading of a column; one of money names the report's currency. */
  String heading(Column column) {
    boolean named = column.kind() == Column.Kind.MONEY && currencies.size() == 1;
    return clean(column.label()) + (named ? " (" + currencies.get(0) + ")" : "");
  }

  /** The text of a cell. */
  String cell(Column column, Value value) {
    if (column.kind() == Column.Kind.TICK) {
      return value.equals(Value.of(true)) ? "[x]" : "[ ]";
    } else if (value instanceof Value.Text text) {
      return column.kind() == Column.Kind.SENTENCE ? sentence(text.text()) : clean(text.text());
    } else if (value instanceof Value.Whole whole) {
      return number(column.kind(), (double) whole.number());
    } else if (value instanceof Value.Decimal decimal) {
      return number(column.kind(), decimal.number());
    } else if (value instanceof Value.Sum sum) {
      return mixedMoney() ? moneyWithCurrency(sum.money()) : amount(sum.money());
    } else if (value instanceof Value.Day day) {
      return day.date().toString();
    } else if (value instanceof Value.Tint tint) {
      return tint.swatch().toString();
    } else if (value instanceof Value.YesNo answer) {
      return answer.yes() ? "yes" : "no";
    }
    return UNKNOWN;
  }

  /** A sentence of the program's own, its figures written as the look's country does. */
  String sentence(String text) {
    return Sentence.of(clean(text), look.locale());
  }

  /** A fact as {@code Label: value}. */
  String fact(Report.Single fact) {
    return clean(fact.column().label()) + ": " + factValue(fact);
  }

  /** The value of a fact; money names its currency. */
  String factValue(Report.Single fact) {
    return fact.value() instanceof Value.Sum sum
        ? moneyWithCurrency(sum.money())
        : cell(fact.column(), fact.value());
  }

  private String moneyWithCurrency(Money money) {
    return amount(money) + " " + money.currency();
  }

  private String amount(Money money) {
    return String.format(look.locale(), "%,.2f", money.cents() / 100.0);
  }

  private String number(Column.Kind kind, double number) {
    return switch (kind) {
      case CHANCE -> chance(number);
      case LENGTH -> look.unit().say(number);
      case DECIMAL -> String.format(look.locale(), "%,.1f", withoutMinusZero(number));
      case TEXT, SENTENCE, WHOLE, MONEY, DATE, YES_NO, TICK, SWATCH ->
          number == Math.rint(number)
              ? whole((long) number)
              : String.format(look.locale(), "%,.1f", number);
    };
  }

  /** A number that would print as minus nought prints as nought. */
  private static double withoutMinusZero(double number) {
    return Math.abs(number) < 0.05 ? 0 : number;
  }

  /** A chance in whole per cents; never 0 % or 100 % for what is only nearly so. */
  private String chance(double chance) {
    if (chance > 0 && chance < 0.005) {
      return "<1 %";
    } else if (chance < 1 && chance >= 0.995) {
      return ">99 %";
    }
    return whole(Math.round(chance * 100)) + " %";
  }

  /** A whole number; most are short, and a table of them is told in half the time so. */
  private String whole(long number) {
    return number >= 0 && number < 1000 && ownDigits
        ? Long.toString(number)
        : String.format(look.locale(), "%,d", number);
  }

  /**
   * {@code text} with nothing in it that a terminal obeys: control characters become spaces, and
   * invisible format characters go (among them those that turn the direction of writing), but for
   * the joiners inside words and pictures.
   */
  static String clean(String text) {
    if (DisplayWidth.isPlain(text)) {
      return text.strip();
    }
    StringBuilder clean = new StringBuilder(text.length());
    text.codePoints().forEach(c -> appendVisible(clean, c));
    return clean.toString().strip();
  }

  private static void appendVisible(StringBuilder clean, int codePoint) {
    switch (Character.getType(codePoint)) {
      case Character.CONTROL, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR ->
          clean.append(' ');
      case Character.SURROGATE -> clean.append('\uFFFD');
      case Character.FORMAT -> {
        if (joins(codePoint)) {
          clean.appendCodePoint(codePoint);
        }
      }
      default -> clean.appendCodePoint(codePoint);
    }
  }

  /** Joiner and non-joiner, and the tags that make flags of regions. */
  private static boolean joins(int codePoint) {
    return codePoint == 0x200C
        || codePoint == 0x200D
        || (codePoint >= 0xE0020 && codePoint <= 0xE007F);
  }
}
