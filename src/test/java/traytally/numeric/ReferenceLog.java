package traytally.numeric;

import java.util.Arrays;

/** The reference stints as count data; columns joined by a colon are R's interactions. */
final class ReferenceLog {
  private ReferenceLog() {}

  static CountData stints(String name, String... groupings) {
    ReferenceTable table = ReferenceTable.read(name + ".csv");
    double[] logHours =
        Arrays.stream(table.numbers("minutes")).map(minutes -> Math.log(minutes / 60)).toArray();
    Levels day = Levels.of(table.texts("day"));
    CountData data =
        CountData.of(table.integers("takes"), logHours).blockedBy("day", day.of(), day.size());
    for (String grouping : groupings) {
      Levels levels = Levels.of(table.joined(grouping.split(":")));
      data = data.groupedBy(grouping, levels.of(), levels.size());
    }
    return data;
  }
}
