package traytally.intake;

import java.util.List;
import traytally.intake.ListRow.Place;
import traytally.intake.Problem.Severity;
import traytally.sheet.Cell;

/** Pieces lost that only the remarks of a log tell, where no column or cell tells them. */
final class LossesInRemarks {
  private static final List<Field> TOLD =
      List.of(
          Field.LOST, Field.LOST_HOW, Field.SNAGGED, Field.BITTEN_OFF, Field.TORN, Field.CAST_OFF);

  private final Table table;

  LossesInRemarks(Table table) {
    this.table = table;
  }

  /** Counts what is lost for certain, and asks about the rest. */
  void run() {
    if (!table.tells(Field.NOTE)) {
      return;
    }
    List<ListRow> rows = table.rows();
    for (int i = 0; i < rows.size(); i++) {
      if (mayTell(rows.get(i))) {
        read(rows.get(i), isSameRow(i, i - 1) || isSameRow(i, i + 1));
      }
    }
  }

  /** Whether two neighbours are plastics of one row of the sheet. */
  private boolean isSameRow(int i, int other) {
    List<ListRow> rows = table.rows();
    return other >= 0 && other < rows.size() && rows.get(i).number() == rows.get(other).number();
  }

  private static boolean mayTell(ListRow row) {
    return row.cell(Field.NOTE) instanceof Cell.Text && TOLD.stream().allMatch(row::isBlank);
  }

  private void read(ListRow row, boolean several) {
    Place note = row.place(Field.NOTE);
    String remark = row.text(Field.NOTE);
    LossInWords lost = LossInWords.of(remark);
    boolean some = lost.pieces() > 0;
    if (lost.doubtful() || (some && several)) {
      say(
          row,
          note,
          "speaks of a loss that was not counted: it may be of "
              + (several ? "any of the plastics of the row." : "a fish or of a lure.")
              + " If pieces were lost, write their number under Lost.");
    } else if (some) {
      row.put(Field.LOST, Cell.text(Integer.toString(lost.pieces())), note.column());
      lost.how().ifPresent(how -> row.put(Field.LOST_HOW, Cell.text(how.word()), note.column()));
      table.assume("Pieces lost that only the remarks tell were counted as the remarks say.");
      String pieces = lost.pieces() == 1 ? "1 piece lost" : lost.pieces() + " pieces lost";
      say(row, note, "was read as " + pieces + ".");
    }
  }

  private void say(ListRow row, Place note, String what) {
    String remark = note.cell().shown().strip();
    table.say(Problem.of(table.sheet(), row.number(), note.column(), remark, what, Severity.NOTE));
  }
}
