package traytally.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToIntFunction;
import traytally.plastic.Plastic;

/** Goes through the plastics of one tray, says what the book holds and takes what the eye sees. */
final class TrayWalk {
  private static final String HELP =
      "Enter: as the book says. Else how many you see; back, skip, or stop to end here.";

  /** How an answer is had: a person's, or the next line of a pipe. */
  interface Answers {
    /** The answer to {@code prompt}; empty if no more come. */
    Optional<String> next(String prompt);

    /** Says why the last one was no answer, or throws a {@link Refusal}. */
    void wrong(String why);
  }

  private final List<Plastic> plastics;
  private final ToIntFunction<Plastic> held;
  private final Answers answers;
  private final Map<Plastic, Integer> seen = new LinkedHashMap<>();

  TrayWalk(List<Plastic> plastics, ToIntFunction<Plastic> held, Answers answers) {
    this.plastics = List.copyOf(plastics);
    this.held = held;
    this.answers = answers;
  }

  /** What was seen of those that were not skipped, in the tray's order. */
  Map<Plastic, Integer> seen() {
    int at = 0;
    while (at >= 0 && at < plastics.size()) {
      at = step(at);
    }
    Map<Plastic, Integer> inOrder = new LinkedHashMap<>();
    plastics.stream().filter(seen::containsKey).forEach(p -> inOrder.put(p, seen.get(p)));
    return inOrder;
  }

  /** Asks for one; the place of the next, or a negative number to end. */
  private int step(int at) {
    Plastic plastic = plastics.get(at);
    int book = held.applyAsInt(plastic);
    Optional<String> said =
        answers.next(
            String.format(
                Locale.ROOT,
                "%d/%d  %s: book %d, you see ",
                at + 1,
                plastics.size(),
                plastic,
                book));
    if (said.isEmpty()) {
      return -1;
    }
    String word = said.get().strip().toLowerCase(Locale.ROOT);
    if (word.matches("\\d{1,5}") && Integer.parseInt(word) <= HandWords.MOST) {
      seen.put(plastic, Integer.parseInt(word));
      return at + 1;
    }
    switch (word) {
      case "" -> seen.put(plastic, book);
      case "skip" -> seen.remove(plastic);
      case "back" -> {
        return Math.max(0, at - 1);
      }
      case "stop" -> {
        return -1;
      }
      default -> {
        answers.wrong("\"" + said.get() + "\" is no count of pieces. " + HELP);
        return at;
      }
    }
    return at + 1;
  }

  /** The plastics seen that are not as the book said. */
  List<Plastic> differing(Map<Plastic, Integer> counted) {
    List<Plastic> differing = new ArrayList<>();
    counted.forEach(
        (plastic, pieces) -> {
          if (pieces != held.applyAsInt(plastic)) {
            differing.add(plastic);
          }
        });
    return differing;
  }

  static String help() {
    return HELP;
  }
}
