package traytally.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/** Lines copied from a chat: the time of each message and who sent it stand before its words. */
final class Chat {
  private static final Pattern LINE =
      Pattern.compile(
          "\\[?\\d{1,4}[-/.]\\d{1,2}[-/.]\\d{2,4},? \\d{1,2}[:.]\\d\\d(?:[:.]\\d\\d)?(?: ?[apAP]\\.?[mM]\\.?)?"
              + "(?:\\]| -|:)? ([^:,]{1,40}): (.*)");

  private Chat() {}

  /** The messages of {@code sheet} alone, if every line of it is one. */
  static Optional<GivenSheet> messages(GivenSheet sheet) {
    List<Row> rows = new ArrayList<>();
    for (Row row : sheet.rows()) {
      Matcher line = LINE.matcher(Numbers.plain(NoteLines.words(row, ", ")));
      if (!line.matches()) {
        return Optional.empty();
      }
      String said = line.group(2).strip();
      List<Cell> parts = Stream.of(said.split("\\s*,\\s*", -1)).map(Cell::text).toList();
      // What counts nothing is talk.
      boolean talk = parts.stream().noneMatch(Under::isCount);
      rows.add(new Row(row.number(), talk ? List.of(Cell.text(said)) : parts, row.hidden()));
    }
    return rows.isEmpty()
        ? Optional.empty()
        : Optional.of(new GivenSheet(sheet.file(), sheet.name(), sheet.hidden(), rows, List.of()));
  }
}
