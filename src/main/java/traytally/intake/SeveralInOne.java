package traytally.intake;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.intake.ListRow.Place;
import traytally.sheet.Cell;

/**
 * Splits a log's row that names several plastics in one cell: {@code Slim shad copper 85mm 2 takes;
 * ball tail olive 65mm lost 1}.
 *
 * <p>The trip's minutes are shared out evenly, and it is said. Its fish and losses are never shared
 * out: the cell must tell whose they are, unless there were none.
 */
final class SeveralInOne {
  private static final Pattern PARTS = Pattern.compile("\\s*(?:;|\\n|\\|| \\+ | then )\\s*");
  private static final Pattern COMMAS = Pattern.compile("\\s*,\\s*(?=\\D)");

  private static final String NUMBER = "(\\d+|no|none|" + String.join("|", Numbers.WORDS) + ")";

  /** What a part may tell of its own plastic, with the words before or behind the number. */
  private static final Map<Field, Pattern> TOLD =
      Map.of(
          Field.TAKES, told("takes?|hits?|bites?|strikes?|knocks?"),
          Field.HOOKED, told("hooked|hook-?ups?"),
          Field.LANDED, told("landed|caught|fish"),
          Field.LOST, told("lost"),
          Field.MINUTES, Pattern.compile("(\\d+)()\\s*(?:min(?:ute)?s?)\\b"));

  private final Table table;

  SeveralInOne(Table table) {
    this.table = table;
  }

  private static Pattern told(String words) {
    return Pattern.compile(
        NUMBER + "\\s+(?:" + words + ")\\b|\\b(?:" + words + ")\\s*:?\\s*" + NUMBER);
  }

  /** One plastic of the cell and what is told of it. */
  private record Part(Anatomy plastic, Map<Field, String> told) {}

  void run() {
    List<ListRow> rows = new ArrayList<>();
    for (ListRow row : table.rows()) {
      List<Part> parts =
          row.isBlank(Field.COLOUR) ? parts(row.place(Field.BODY).cell().shown()) : List.of();
      if (parts.size() > 1) {
        rows.addAll(split(row, parts));
      } else {
        rows.add(row);
      }
    }
    table.rows().clear();
    table.rows().addAll(rows);
  }

  /** The parts of the cell, if every one of them names a plastic. */
  private static List<Part> parts(String text) {
    String[] pieces = PARTS.split(text.strip());
    return whole(pieces.length > 1 ? pieces : COMMAS.split(text));
  }

  private static List<Part> whole(String[] pieces) {
    List<Part> parts = new ArrayList<>();
    for (String piece : pieces) {
      Map<Field, String> told = new EnumMap<>(Field.class);
      String rest = Numbers.plain(piece).toLowerCase(Locale.ROOT);
      for (Map.Entry<Field, Pattern> entry : TOLD.entrySet()) {
        Matcher found = entry.getValue().matcher(rest);
        if (found.find()) {
          String number = found.group(1) == null ? found.group(2) : found.group(1);
          told.put(entry.getKey(), digits(number));
          rest = rest.substring(0, found.start()) + " " + rest.substring(found.end());
        }
      }
      Anatomy plastic =
          Anatomy.of(rest.replaceAll("\\(\\s*[,;]*\\s*\\)", " ").replaceAll("[\\s,:(\\-]+$", ""));
      if (!plastic.isWhole() || !plastic.quantity().isEmpty()) {
        return List.of();
      }
      parts.add(new Part(plastic, told));
    }
    return parts;
  }

  private static String digits(String number) {
    return number.startsWith("no")
        ? "0"
        : Numbers.word(number).map(BigDecimal::toPlainString).orElse(number);
  }

  private List<ListRow> split(ListRow row, List<Part> parts) {
    List<ListRow> rows = new ArrayList<>();
    Optional<String> share = share(row, parts);
    int column = row.place(Field.BODY).column();
    for (Part part : parts) {
      ListRow one = row.copy();
      one.put(Field.BODY, Cell.text(part.plastic().body()), column);
      one.put(Field.COLOUR, Cell.text(part.plastic().colour()), column);
      if (!part.plastic().length().isEmpty()) {
        one.put(Field.LENGTH, Cell.text(part.plastic().length()), column);
      }
      for (Field field : List.of(Field.TAKES, Field.HOOKED, Field.LANDED, Field.LOST)) {
        if (parts.stream().anyMatch(p -> p.told().containsKey(field))) {
          one.put(field, Cell.text(part.told().getOrDefault(field, "0")), column);
        } else if (!isNone(row.place(field))) {
          one.doubt(field);
        }
      }
      share.ifPresent(
          minutes ->
              one.put(
                  Field.MINUTES,
                  Cell.text(part.told().getOrDefault(Field.MINUTES, minutes) + " min"),
                  row.place(Field.MINUTES).column()));
      rows.add(one);
    }
    table.assume("Rows that name several plastics were split, one stint a plastic.");
    return rows;
  }

  private static boolean isNone(Place place) {
    return place.cell().isBlank()
        || Quantities.parse(place.cell().shown(), java.util.OptionalInt.empty())
            .value()
            .filter(n -> n == 0)
            .isPresent();
  }

  /** The minutes of each plastic that tells none of its own, as text without a unit. */
  private Optional<String> share(ListRow row, List<Part> parts) {
    if (parts.stream().allMatch(p -> p.told().containsKey(Field.MINUTES))) {
      return Optional.of("0");
    }
    boolean hours = table.header(Field.MINUTES).filter(ColumnHeader::saysHours).isPresent();
    String text = row.text(Field.MINUTES);
    Cell cell = row.place(Field.MINUTES).cell();
    Optional<Double> whole =
        cell instanceof Cell.Time time
            ? Optional.of(time.length().toSeconds() / 60.0)
            : Durations.minutes(text, hours).value();
    whole.ifPresent(m -> table.assume("The minutes of such a row were shared out evenly."));
    return whole.map(minutes -> String.format(Locale.ROOT, "%.2f", minutes / parts.size()));
  }
}
