package traytally.intake;

import java.util.List;
import traytally.ledger.Fact;
import traytally.ledger.Movement;
import traytally.plastic.Plastic;
import traytally.trip.Stint;

/** An import written down line by line, to be compared with what was expected. */
final class Transcript {
  private final StringBuilder lines = new StringBuilder();

  static String of(Imported imported) {
    Transcript transcript = new Transcript();
    imported.readings().forEach(transcript::reading);
    imported.problems().forEach(p -> transcript.line(p.severity().word() + ": " + p.sentence()));
    imported.notices().forEach(n -> transcript.line("notice: " + n));
    transcript.line("entry: " + imported.entry().summary());
    imported.entry().movements().forEach(transcript::movement);
    imported.entry().withdrawn().forEach(f -> transcript.line("- " + words(f.what())));
    imported.entry().added().stream()
        .filter(f -> !(f instanceof Fact.Mapped))
        .forEach(f -> transcript.line("+ " + words(f)));
    return transcript.lines.toString();
  }

  private void line(String line) {
    lines.append(line).append('\n');
  }

  private void reading(SheetReading reading) {
    line(
        reading.file()
            + " ["
            + reading.sheet()
            + "] "
            + reading.kind().map(ListKind::word).orElse("nothing")
            + ": "
            + reading.rowsRead()
            + " rows read, "
            + reading.rowsTaken()
            + " taken, "
            + reading.rowsSkipped()
            + " skipped");
    for (SheetReading.ColumnTaken column : reading.columns()) {
      line(
          "  "
              + column.letters()
              + " \""
              + column.header()
              + "\" "
              + column.field().map(Field::word).orElse("-")
              + " ("
              + column.why()
              + ")");
    }
    reading.assumptions().forEach(a -> line("  assumed: " + a));
  }

  private void movement(Movement movement) {
    line(
        movement.date()
            + " "
            + movement.kind().word()
            + movement.how().map(h -> " (" + h.word() + ")").orElse("")
            + " "
            + movement.pieces()
            + (movement.reverses() ? " taken back" : "")
            + ": "
            + movement.plastic()
            + (movement.note().isEmpty() ? "" : " [" + movement.note() + "]"));
  }

  private static String words(Fact fact) {
    if (fact instanceof Fact.Counted counted) {
      return "counted " + counted.date() + " " + counted.pieces() + ": " + counted.plastic();
    }
    if (fact instanceof Fact.Described described) {
      return "described "
          + described.plastic()
          + ": tray '"
          + described.tray()
          + "', pack "
          + (described.packSize().isPresent() ? described.packSize().getAsInt() : "?")
          + " at "
          + described.packPrice().map(Object::toString).orElse("?")
          + ", note '"
          + described.note()
          + "'";
    }
    return fact instanceof Fact.Fished fished ? stint(fished) : fact.toString();
  }

  private static String stint(Fact.Fished fished) {
    Stint stint = fished.stint();
    Plastic plastic = stint.plastic();
    List<Object> words =
        List.of(
            "stint " + fished.number() + "/" + fished.ordinal(),
            stint.trip().date() + " " + stint.trip().water(),
            plastic,
            "for '" + stint.species() + "'",
            stint.clarity().map(Object::toString).orElse("?"),
            (stint.minutes().isPresent() ? stint.minutes().getAsDouble() : "?") + " min",
            (stint.casts().isPresent() ? stint.casts().getAsInt() : "?") + " casts",
            stint.fish().follows()
                + "/"
                + stint.fish().takes()
                + "/"
                + stint.fish().hooked()
                + "/"
                + stint.fish().landed(),
            "lost " + stint.lost() + stint.lostHow().map(h -> " " + h.word()).orElse(""),
            "worn " + stint.worn(),
            "rods " + stint.rods(),
            "'" + stint.note() + "'");
    return String.join("; ", words.stream().map(Object::toString).toList());
  }
}
