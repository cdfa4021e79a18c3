package traytally.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.ledger.Book;
import traytally.plastic.Plastic;
import traytally.report.Words;
import traytally.store.Box;

/**
 * {@code trips log} at the keyboard: asks for the head of a trip, then for stint after stint in the
 * words of the one-line form, and keeps a draft of what was said.
 */
final class TripTalk {
  private static final Pattern ABOUT_ONE = Pattern.compile("(drop|fix)\\s+(\\d{1,3})");
  private static final List<String> HELP =
      List.of(
          "A stint: words of the plastic, or its row in the last listing, then counts:",
          "  paddle 75 motor oil 60m 3t 2h 2l -1 snag",
          "  60m minutes (or 1:00), 40c casts, 3f follows, 3t takes, 2h hooked,",
          "  2l landed, 2r rods, lost: -1 snag, -1 bite, -1 torn, -1 cast, -1 worn.",
          "Tab completes a name. Enter alone ends the trip and asks to record it.",
          "  back    corrects the last stint         fix 2   corrects stint 2",
          "  drop 2  takes stint 2 out               show    shows all so far",
          "  head    asks for date and water anew    forget  drops the whole trip",
          "  Ctrl-D  leaves and keeps a draft        Ctrl-C  the same; clears a line");

  private final Traytally root;
  private final HandOptions hand;
  private final Keyboard keyboard;
  private Book book;
  private TripDraft draft;

  /** A line that was not understood: it stands there again, to be corrected. */
  private String again = "";

  private TripTalk(Traytally root, HandOptions hand, Keyboard keyboard) {
    this.root = root;
    this.hand = hand;
    this.keyboard = keyboard;
    this.book = read();
    this.draft = TripDraft.beside(root.boxFile(), root.desk());
  }

  /** Asks through one trip and records it. */
  static int run(Traytally root, HandOptions hand) {
    try (Keyboard keyboard =
        Keyboard.of(root.desk(), "Give the trip in one line: " + TripLine.EXAMPLE)) {
      TripTalk talk = new TripTalk(root, hand, keyboard);
      try {
        return talk.run();
      } catch (LeftOff e) {
        talk.leave();
        return e.isStopped() ? Exit.STOPPED : Exit.OK;
      }
    }
  }

  private Book read() {
    try (Box box = root.openBox()) {
      return box.book();
    }
  }

  private int run() {
    Optional<TripDraft> left = TripDraft.left(root.boxFile(), root.desk());
    if (left.isPresent() && wanted(left.get())) {
      draft = left.get();
      show();
    } else {
      draft.head(TripHead.ask(root, book, keyboard).text());
    }
    keyboard.say("Now stint after stint; ? for help, Enter alone when done.");
    boolean forgotten = false;
    while (!forgotten) {
      String said = keyboard.ask((draft.stints().size() + 1) + "> ", again, stint());
      again = "";
      if (said.isEmpty()) {
        if (isRecorded()) {
          return Exit.OK;
        }
      } else {
        forgotten = !obey(said);
      }
    }
    draft.forget();
    keyboard.say("Dropped: nothing was recorded.");
    return Exit.OK;
  }

  private Completion stint() {
    return new StintCompletion(book);
  }

  /** Whether the person goes on with the draft of an earlier evening; else it is dropped. */
  private boolean wanted(TripDraft left) {
    if (left.stints().isEmpty()) {
      return false;
    }
    keyboard.say(
        "A trip was left unfinished: "
            + headOf(left).map(TripWords::said).orElse(left.head())
            + ", "
            + Words.count(left.stints().size(), "stint")
            + ".");
    return headOf(left).isPresent() && keyboard.agrees("Go on with it? No drops it.", true);
  }

  private Optional<TripWords> headOf(TripDraft told) {
    try {
      return Optional.of(TripLine.head(root, book, told.head()).withoutSlips());
    } catch (Refusal e) {
      keyboard.say(e.sentence());
      return Optional.empty();
    }
  }

  /** Does what was said; false if the trip is to be forgotten. */
  private boolean obey(String said) {
    Matcher one = ABOUT_ONE.matcher(said.toLowerCase(Locale.ROOT));
    if (one.matches()) {
      aboutOne(one.group(1), Integer.parseInt(one.group(2)) - 1);
      return true;
    }
    switch (said.toLowerCase(Locale.ROOT)) {
      case "?", "help" -> HELP.forEach(keyboard::say);
      case "show" -> show();
      case "head" -> draft.head(TripHead.ask(root, book, keyboard).text());
      case "back" -> back();
      case "drop" -> aboutOne("drop", draft.stints().size() - 1);
      case "fix" -> aboutOne("fix", draft.stints().size() - 1);
      case "forget" -> {
        return !keyboard.agrees("Drop the whole trip?", false);
      }
      default -> TripLine.stints(said).forEach(this::take);
    }
    return true;
  }

  private void back() {
    if (draft.stints().isEmpty()) {
      draft.head(TripHead.ask(root, book, keyboard).text());
    } else {
      aboutOne("fix", draft.stints().size() - 1);
    }
  }

  private void aboutOne(String verb, int index) {
    if (index < 0 || index >= draft.stints().size()) {
      keyboard.say(
          draft.stints().isEmpty()
              ? "There is no stint yet."
              : "There are stints 1 to " + draft.stints().size() + ".");
      return;
    }
    if (verb.equals("drop")) {
      draft.drop(index);
      show();
      return;
    }
    String said = keyboard.ask((index + 1) + "> ", draft.stints().get(index) + " ", stint());
    if (!said.isEmpty()) {
      understood(said)
          .ifPresent(
              text -> {
                draft.put(index, text);
                echo(index);
              });
    }
  }

  private void take(String text) {
    Optional<String> stint = understood(text);
    if (stint.isPresent()) {
      add(stint.get());
    } else {
      again = again.isEmpty() ? text.strip() : again + "; " + text.strip();
    }
  }

  private void add(String text) {
    draft.add(text);
    echo(draft.stints().size() - 1);
  }

  /**
   * The stint as it goes into the draft, its plastic named whole; empty if it is not understood.
   */
  private Optional<String> understood(String said) {
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
      book = read();
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

  private void echo(int index) {
    StintWords words = StintWords.parse(draft.stints().get(index));
    keyboard.say("  " + (index + 1) + ". " + words.plastic() + ": " + words.said());
    if (draft.stints().size() > 1) {
      keyboard.say("     " + tally());
    }
  }

  private String tally() {
    return StintWords.tally(draft.stints().stream().map(StintWords::parse).toList());
  }

  private void show() {
    keyboard.say(headOf(draft).map(TripWords::said).orElse(draft.head()));
    for (int i = 0; i < draft.stints().size(); i++) {
      StintWords words = StintWords.parse(draft.stints().get(i));
      keyboard.say("  " + (i + 1) + ". " + words.plastic() + ": " + words.said());
    }
    if (!draft.stints().isEmpty()) {
      keyboard.say("     " + tally());
    }
  }

  /** Whether all is said and recorded. */
  private boolean isRecorded() {
    if (draft.stints().isEmpty()) {
      keyboard.say("No stint yet. ? for help; forget drops the trip.");
      return false;
    }
    boolean agreed = hand.recordIfAgreed(root, this::change, this::isAgreed);
    if (agreed && !hand.isDryRun()) {
      draft.forget();
    }
    return agreed;
  }

  private HandChange change(Book now) {
    TripWords trip = TripLine.head(root, now, draft.head()).withoutSlips();
    return new TripLine(root, now, trip).change(draft.stints());
  }

  private boolean isAgreed(HandChange change) {
    change.odd().ifPresent(keyboard::say);
    return keyboard.agrees("Record it?", change.odd().isEmpty());
  }

  private void leave() {
    List<String> said = new ArrayList<>(List.of("Nothing was recorded."));
    if (draft.isKept()) {
      said.add("A draft is kept: traytally trips log goes on with it.");
    } else {
      draft.forget();
    }
    root.desk().err().println(String.join(" ", said));
  }
}
