package traytally.cli;

import java.time.LocalDate;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The day something told by hand happened. */
final class HandDate {
  @Option(
      names = "--date",
      paramLabel = "DATE",
      description = "The day it happened; today if not given.")
  private Optional<LocalDate> date = Optional.empty();

  LocalDate date(Traytally root) {
    return past(date.orElseGet(root::today), root);
  }

  /** {@code day}, unless it is still to come. */
  static LocalDate past(LocalDate day, Traytally root) {
    if (day.isAfter(root.today())) {
      throw new Refusal(
          Exit.DATA, day + " is still to come; today is " + root.today() + ". Check the date.");
    }
    return day;
  }
}
