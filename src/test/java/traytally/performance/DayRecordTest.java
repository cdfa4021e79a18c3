package traytally.performance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import traytally.plastic.Name;

/** Worked by hand. */
class DayRecordTest {
  private static final Name INK = Name.of("ink");

  @Test
  void colourStandsBesideAllElseOfItsTrips() {
    List<DayRecord> days =
        new Stints()
            .on(1, "ink", 30, 1)
            .on(0, "ink", 60, 3)
            .on(0, "olive", 40, 2)
            .on(0, "rust", 20, 4)
            .on(2, "olive", 60, 5)
            .performance()
            .days(INK);
    assertEquals(2, days.size());
    DayRecord first = days.get(0);
    assertEquals(Stints.FIRST_DAY, first.trip().date());
    assertEquals(60, first.minutes());
    assertEquals(3, first.counted());
    assertEquals(60, first.othersMinutes());
    assertEquals(6, first.othersCounted());
    assertEquals(3, first.perHour());
    assertEquals(6, first.othersPerHour());
    assertTrue(first.hasOthers());
    DayRecord alone = days.get(1);
    assertEquals(2, alone.perHour());
    assertFalse(alone.hasOthers());
    assertEquals(0, alone.othersPerHour());
  }

  /** 4 + 1 fish, against 1 h at 2 an hour and ½ h at 4 an hour: 5 over 4; the lone day is out. */
  @Test
  void sameDayRatioLeavesOutDaysAlone() {
    List<DayRecord> days =
        new Stints()
            .on(0, "ink", 60, 4)
            .on(0, "olive", 60, 2)
            .on(1, "ink", 30, 1)
            .on(1, "olive", 30, 2)
            .on(2, "ink", 60, 9)
            .performance()
            .days(INK);
    assertEquals(5.0 / 4, DayRecord.sameDayRatio(days), 1e-12);
  }

  @Test
  void ratioIsNothingWhereTheOthersHadNothing() {
    List<DayRecord> days =
        new Stints().on(0, "ink", 60, 4).on(0, "olive", 60, 0).performance().days(INK);
    assertEquals(0, DayRecord.sameDayRatio(days));
    assertEquals(0, DayRecord.sameDayRatio(List.of()));
  }
}
