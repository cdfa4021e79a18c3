package traytally.intake;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import traytally.intake.ListRow.Place;
import traytally.intake.Problem.Severity;

/**
 * Fish and losses that a log tells once for several plastics, shared out evenly where the person
 * said so, each share reported as a guess.
 */
final class SharedOut {
  private final Table table;

  SharedOut(Table table) {
    this.table = table;
  }

  void run() {
    for (Field field : SeveralInOne.COUNTS) {
      IdentityHashMap<Object, List<ListRow>> together = new IdentityHashMap<>();
      Set<List<ListRow>> inOrder = new LinkedHashSet<>();
      for (ListRow row : table.rows()) {
        Optional<Object> whole = row.doubted(field);
        whole.ifPresent(w -> together.computeIfAbsent(w, k -> new ArrayList<>()).add(row));
      }
      for (ListRow row : table.rows()) {
        row.doubted(field).ifPresent(w -> inOrder.add(together.getOrDefault(w, List.of())));
      }
      inOrder.stream().filter(rows -> rows.size() > 1).forEach(rows -> shareOut(field, rows));
    }
  }

  private void shareOut(Field field, List<ListRow> rows) {
    Place whole = rows.get(0).place(field);
    Optional<Integer> all =
        Quantities.parse(whole.cell().shown(), OptionalInt.empty()).value().filter(n -> n > 0);
    if (all.isEmpty()) {
      return;
    }
    SharedCells.dealOut(all.get(), field, whole.column(), rows);
    String told = whole.cell().shown().strip();
    for (ListRow row : rows) {
      row.settle(field);
      table.say(
          Problem.of(
              table.sheet(),
              row.number(),
              whole.column(),
              told,
              "is a guess: told once for "
                  + rows.size()
                  + " plastics and shared out, "
                  + row.text(field)
                  + " to "
                  + String.join(" ", row.text(Field.BODY), row.text(Field.COLOUR))
                  + ".",
              Severity.APPROXIMATE));
    }
  }
}
