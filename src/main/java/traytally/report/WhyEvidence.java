package traytally.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import traytally.performance.DayRecord;
import traytally.performance.Evidence;
import traytally.performance.Performance;
import traytally.performance.Trust;
import traytally.performance.WhatIf;
import traytally.plastic.Name;
import traytally.report.Column.Kind;
import traytally.report.Report.Single;

/** The evidence for and against a colour, as a person would check it. */
final class WhyEvidence {
  /** Days shown to people; the file has all. */
  private static final int DAYS_SHOWN = 8;

  /** In columns: two bars, what they stand for and their day fit on a line of 60. */
  private static final int LONGEST_BAR = 10;

  /** A condition matters to people where it moves trust by this much. */
  private static final double MATTERS = 0.1;

  private static final List<Column> DAYS =
      List.of(
          new Column("date", "", Kind.DATE),
          new Column("water", "", Kind.TEXT),
          new Column("minutes", "", Kind.DECIMAL),
          new Column("takes", "", Kind.WHOLE),
          new Column("per_hour", "", Kind.DECIMAL),
          new Column("others_minutes", "", Kind.DECIMAL),
          new Column("others_takes", "", Kind.WHOLE),
          new Column("others_per_hour", "", Kind.DECIMAL));

  private static final List<Column> CONDITIONS =
      List.of(
          new Column("condition", "", Kind.TEXT),
          new Column("days", "", Kind.WHOLE),
          new Column("rate_ratio", "", Kind.DECIMAL),
          new Column("trust", "", Kind.CHANCE));

  private final Trust trust;
  private final List<DayRecord> days;
  private final double meanPerHour;
  private final Map<String, Trust> byCondition;
  private final Optional<WhatIf> whatIf;

  WhyEvidence(Performance performance, Name colour) {
    this.trust = performance.colour(colour);
    this.days = performance.days(colour);
    double minutes = performance.turns().stream().mapToDouble(t -> t.rodMinutes()).sum();
    double takes = performance.turns().stream().mapToDouble(t -> t.fish().takes()).sum();
    this.meanPerHour = minutes > 0 ? takes / (minutes / 60) : 0;
    this.byCondition = performance.byCondition(colour);
    this.whatIf = days.isEmpty() ? Optional.empty() : WhatIf.of(performance, colour);
  }

  private static Single single(String key, Kind kind, Value value) {
    return new Single(new Column(key, "", kind), value);
  }

  /** The numbers, for machines. */
  List<Single> facts() {
    List<List<Value>> dayRows = days.stream().map(WhyEvidence::row).toList();
    List<List<Value>> conditionRows = new ArrayList<>();
    byCondition.forEach(
        (words, under) ->
            conditionRows.add(
                List.of(
                    Value.of(words),
                    Value.of(under.evidence().days()),
                    Value.of(under.rateRatio()),
                    Value.of(under.trust()))));
    return List.of(
        single("mean_per_hour", Kind.DECIMAL, Value.of(meanPerHour)),
        single("same_day_ratio", Kind.DECIMAL, Value.of(DayRecord.sameDayRatio(days))),
        single("evidence", Kind.TEXT, new Value.Rows(DAYS, dayRows)),
        single("conditions", Kind.TEXT, new Value.Rows(CONDITIONS, conditionRows)),
        single("change_days", Kind.WHOLE, number(whatIf.map(WhatIf::days))),
        single("change_takes", Kind.WHOLE, number(whatIf.map(WhatIf::takes))),
        single(
            "change_to",
            Kind.TEXT,
            whatIf.map(w -> Value.of(w.then().word())).orElse(Value.UNKNOWN)));
  }

  private static Value number(Optional<Integer> number) {
    return number.map(n -> Value.of((long) n)).orElse(Value.UNKNOWN);
  }

  private static List<Value> row(DayRecord day) {
    return List.of(
        Value.of(day.trip().date()),
        Words.orUnknown(day.trip().water()),
        Value.of(day.minutes()),
        Value.of(day.counted()),
        Value.of(day.perHour()),
        Value.of(day.othersMinutes()),
        Value.of(day.othersCounted()),
        day.hasOthers() ? Value.of(day.othersPerHour()) : Value.UNKNOWN);
  }

  /** The same for people. */
  List<String> notes() {
    if (days.isEmpty()) {
      return List.of("The colour was never fished: nothing speaks for or against it.");
    }
    List<String> notes = new ArrayList<>();
    notes.add(difference());
    notes.addAll(bars());
    byCondition.forEach(
        (words, under) -> {
          if (Math.abs(under.trust() - trust.trust()) >= MATTERS) {
            notes.add(
                String.format(
                    Locale.ROOT,
                    "%s: trust %.0f %%, %.1f times the mean (%s).",
                    words,
                    100 * under.trust(),
                    under.rateRatio(),
                    Words.count(under.evidence().days(), "day")));
          }
        });
    notes.add(verdict());
    return notes;
  }

  private String difference() {
    Evidence evidence = trust.evidence();
    double raw = evidence.rawPerHour().orElse(0);
    String company =
        days.stream().anyMatch(DayRecord::hasOthers)
            ? String.format(
                Locale.ROOT,
                " Beside what else was fished on its %s it had %.1f times as many.",
                Words.count(days.size(), "trip"),
                DayRecord.sameDayRatio(days))
            : " It was always fished alone, so its days tell little.";
    return String.format(
            Locale.ROOT,
            "As logged it has %.1f takes an hour; all you fish has %.1f.",
            raw,
            meanPerHour)
        + company
        + String.format(
            Locale.ROOT,
            " With its body styles told apart and the doubt of %s, that is worth %.1f times the"
                + " mean, somewhere from %.1f to %.1f.",
            Words.count(evidence.days(), "day"),
            trust.rateRatio(),
            trust.low(),
            trust.high());
  }

  private List<String> bars() {
    List<DayRecord> last = days.subList(Math.max(0, days.size() - DAYS_SHOWN), days.size());
    double most = 0;
    for (DayRecord day : last) {
      most = Math.max(most, Math.max(day.perHour(), day.othersPerHour()));
    }
    List<String> lines = new ArrayList<>();
    for (DayRecord day : last) {
      String others =
          day.hasOthers()
              ? String.format(
                  Locale.ROOT,
                  "others %4.1f %s",
                  day.othersPerHour(),
                  bar(day.othersPerHour(), most))
              : "no others";
      lines.add(
          String.format(
              Locale.ROOT,
              "%s it %4.1f an hour %s %s",
              day.trip().date(),
              day.perHour(),
              bar(day.perHour(), most),
              others));
    }
    return lines;
  }

  private static String bar(double rate, double most) {
    int length = most > 0 ? (int) Math.round(LONGEST_BAR * rate / most) : 0;
    return "█".repeat(length) + "·".repeat(LONGEST_BAR - length);
  }

  private String verdict() {
    if (whatIf.isEmpty()) {
      return "No handful of days would change the verdict.";
    }
    WhatIf change = whatIf.get();
    String day =
        String.format(
            Locale.ROOT,
            " (an hour each with it and %s: %d to its %d)",
            change.other(),
            change.takes(),
            change.othersTakes());
    String more = Words.count(change.days(), "more day");
    return change.takes() > 0
        ? more + " with takes would make it trusted" + day + "."
        : more + " without a take would make it " + change.then().word() + day + ".";
  }
}
