package traytally.performance;

import java.util.Map;
import traytally.plastic.Name;
import traytally.plastic.Tone;

/**
 * What a log alone does not say, and its reading needs.
 *
 * @param minutesPerCast turns casts into minutes where no minutes were noted
 * @param southern whether June is winter
 * @param tones of the colours whose looks are known
 */
public record LogReading(double minutesPerCast, boolean southern, Map<Name, Tone> tones) {
  public LogReading {
    tones = Map.copyOf(tones);
  }

  /** The reading of a northern log whose colours nobody described. */
  public static LogReading plain(double minutesPerCast) {
    return new LogReading(minutesPerCast, false, Map.of());
  }
}
