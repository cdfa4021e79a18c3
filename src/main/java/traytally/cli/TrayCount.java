package traytally.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeSet;
import java.util.function.ToIntFunction;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Fact.Counted;
import traytally.ledger.Fact.Described;
import traytally.ledger.Posting;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.report.Words;

/** {@code count --tray}: one tray counted through, at the keyboard or from the lines of a pipe. */
final class TrayCount {
  private final Traytally root;
  private final HandOptions hand;
  private final Name tray;
  private final LocalDate date;

  TrayCount(Traytally root, HandOptions hand, Name tray, LocalDate date) {
    this.root = root;
    this.hand = hand;
    this.tray = tray;
    this.date = date;
  }

  int run() {
    if (!root.desk().terminal()) {
      return hand.record(root, false, book -> change(book, new Piped()));
    }
    try (Keyboard keyboard = Keyboard.of(root.desk(), "")) {
      Asked asked = new Asked(keyboard);
      keyboard.say(TrayWalk.help());
      boolean agreed =
          hand.recordIfAgreed(
              root,
              book -> change(book, asked),
              change -> change.entry().isEmpty() || keyboard.agrees("Record it?", true));
      if (!agreed) {
        root.desk().err().println("Nothing was recorded.");
      }
      return Exit.OK;
    } catch (LeftOff e) {
      root.desk().err().println("Nothing was recorded.");
      return e.isStopped() ? Exit.STOPPED : Exit.OK;
    }
  }

  private HandChange change(Book book, TrayWalk.Answers answers) {
    Posting before = new Posting(book.ledger(), book.recorded(Counted.class));
    ToIntFunction<Plastic> held = plastic -> before.balance(plastic, date);
    TrayWalk walk = new TrayWalk(plastics(book), held, answers);
    Map<Plastic, Integer> seen = walk.seen();
    Posting posting = new Posting(book.ledger(), book.recorded(Counted.class));
    List<Fact> counted = new ArrayList<>();
    List<String> notes = new ArrayList<>();
    seen.forEach(
        (plastic, pieces) -> {
          LeftCommand.history(posting, plastic, date)
              .forEach(note -> notes.add(plastic + ": " + note));
          Counted count = new Counted(plastic, date, pieces, false);
          posting.count(count);
          counted.add(count);
        });
    List<Plastic> differing = walk.differing(seen);
    String said =
        "counted tray "
            + tray
            + ": "
            + Words.count(seen.size(), "plastic")
            + (differing.isEmpty()
                ? ", all as the book said"
                : ", " + differing.size() + " not as the book said");
    notes.add(
        "Something in it that was not asked for? traytally count 3 --new 'body, colour, length'"
            + " --tray "
            + tray);
    return new HandChange(
        "Understood: " + said + ".",
        differing,
        notes,
        Optional.empty(),
        new Entry("count", said, OptionalLong.empty(), posting.movements(), counted, List.of()));
  }

  private List<Plastic> plastics(Book book) {
    List<Plastic> there = new ArrayList<>();
    TreeSet<Name> trays = new TreeSet<>();
    for (Described described : book.described().values()) {
      Name lies = Name.of(described.tray());
      trays.add(lies);
      if (lies.equals(tray)) {
        there.add(described.plastic());
      }
    }
    trays.remove(Name.BLANK);
    if (there.isEmpty()) {
      throw new Refusal(
          Exit.DATA,
          "nothing in the box lies in tray \""
              + tray
              + "\". "
              + (trays.isEmpty()
                  ? "No tray is named yet: put the column Tray in your list and import it."
                  : "Trays: " + String.join(", ", trays.stream().map(Name::text).toList()) + "."));
    }
    return there;
  }

  /** A person's answers. */
  private record Asked(Keyboard keyboard) implements TrayWalk.Answers {
    @Override
    public Optional<String> next(String prompt) {
      return Optional.of(keyboard.ask(prompt, "", Completion.ofWords("back", "skip", "stop")));
    }

    @Override
    public void wrong(String why) {
      keyboard.say(why);
    }
  }

  /** The lines of a pipe: where they end, the walk ends. */
  private final class Piped implements TrayWalk.Answers {
    private final BufferedReader lines =
        new BufferedReader(new InputStreamReader(root.desk().in(), StandardCharsets.UTF_8));
    private int line;

    @Override
    public Optional<String> next(String prompt) {
      line++;
      try {
        return Optional.ofNullable(lines.readLine());
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    @Override
    public void wrong(String why) {
      throw new Refusal(Exit.DATA, "line " + line + ": " + why + " Nothing was recorded.");
    }
  }
}
