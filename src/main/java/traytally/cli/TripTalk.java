package traytally.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.ledger.Book;
import traytally.report.Words;

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
  private final StintTalk stintTalk;
  private TripDraft draft;

  /** A line that was not understood: it stands there again, to be corrected. */
  private String again = "";

  private TripTalk(Traytally root, HandOptions hand, Keyboard keyboard) {
    this.root = root;
    this.hand = hand;
    this.keyboard = keyboard;
    this.stintTalk = new StintTalk(root, keyboard);
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

  private int run() {
    Optional<TripDraft> left = TripDraft.left(root.boxFile(), root.desk());
    if (left.isPresent() && wanted(left.get())) {
      draft = left.get();
      show();
    } else {
      draft.head(TripHead.ask(root, stintTalk.book(), keyboard).text());
    }
    keyboard.say("Now stint after stint; ? for help, Enter alone when done.");
    boolean forgotten = false;
    while (!forgotten) {
      String said = keyboard.ask((draft.stints().size() + 1) + "> ", again, stintTalk.completion());
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
      return Optional.of(TripLine.head(root, stintTalk.book(), told.head()).withoutSlips());
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
      case "head" -> draft.head(TripHead.ask(root, stintTalk.book(), keyboard).text());
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
      draft.head(TripHead.ask(root, stintTalk.book(), keyboard).text());
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
    String said =
        keyboard.ask((index + 1) + "> ", draft.stints().get(index) + " ", stintTalk.completion());
    if (!said.isEmpty()) {
      stintTalk
          .understood(said)
          .ifPresent(
              text -> {
                draft.put(index, text);
                echo(index);
              });
    }
  }

  private void take(String text) {
    Optional<String> stint = stintTalk.understood(text);
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
