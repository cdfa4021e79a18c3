package traytally.cli;

/** What somebody without a box is told. */
final class FirstSteps {
  static final String WORDS =
      """
      There is no box yet. Two ways to start:
        from your own list:  traytally import tray.xlsx --dry-run, then without it
        from nothing:        traytally sheet blank box, fill it in, import it
      Your trip log goes in the same way; then traytally restock prints what to buy.
      To look around first: traytally demo. All commands: traytally --help
      """;

  private FirstSteps() {}
}
