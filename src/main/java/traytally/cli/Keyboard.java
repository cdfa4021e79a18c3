package traytally.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jline.reader.Candidate;
import org.jline.reader.CompletingParsedLine;
import org.jline.reader.CompletionMatcher;
import org.jline.reader.EndOfFileException;
import org.jline.reader.LineReader;
import org.jline.reader.LineReaderBuilder;
import org.jline.reader.ParsedLine;
import org.jline.reader.Parser;
import org.jline.reader.UserInterruptException;
import org.jline.terminal.Size;
import org.jline.terminal.Terminal;
import org.jline.terminal.TerminalBuilder;

/** A person at the keyboard, who is asked one line after the other. */
final class Keyboard implements AutoCloseable {
  private static final Size SMALLEST = Size.of(80, 24);

  private final Desk desk;
  private final Terminal terminal;
  private final LineReader reader;
  private Completion completion = Completion.NONE;

  private Keyboard(Desk desk, Terminal terminal) {
    this.desk = desk;
    this.terminal = terminal;
    if (terminal.getSize().getColumns() <= 0) {
      // A line without a size of its own is taken for the smallest screen there is.
      terminal.setSize(SMALLEST);
    }
    this.reader =
        LineReaderBuilder.builder()
            .terminal(terminal)
            .parser(new EndOfLine())
            .completer((line, typed, offers) -> typed.words().forEach(w -> offer(w, offers)))
            .completionMatcher(new AsOffered())
            // A tired hand that types "!" means "!", and nothing typed is kept for another day.
            .option(LineReader.Option.DISABLE_EVENT_EXPANSION, true)
            .variable(LineReader.DISABLE_HISTORY, true)
            .variable(LineReader.BELL_STYLE, "none")
            .build();
  }

  /**
   * The keyboard of this desk.
   *
   * @throws Refusal if no person sits at it
   */
  static Keyboard of(Desk desk, String instead) {
    if (!desk.terminal()) {
      throw new Refusal(Exit.USAGE, "there is no terminal to ask at. " + instead);
    }
    try {
      return new Keyboard(desk, terminal(desk));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Terminal terminal(Desk desk) throws IOException {
    TerminalBuilder builder =
        TerminalBuilder.builder()
            .name("traytally")
            .provider(TerminalBuilder.PROP_PROVIDER_EXEC)
            .encoding(StandardCharsets.UTF_8)
            // Asking the terminal what it can do costs a tired evening the wait for its answer.
            .graphemeCluster(false);
    if (desk.in() == System.in) {
      // Prompts are no results: they go where messages go.
      return builder.systemOutput(TerminalBuilder.SystemOutput.SysErrOrSysOut).dumb(true).build();
    }
    return builder.system(false).type("ansi").streams(desk.in(), desk.err()).build();
  }

  /** Says a text, its lines broken between words where the terminal ends. */
  void say(String text) {
    text.lines().forEach(this::sayLine);
    terminal.writer().flush();
  }

  private void sayLine(String line) {
    int width = terminal.getSize().getColumns();
    String rest = line;
    while (rest.length() > width) {
      int space = rest.lastIndexOf(' ', width);
      int end = space > width / 2 ? space : width;
      terminal.writer().println(rest.substring(0, end));
      rest = "     " + rest.substring(end).strip();
    }
    terminal.writer().println(rest);
  }

  /**
   * Asks for a line.
   *
   * @param given what stands there already, to be corrected
   * @return what was typed, without outer spaces
   * @throws LeftOff on Ctrl-C in an empty line, on Ctrl-D, and when the terminal is gone
   */
  String ask(String prompt, String given, Completion offered) {
    completion = offered;
    String start = given;
    while (true) {
      try {
        return reader.readLine(prompt, null, (Character) null, start).strip();
      } catch (UserInterruptException e) {
        if (e.getPartialLine().isBlank()) {
          throw LeftOff.stopped();
        }
        // As in a shell: the line is thrown away, and asked for again.
        start = "";
      } catch (EndOfFileException e) {
        throw LeftOff.closed();
      }
    }
  }

  /** Asks a yes-or-no question; Enter says {@code standard}. */
  boolean agrees(String question, boolean standard) {
    while (true) {
      String said =
          ask(question + (standard ? " [Y/n] " : " [y/N] "), "", Completion.NONE)
              .toLowerCase(Locale.ROOT);
      if (said.isEmpty()) {
        return standard;
      }
      if (List.of("y", "yes", "n", "no").contains(said)) {
        return said.startsWith("y");
      }
      say("Please say yes or no.");
    }
  }

  @Override
  public void close() {
    try {
      terminal.close();
    } catch (IOException e) {
      desk.err().println("The terminal could not be put back: " + e.getMessage());
    }
  }

  private void offer(String word, List<Candidate> offers) {
    completion
        .at(word)
        .texts()
        .forEach(text -> offers.add(new Candidate(text, text, null, null, null, null, true)));
  }

  /** The part of the line that a completion replaces, as one word. */
  private final class EndOfLine implements Parser {
    @Override
    public ParsedLine parse(String line, int cursor, ParseContext context) {
      int from = completion.at(line.substring(0, cursor)).from();
      return new Part(line, cursor, from);
    }
  }

  private record Part(String line, int cursor, int from) implements CompletingParsedLine {
    @Override
    public String word() {
      return line.substring(from, cursor);
    }

    @Override
    public int wordCursor() {
      return cursor - from;
    }

    @Override
    public int wordIndex() {
      return 0;
    }

    @Override
    public List<String> words() {
      return List.of(line.substring(0, cursor));
    }

    @Override
    public CharSequence escape(CharSequence candidate, boolean complete) {
      return candidate;
    }

    @Override
    public int rawWordCursor() {
      return wordCursor();
    }

    @Override
    public int rawWordLength() {
      return wordCursor();
    }
  }

  /** Everything offered fits: what was typed need not be its beginning. */
  private static final class AsOffered implements CompletionMatcher {
    @Override
    public void compile(
        Map<LineReader.Option, Boolean> options,
        boolean prefix,
        CompletingParsedLine line,
        boolean caseInsensitive,
        int errors,
        String originalGroupName) {}

    @Override
    public List<Candidate> matches(List<Candidate> candidates) {
      return candidates;
    }

    @Override
    @SuppressWarnings("NullAway") // the library's word for none
    public Candidate exactMatch() {
      return null;
    }

    @Override
    public String getCommonPrefix() {
      return "";
    }
  }
}
