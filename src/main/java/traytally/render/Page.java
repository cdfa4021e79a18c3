package traytally.render;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.List;

/** Lines for a terminal, none wider than it. */
final class Page {
  private static final String BOLD = "\u001b[1m";
  private static final String DIM = "\u001b[2m";
  private static final String PLAIN = "\u001b[0m";
  private static final String BETWEEN_FACTS = "   ";
  private static final String BULLET = "- ";

  private final Look look;
  private final Writer out;
  private boolean begun;
  private boolean gapDue;

  /** A page that is written line by line; what cannot be written is an UncheckedIOException. */
  Page(Look look, Writer out) {
    this.look = look;
    this.out = out;
  }

  int width() {
    return look.width();
  }

  /** An empty line between the lines there are and any that follow. */
  void gap() {
    gapDue = begun;
  }

  void line(String line) {
    try {
      out.write(gapDue ? "\n" : "");
      out.write(line);
      out.write('\n');
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    begun = true;
    gapDue = false;
  }

  /** Text that stands out where the terminal can show it; headings also stand apart without. */
  void strong(String words) {
    for (String line : DisplayWidth.fits(words, width())) {
      line(look.colour() && !line.isEmpty() ? BOLD + line + PLAIN : line);
    }
  }

  /** Short texts one after another, on as many lines as it takes. */
  void flow(List<String> facts) {
    flow("", facts);
  }

  /** {@code start} and then short texts one after another, further lines set in below it. */
  void flow(String start, List<String> facts) {
    StringBuilder line = new StringBuilder();
    String margin = start;
    int room = width() - DisplayWidth.of(start);
    for (String fact : facts) {
      if (line.length() > 0 && DisplayWidth.of(line + BETWEEN_FACTS + fact) > room) {
        margin = setIn(margin, line.toString());
        line.setLength(0);
      }
      line.append(line.length() > 0 ? BETWEEN_FACTS : "").append(fact);
    }
    if (line.length() > 0) {
      setIn(margin, line.toString());
    }
  }

  /** Sets {@code words} after {@code margin}, and tells the margin of the lines below. */
  private String setIn(String margin, String words) {
    int indent = DisplayWidth.of(margin);
    String next = margin;
    for (String line : DisplayWidth.fits(words, width() - indent)) {
      line(next + line);
      next = " ".repeat(indent);
    }
    return next;
  }

  /** A line under a section's rows, if there is something to say. */
  void summary(String words) {
    if (!words.isEmpty()) {
      setIn("", words);
    }
  }

  /** A sentence under the table, dim where the terminal can show it. */
  void note(String words) {
    dim(BULLET, words);
  }

  /** Words about the row above them, dim where the terminal can show it. */
  void remark(String indent, String words) {
    dim(indent, words);
  }

  private void dim(String margin, String words) {
    String start = margin;
    for (String line : DisplayWidth.wrap(words, width() - margin.length())) {
      line(look.colour() ? DIM + start + line + PLAIN : start + line);
      start = " ".repeat(margin.length());
    }
  }
}
