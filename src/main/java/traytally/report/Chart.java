package traytally.report;

import java.util.List;
import java.util.OptionalInt;

/**
 * A picture of some columns of a report.
 *
 * @param description what it shows, in words for those who cannot see it
 * @param scale what the values count
 * @param names place of the column that names each row
 * @param values places of the columns drawn, one series each
 * @param low place of the lower end of the first series' interval, if it has one
 * @param high place of the upper end
 * @param most rows drawn, from the first on
 * @param lying whether the bars lie, so that long names beside them can be read
 */
public record Chart(
    String title,
    String description,
    String scale,
    int names,
    List<Integer> values,
    OptionalInt low,
    OptionalInt high,
    int most,
    boolean lying) {
  public Chart {
    values = List.copyOf(values);
    if (values.isEmpty() || low.isPresent() != high.isPresent()) {
      throw new IllegalArgumentException("a chart draws values, and both ends of an interval");
    }
  }
}
