package traytally.sheet;

import java.io.IOException;
import java.io.StringReader;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** How well a mark explains a text as a table: most records split, and into equally many fields. */
record DelimiterGuess(char delimiter, double fit, int width) {
  /** In the order of trust where two explain the text equally: a comma may be a decimal one. */
  private static final List<Character> CANDIDATES = List.of('\t', ';', '|', ',');

  private static final char USUAL = ',';

  /** The mark between the columns of a text that begins so; a comma where no mark splits it. */
  static char of(String beginning, Limits limits) throws IOException {
    DelimiterGuess best = new DelimiterGuess(USUAL, 0, 1);
    for (char candidate : CANDIDATES) {
      DelimiterGuess guess = judge(beginning, candidate, limits);
      if (guess.fit > best.fit || (guess.fit == best.fit && guess.width > best.width)) {
        best = guess;
      }
    }
    return best.delimiter;
  }

  private static DelimiterGuess judge(String beginning, char candidate, Limits limits)
      throws IOException {
    Map<Integer, Integer> widths = new HashMap<>();
    int filled = 0;
    int split = 0;
    LineReader lines = new LineReader(new StringReader(beginning), limits.lineCharacters());
    try (CsvRecords records = new CsvRecords(lines, candidate, limits)) {
      Optional<String[]> record = records.next();
      while (record.isPresent()) {
        String[] fields = record.get();
        if (fields.length > 1) {
          split++;
          widths.merge(fields.length, 1, Integer::sum);
        }
        filled += fields.length == 1 && fields[0].isBlank() ? 0 : 1;
        record = records.next();
      }
    }
    int width = 1;
    int agreeing = 0;
    for (Map.Entry<Integer, Integer> counted : widths.entrySet()) {
      if (counted.getValue() > agreeing) {
        agreeing = counted.getValue();
        width = counted.getKey();
      }
    }
    return new DelimiterGuess(
        candidate, filled == 0 ? 0 : (double) (split + agreeing) / filled, width);
  }
}
