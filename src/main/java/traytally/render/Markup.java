package traytally.render;

import java.util.ArrayDeque;
import java.util.Deque;

/** Elements and text of one page, escaped and closed in order: HTML that is XML as well. */
final class Markup {
  private final StringBuilder text = new StringBuilder();
  private final Deque<String> open = new ArrayDeque<>();

  /**
   * Begins an element; names and values of its attributes alternate, an empty value is left out.
   */
  Markup open(String tag, String... attributes) {
    start(tag, attributes);
    text.append('>');
    open.push(tag);
    return this;
  }

  /** An element that holds nothing. */
  Markup empty(String tag, String... attributes) {
    start(tag, attributes);
    text.append("/>");
    return this;
  }

  private void start(String tag, String... attributes) {
    text.append('<').append(tag);
    for (int i = 0; i < attributes.length; i += 2) {
      if (!attributes[i + 1].isEmpty()) {
        text.append(' ').append(attributes[i]).append("=\"");
        escape(attributes[i + 1]);
        text.append('"');
      }
    }
  }

  /** Ends the element begun last. */
  Markup close() {
    text.append("</").append(open.pop()).append('>');
    return this;
  }

  Markup text(String words) {
    escape(words);
    return this;
  }

  /** An element with {@code words} in it. */
  Markup element(String tag, String words, String... attributes) {
    return open(tag, attributes).text(words).close();
  }

  Markup line() {
    text.append('\n');
    return this;
  }

  /** What is known to be well-formed already. */
  Markup raw(String markup) {
    text.append(markup);
    return this;
  }

  private void escape(String words) {
    for (int i = 0; i < words.length(); i++) {
      char c = words.charAt(i);
      switch (c) {
        case '&' -> text.append("&amp;");
        case '<' -> text.append("&lt;");
        case '>' -> text.append("&gt;");
        case '"' -> text.append("&quot;");
        case '\'' -> text.append("&#39;");
        default -> text.append(c);
      }
    }
  }

  @Override
  public String toString() {
    if (!open.isEmpty()) {
      throw new IllegalStateException("not closed: " + open);
    }
    return text.toString();
  }
}
