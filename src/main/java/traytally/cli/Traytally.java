package traytally.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Function;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.ledger.Settings;
import traytally.render.Sentence;
import traytally.report.GlanceReport;
import traytally.report.Report;
import traytally.restock.Outlook;
import traytally.store.Box;
import traytally.store.SqliteCode;

/** The command without a subcommand: the box at a glance. Holds what every command shares. */
@Command(
    name = "traytally",
    scope = ScopeType.INHERIT,
    mixinStandardHelpOptions = true,
    versionProvider = Traytally.Version.class,
    sortOptions = false,
    usageHelpWidth = 80,
    description = "Keeps count of your soft plastics and prints what to buy.")
final class Traytally implements Callable<Integer> {
  private final Desk desk;

  @Option(
      names = "--box",
      paramLabel = "FILE",
      scope = ScopeType.INHERIT,
      description = "The box to use (else $$TRAYTALLY_BOX, else your data folder).")
  private Optional<Path> box = Optional.empty();

  @Option(
      names = "--as-of",
      paramLabel = "DATE",
      scope = ScopeType.INHERIT,
      description = "Take this day for today, as in 2026-05-01.")
  private Optional<LocalDate> asOf = Optional.empty();

  @Option(
      names = "--debug",
      scope = ScopeType.INHERIT,
      description = "Show where in the program an error arose.")
  private boolean debug;

  @Mixin private Output output;
  @Spec private CommandSpec spec;

  private Settings settings = Settings.standard();

  Traytally(Desk desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    if (!Files.exists(boxFile())) {
      desk.out().print(FirstSteps.WORDS);
      return Exit.OK;
    }
    try (Box open = openBox()) {
      output.print(this, answer(open, this::glance));
    }
    return Exit.OK;
  }

  private Report glance(Book book) {
    return GlanceReport.of(book, Outlook.of(book, today()), today());
  }

  /**
   * What {@code work} makes of the book, for the command and options given: worked out once for
   * each day and state of the box, and remembered.
   */
  Report answer(Box open, Function<Book, Report> work) {
    Answers answers =
        new Answers(cacheFolder().resolve("answers"), boxFile().toAbsolutePath(), open.edition());
    String question = today() + Question.of(spec.commandLine().getParseResult());
    return answers.to(question, () -> work.apply(open.book()));
  }

  Desk desk() {
    return desk;
  }

  boolean debug() {
    return debug;
  }

  LocalDate today() {
    return asOf.orElseGet(() -> SystemClock.today(desk.clock()));
  }

  /** The box to read; a box that is not there yet is refused. */
  Box openBox() {
    Path file = boxFile();
    readySqlite();
    return remember(
        Box.openExisting(file, desk.clock(), patience())
            .orElseThrow(
                () ->
                    new Refusal(
                        Exit.NO_INPUT,
                        "there is no box at "
                            + file
                            + " yet. Import a list of your tray first: traytally import"
                            + " tray.xlsx")));
  }

  /** The box to write to, made if it is not there yet. */
  Box openOrMakeBox() {
    readySqlite();
    return remember(Box.open(boxFile(), desk.clock(), patience()));
  }

  /** Spares SQLite's driver to unpack its code for each command. */
  void readySqlite() {
    if (!SqliteCode.in(cacheFolder())) {
      desk.apart().run();
    }
  }

  /** How long to wait for another program's write: {@code TRAYTALLY_WAIT} says other seconds. */
  private Duration patience() {
    Optional<String> seconds = desk.variable("TRAYTALLY_WAIT");
    if (seconds.filter(text -> !text.matches("\\d{1,4}")).isPresent()) {
      throw new Refusal(
          Exit.USAGE, "TRAYTALLY_WAIT is \"" + seconds.get() + "\": give seconds, 0 to 9999.");
    }
    return seconds.map(Long::parseLong).map(Duration::ofSeconds).orElse(Box.PATIENCE);
  }

  /** Records an entry as a batch of its own, and says so. */
  void record(Box open, Entry entry) {
    desk.out()
        .println(
            "Recorded as batch "
                + open.record(entry)
                + ": "
                + Sentence.of(entry.summary(), Looks.locale())
                + "; traytally undo takes it back.");
  }

  private Box remember(Box open) {
    open.asItWas()
        .ifPresent(
            copy ->
                desk.err()
                    .println(
                        "The box was brought up to date for this traytally; as it was: " + copy));
    settings = open.settings();
    return open;
  }

  /** The angler's settings, once a box was opened; the standard ones before. */
  Settings settings() {
    return settings;
  }

  /** The file of the box: the option, else the variable, else the platform's data directory. */
  Path boxFile() {
    return box.or(() -> desk.variable("TRAYTALLY_BOX").map(Path::of)).orElseGet(this::homeBox);
  }

  private Path homeBox() {
    return folder("XDG_DATA_HOME", ".local/share").resolve("tray.box");
  }

  /** Where what is worth remembering from one command to the next lies. */
  Path stateFolder() {
    return folder("XDG_STATE_HOME", ".local/state");
  }

  /** Where what can be worked out again lies. */
  private Path cacheFolder() {
    return folder("XDG_CACHE_HOME", ".cache");
  }

  /** A folder of this program: the XDG Base Directory Specification 0.8, and its counterparts. */
  private Path folder(String variable, String standard) {
    Path home = Path.of(System.getProperty("user.home"));
    String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
    Path data =
        desk.variable(variable)
            .map(Path::of)
            .orElseGet(
                () ->
                    system.contains("mac")
                        ? home.resolve("Library/Application Support")
                        : system.contains("win")
                            ? desk.variable("APPDATA").map(Path::of).orElse(home)
                            : home.resolve(standard));
    return data.resolve("traytally");
  }

  /** The version the build wrote into the jar. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      String version = Traytally.class.getPackage().getImplementationVersion();
      return new String[] {"traytally " + (version == null ? "(unpackaged)" : version)};
    }
  }
}
