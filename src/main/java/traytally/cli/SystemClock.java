package traytally.cli;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.TimeZone;

/** The system's clock in the system's zone. */
final class SystemClock extends Clock {
  /**
   * Today by {@code clock}. Of the system's clock it is told from the offset that holds now: to
   * make a zone ready, Java looks through every library, which takes longer than a short command.
   */
  static LocalDate today(Clock clock) {
    if (clock instanceof SystemClock) {
      int offsetMs = TimeZone.getDefault().getOffset(clock.millis());
      return LocalDate.ofInstant(clock.instant(), ZoneOffset.ofTotalSeconds(offsetMs / 1000));
    }
    return LocalDate.now(clock);
  }

  @Override
  public ZoneId getZone() {
    return ZoneId.systemDefault();
  }

  @Override
  public Clock withZone(ZoneId zone) {
    return Clock.system(zone);
  }

  @Override
  public Instant instant() {
    return Instant.now();
  }

  @Override
  public long millis() {
    return System.currentTimeMillis();
  }
}
