package traytally.cli;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.regex.Pattern;
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
  private static final Pattern DECIMAL_COMMA = Pattern.compile("-?\\d*,\\d{1,2}");

  private static final Map<String, Supplier<Object>> ALL = new LinkedHashMap<>();

  static {
    ALL.put("import", ImportCommand::new);
    ALL.put("box", BoxCommand::new);
    ALL.put("bought", BoughtCommand::new);
    ALL.put("lost", LeftCommand.Lost::new);
    ALL.put("given", LeftCommand.Given::new);
    ALL.put("found", LeftCommand.Found::new);
    ALL.put("count", CountCommand::new);
    ALL.put("keep", KeepCommand::new);
    ALL.put("trips", TripsCommand::new);
    ALL.put("plan", PlanCommand::new);
    ALL.put("trust", TrustCommand::new);
    ALL.put("lineup", LineupCommand::new);
    ALL.put("guide", GuideCommand::new);
    ALL.put("colours", ColoursCommand::new);
    ALL.put("restock", RestockCommand::new);
    ALL.put("why", WhyCommand::new);
    ALL.put("idle", IdleCommand::new);
    ALL.put("audit", AuditCommand::new);
    ALL.put("ledger", LedgerCommand::new);
    ALL.put("undo", UndoCommand::new);
    ALL.put("agree", AgreeCommand::new);
    ALL.put("sheet", SheetCommand::new);
    ALL.put("backup", BackupCommand::new);
    ALL.put("restore", RestoreCommand::new);
    ALL.put("export", ExportCommand::new);
    ALL.put("check", CheckCommand::new);
    ALL.put("settings", SettingsCommand::new);
    ALL.put("completion", CompletionCommand::new);
    ALL.put("demo", DemoCommand::new);
  }

  private Commands() {}

  /** Adds the subcommand that {@code args} name, or all of them where none is named. */
  static void register(CommandLine commandLine, String... args) {
    Optional<String> named = named(args);
    ALL.forEach(
        (name, command) -> {
          if (named.isEmpty() || named.get().equals(name)) {
            commandLine.addSubcommand(name, command.get());
          }
        });
  }

  private static Optional<String> named(String... args) {
    for (int i = 0; i < args.length; i++) {
      if (args[i].equals("--box") || args[i].equals("--as-of")) {
        i++;
      } else if (!args[i].startsWith("-")) {
        return ALL.containsKey(args[i]) ? Optional.of(args[i]) : Optional.empty();
      }
    }
    return Optional.empty();
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
    return DECIMAL_COMMA.matcher(word).matches() ? word.replace(',', '.') : word;
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
