package traytally.cli;

/** What somebody without a box is told. */
final class FirstSteps {
  static final String WORDS =
      """
      There is no box yet. Two ways to start:
        from your own spreadsheet:  traytally import tray.xlsx --dry-run   (then without --dry-run)
        from nothing:               traytally sheet blank box              (fill it in, then import it)
      After your trip log is in too (traytally import trips.xlsx), traytally restock prints what to buy.
      To look around first: traytally demo
      """;

  private FirstSteps() {}
}
