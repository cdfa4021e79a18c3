package traytally.intake;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import traytally.intake.HeaderSearch.Remembered;
import traytally.ledger.Fact;

/** How the columns of a list are remembered: a line {@code header=kind.field} for each header. */
final class Mapping {
  private Mapping() {}

  /** Whether a list's columns can be remembered: they are named, and stand one for one field. */
  static boolean canRemember(Table table) {
    Collection<Integer> columns = table.guess().columns().values();
    return table.guess().across().isEmpty()
        && columns.stream().distinct().count() == columns.size()
        && table.headers().stream().anyMatch(h -> !h.folded().isEmpty());
  }

  static Fact.Mapped of(Table table) {
    List<String> lines = new ArrayList<>();
    for (int column = 0; column < table.headers().size(); column++) {
      int here = column;
      String field =
          table.guess().columns().entrySet().stream()
              .filter(entry -> entry.getValue() == here)
              .map(Map.Entry::getKey)
              .findFirst()
              .map(f -> table.kind().word() + "." + f.word())
              .orElse("");
      lines.add(table.headers().get(column).folded() + "=" + field);
    }
    return new Fact.Mapped(HeaderSearch.key(table.headers()), String.join("\n", lines));
  }

  /** What was remembered; empty if no column of it is known any more. */
  static Optional<Remembered> parse(Fact.Mapped mapped) {
    List<Optional<Field>> fields = new ArrayList<>();
    Optional<ListKind> kind = Optional.empty();
    for (String line : mapped.reading().split("\n", -1)) {
      String field = line.substring(line.lastIndexOf('=') + 1);
      int point = field.indexOf('.');
      if (point > 0) {
        kind = ListKind.parse(field.substring(0, point));
        fields.add(Field.parse(field.substring(point + 1)));
      } else {
        fields.add(Optional.empty());
      }
    }
    return kind.map(k -> new Remembered(k, List.copyOf(fields)));
  }
}
