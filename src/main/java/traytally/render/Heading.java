package traytally.render;

import java.util.List;
import traytally.report.Column;

/**
 * The heading of a column that the angler fills in.
 *
 * @param words what stands in the heading row
 * @param kind what belongs below it
 * @param required whether a row means nothing without it
 * @param choices the words to choose from; empty if any will do
 * @param advice what to write, in a sentence
 */
record Heading(
    String words, Column.Kind kind, boolean required, List<String> choices, String advice) {
  Heading {
    choices = List.copyOf(choices);
  }

  static Heading needed(String words, Column.Kind kind, String advice) {
    return new Heading(words, kind, true, List.of(), advice);
  }

  static Heading optional(String words, Column.Kind kind, String advice) {
    return new Heading(words, kind, false, List.of(), advice);
  }

  static Heading oneOf(String words, List<String> choices, String advice) {
    return new Heading(words, Column.Kind.TEXT, false, choices, advice);
  }
}
