package traytally.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import traytally.ledger.Book;
import traytally.plastic.Plastic;
import traytally.store.Box;

/** Understands one stint at the keyboard: asks for what its line leaves open. */
final class StintTalk {
  private final Traytally root;
  private final Keyboard keyboard;
  private Book book;

  StintTalk(Traytally root, Keyboard keyboard) {
    this.root = root;
    this.keyboard = keyboard;
    this.book = read(root);
  }

  private static Book read(Traytally root) {
    try (Box box = root.openBox()) {
      return box.book();
    }
  }

  /** The book as it was last read. */
  Book book() {
    return book;
  }

  Completion completion() {
    return new StintCompletion(book);
  }

  /**
   * The stint as it goes into the draft, its plastic named whole; empty if it is not understood.
   */
  Optional<String> understood(String said) {
    try {
      StintWords words = StintWords.parse(said);
      Optional<Plastic> plastic = plastic(words.plastic());
      if (plastic.isEmpty()) {
        return Optional.empty();
      }
      String text = words.text(plastic.get());
      if (words.isBare()) {
        String counts =
            keyboard.ask(
                "   " + plastic.get() + ": how long, how many? (60m 3t 2h 2l -1 snag) ",
                "",
                Completion.NONE);
        text = text + " " + counts;
      }
      return Optional.of(withCause(StintWords.parse(text), plastic.get()));
    } catch (Refusal e) {
      keyboard.say("Not understood: " + e.getMessage());
      return Optional.empty();
    }
  }

  private String withCause(StintWords words, Plastic plastic) {
    if (!words.asksHow()) {
      return words.text(plastic);
    }
    String how =
        keyboard.ask(
            "   lost how? snag, bite, torn, cast, worn; Enter if unknown: ",
            "",
            Completion.ofWords("snag", "bite", "torn", "cast", "worn"));
    if (how.isEmpty()) {
      return words.text(plastic);
    }
    LossWords.required(how);
    return words.text(plastic, how);
  }

  /** The one plastic meant; with several, the person picks one. */
  private Optional<Plastic> plastic(String words) {
    List<Plastic> named = named(words);
    if (named.size() == 1) {
      return Optional.of(named.get(0));
    }
    for (int i = 0; i < named.size(); i++) {
      keyboard.say(String.format(Locale.ROOT, "%5d  %s", i + 1, named.get(i)));
    }
    String said =
        keyboard.ask("   which of them, 1 to " + named.size() + "? ", "", Completion.NONE);
    return said.matches("[1-9]\\d{0,3}") && Integer.parseInt(said) <= named.size()
        ? Optional.of(named.get(Integer.parseInt(said) - 1))
        : Optional.empty();
  }

  private List<Plastic> named(String words) {
    try {
      return PlasticNames.named(root, book, words);
    } catch (Refusal e) {
      // It may have been counted in another window meanwhile.
      book = read(root);
      if (PlasticNames.fitting(words, book).isEmpty() && !words.matches("\\d+")) {
        throw new Refusal(
            e.code(),
            e.sentence()
                + System.lineSeparator()
                + "One that is not in the box yet is counted in another window first: traytally"
                + " count 3 --new 'paddle tail, motor oil, 75'",
            e);
      }
      return PlasticNames.named(root, book, words);
    }
  }
}
