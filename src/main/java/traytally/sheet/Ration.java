package traytally.sheet;

import java.util.HashMap;
import java.util.Map;

/**
 * How much of one thing a workbook may hold over all its parts. A part read twice counts once, so
 * that looking at a sheet before reading it costs nothing.
 */
final class Ration {
  private final long limit;
  private final String refusal;
  private final Map<String, Meter> parts = new HashMap<>();
  private long total;

  Ration(long limit, String refusal) {
    this.limit = limit;
    this.refusal = refusal;
  }

  /** The meter of one part, back at the beginning. */
  Meter meter(String part) {
    Meter meter = parts.computeIfAbsent(part, name -> new Meter());
    meter.used = 0;
    return meter;
  }

  /** Counts what one part has used since it was last begun. */
  final class Meter {
    private long used;
    private long most;

    void add(long amount) {
      used += amount;
      if (used > most) {
        total += used - most;
        most = used;
        if (total > limit) {
          throw new UnreadableSheetException(refusal);
        }
      }
    }

    long used() {
      return used;
    }
  }
}
