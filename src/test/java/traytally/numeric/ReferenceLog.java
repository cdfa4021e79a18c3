package traytally.numeric;

import java.util.Arrays;
import java.util.stream.IntStream;

/** The reference stints as count data; columns joined by a colon are R's interactions. */
final class ReferenceLog {
  private ReferenceLog() {}

  static CountData stints(String name, String... groupings) {
    return repeated(name, 1, groupings);
  }

  /** The same stints several times over, each time on days of their own. */
  static CountData repeated(String name, int times, String... groupings) {
    ReferenceTable table = ReferenceTable.read(name + ".csv");
    double[] minutes = table.numbers("minutes");
    int[] takes = table.integers("takes");
    Levels day = Levels.of(table.texts("day"));
    int rows = takes.length;
    double[] logHours = new double[rows * times];
    Arrays.setAll(logHours, i -> Math.log(minutes[i % rows] / 60));
    int[] days = new int[rows * times];
    Arrays.setAll(days, i -> day.of(i % rows) + i / rows * day.size());
    CountData data =
        CountData.of(repeated(takes, times), logHours).blockedBy("day", days, day.size() * times);
    for (String grouping : groupings) {
      Levels levels = Levels.of(table.joined(grouping.split(":")));
      data = data.groupedBy(grouping, repeated(levels.of(), times), levels.size());
    }
    return data;
  }

  private static int[] repeated(int[] values, int times) {
    return IntStream.range(0, values.length * times).map(i -> values[i % values.length]).toArray();
  }
}
