package traytally.cli;

import java.util.List;
import java.util.Optional;
import picocli.CommandLine;

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
}
