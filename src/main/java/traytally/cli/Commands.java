package traytally.cli;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import picocli.CommandLine;
import picocli.CommandLine.TypeConversionException;
import traytally.intake.ListKind;
import traytally.performance.Grain;
import traytally.performance.Measure;
import traytally.performance.Standing;
import traytally.plastic.Name;
import traytally.plastic.Worded;
import traytally.render.Format;
import traytally.render.Template;
import traytally.trip.Clarity;

/** The subcommands by name, in the order help shows them; each is made only when it is wanted. */
final class Commands {
  private static final List<String> NAMES =
      List.of(
          "import",
          "box",
          "bought",
          "lost",
          "given",
          "found",
          "count",
          "keep",
          "trips",
          "plan",
          "trust",
          "lineup",
          "guide",
          "colours",
          "restock",
          "why",
          "idle",
          "audit",
          "ledger",
          "undo",
          "agree",
          "sheet",
          "backup",
          "restore",
          "export",
          "check",
          "settings",
          "completion",
          "demo");

  /** The options before a subcommand that take a value. */
  private static final List<String> VALUED = List.of("--box", "--as-of", "--format", "--out");

  private Commands() {}

  /** Adds every subcommand. */
  static void registerAll(CommandLine commandLine) {
    NAMES.forEach(name -> commandLine.addSubcommand(name, make(name)));
  }

  /**
   * Adds what {@code args} need: the subcommand they name, none if they name none, or all where
   * help must list them or a slip must be set right. To make all takes longer than a short command.
   */
  static void register(CommandLine commandLine, String... args) {
    List<String> given = List.of(args);
    Optional<String> word = word(given);
    if (word.isPresent() && NAMES.contains(word.get())) {
      commandLine.addSubcommand(word.get(), make(word.get()));
    } else if (word.isPresent() || given.contains("--help") || given.contains("-h")) {
      registerAll(commandLine);
    }
  }

  /** The first word that is neither an option nor an option's value. */
  private static Optional<String> word(List<String> args) {
    for (int i = 0; i < args.size(); i++) {
      if (VALUED.contains(args.get(i))) {
        i++;
      } else if (!args.get(i).startsWith("-")) {
        return Optional.of(args.get(i));
      }
    }
    return Optional.empty();
  }

  // A switch, not a map of constructors, which would make thirty of them ready at every start.
  private static Object make(String name) {
    return switch (name) {
      case "import" -> new ImportCommand();
      case "box" -> new BoxCommand();
      case "bought" -> new BoughtCommand();
      case "lost" -> new LeftCommand.Lost();
      case "given" -> new LeftCommand.Given();
      case "found" -> new LeftCommand.Found();
      case "count" -> new CountCommand();
      case "keep" -> new KeepCommand();
      case "trips" -> new TripsCommand();
      case "plan" -> new PlanCommand();
      case "trust" -> new TrustCommand();
      case "lineup" -> new LineupCommand();
      case "guide" -> new GuideCommand();
      case "colours" -> new ColoursCommand();
      case "restock" -> new RestockCommand();
      case "why" -> new WhyCommand();
      case "idle" -> new IdleCommand();
      case "audit" -> new AuditCommand();
      case "ledger" -> new LedgerCommand();
      case "undo" -> new UndoCommand();
      case "agree" -> new AgreeCommand();
      case "sheet" -> new SheetCommand();
      case "backup" -> new BackupCommand();
      case "restore" -> new RestoreCommand();
      case "export" -> new ExportCommand();
      case "check" -> new CheckCommand();
      case "settings" -> new SettingsCommand();
      case "completion" -> new CompletionCommand();
      case "demo" -> new DemoCommand();
      default -> throw new IllegalArgumentException("no command " + name);
    };
  }

  /** Teaches picocli the types that options arrive as. */
  static void converters(CommandLine commandLine) {
    commandLine.registerConverter(LocalDate.class, Commands::date);
    commandLine.registerConverter(Path.class, Path::of);
    commandLine.registerConverter(Name.class, Name::of);
    words(commandLine, ListKind.values());
    words(commandLine, Template.values());
    words(commandLine, Format.values());
    words(commandLine, Measure.values());
    words(commandLine, Grain.values());
    words(commandLine, Standing.values());
    words(commandLine, Clarity.values());
    commandLine.registerConverter(Integer.class, word -> number(word, Integer::valueOf));
    commandLine.registerConverter(int.class, word -> number(word, Integer::valueOf));
    commandLine.registerConverter(Long.class, word -> number(word, Long::valueOf));
    commandLine.registerConverter(Double.class, word -> number(withPoint(word), Double::valueOf));
    commandLine.registerConverter(double.class, word -> number(withPoint(word), Double::valueOf));
    commandLine.registerConverter(
        BigDecimal.class, word -> number(withPoint(word), BigDecimal::new));
  }

  private static <T extends Enum<T> & Worded> void words(CommandLine commandLine, T[] all) {
    List<String> known = Arrays.stream(all).map(Worded::word).toList();
    String wanted =
        String.join(", ", known.subList(0, all.length - 1)) + " or " + known.get(all.length - 1);
    commandLine.registerConverter(
        all[0].getDeclaringClass(),
        word ->
            Worded.parse(all, word)
                .orElseThrow(
                    () ->
                        new TypeConversionException(
                            "\"" + word + "\" is none of " + wanted + ".")));
  }

  /** A comma before the decimals is as good as a point; one before three digits could be either. */
  private static String withPoint(String word) {
    return word.matches("-?\\d*,\\d{1,2}") ? word.replace(',', '.') : word;
  }

  private static <T> T number(String word, Function<String, T> read) {
    try {
      return read.apply(word);
    } catch (NumberFormatException e) {
      throw new TypeConversionException("\"" + word + "\" is not a number that fits here.");
    }
  }

  private static LocalDate date(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      throw new TypeConversionException(
          "\"" + text + "\" is not a date. Write the year first, as in 2026-05-01.");
    }
  }
}
