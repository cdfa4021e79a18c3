package traytally.report;

import java.util.Optional;

/**
 * A report as a sheet of a workbook.
 *
 * @param about what it shows, in a sentence
 */
public record Sheet(Report report, String about, Optional<Chart> chart) {

  public static Sheet of(Report report, String about) {
    return new Sheet(report, about, Optional.empty());
  }

  public static Sheet of(Report report, String about, Chart chart) {
    return new Sheet(report, about, Optional.of(chart));
  }
}
