package traytally.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import traytally.performance.Conditions;
import traytally.performance.Evidence;
import traytally.performance.Grain;
import traytally.performance.Measure;
import traytally.performance.Performance;
import traytally.performance.Standing;
import traytally.performance.Trust;
import traytally.plastic.Name;
import traytally.report.Column.Kind;
import traytally.report.Column.Room;

/** Which colours, plastics or bodies have earned trust. */
public final class TrustReport {
  private TrustReport() {}

  /** All that {@code performance} judges at {@code grain}, most trusted first. */
  public static Report of(
      Performance performance,
      Grain grain,
      Measure measure,
      Conditions asked,
      Swatches swatches,
      LocalDate asOf) {
    List<Trust> trusts = performance.by(grain);
    List<List<Value>> rows = new ArrayList<>();
    trusts.forEach(trust -> rows.add(row(trust, swatches)));
    List<Report.Single> facts =
        List.of(
            single("by", "Judged by", Value.of(measure.word())),
            asked("species", "For", Words.orUnknown(asked.species())),
            asked("clarity", "In", Words.orUnknown(asked.clarity())),
            asked("season", "Season", Words.orUnknown(performance.season())));
    return new Report(
        "trust",
        "Trust by " + grain.word(),
        asOf,
        facts,
        columns(grain, measure),
        rows,
        List.of(),
        notes(performance, trusts, grain, measure));
  }

  /** A condition; people need not read that nothing was asked. */
  private static Report.Single asked(String key, String label, Value value) {
    return single(key, value == Value.UNKNOWN ? "" : label, value);
  }

  private static Report.Single single(String key, String label, Value value) {
    return new Report.Single(new Column(key, label, Kind.TEXT), value);
  }

  private static List<String> notes(
      Performance performance, List<Trust> trusts, Grain grain, Measure measure) {
    if (trusts.isEmpty()) {
      return List.of("No trips are logged yet: trust is earned on the water. Import your log.");
    }
    long trusted = trusts.stream().filter(t -> t.standing() == Standing.TRUSTED).count();
    List<String> notes = new ArrayList<>();
    notes.add(
        Words.count(trusted, "trusted " + grain.word())
            + " of "
            + trusts.size()
            + ". Trust is the chance that it has more "
            + measure.word()
            + " than the mean of what you fished the same day; 50 % means that the log says"
            + " nothing either way.");
    if (!performance.hasEvidence()) {
      notes.add(
          "Your log has no stint under these conditions: the trust is that of your other trips,"
              + " with more doubt.");
    }
    return notes;
  }

  private static List<Column> columns(Grain grain, Measure measure) {
    String colour = grain == Grain.BODY ? "" : "Colour";
    String body = grain == Grain.COLOUR ? "" : "Body style";
    String length = grain == Grain.PLASTIC ? "Length" : "";
    return List.of(
        Swatches.COLUMNS.get(0),
        Swatches.COLUMNS.get(1),
        new Column("colour", colour, Kind.TEXT),
        new Column("body", body, Kind.TEXT),
        new Column("length_mm", length, Kind.LENGTH),
        new Column("days", "Days", Kind.WHOLE),
        new Column("days_with_takes", "With takes", Kind.WHOLE, Room.SPARE),
        new Column("minutes", "Minutes", Kind.WHOLE, Room.SPARE),
        new Column("follows", measure == Measure.FOLLOWS ? "Follows" : "", Kind.WHOLE),
        new Column("takes", measure == Measure.FOLLOWS ? "" : "Takes", Kind.WHOLE),
        new Column("hooked", measure == Measure.HOOKED ? "Hooked" : "", Kind.WHOLE),
        new Column("landed", measure == Measure.LANDED ? "Landed" : "", Kind.WHOLE),
        new Column("lost", "Lost", Kind.WHOLE, Room.SPARE),
        new Column("raw_per_hour", "An hour", Kind.DECIMAL),
        new Column("rate_ratio", "Times the mean", Kind.DECIMAL),
        new Column("low", "At least", Kind.DECIMAL, Room.SPARE),
        new Column("high", "At most", Kind.DECIMAL, Room.SPARE),
        new Column("trust", "Trust", Kind.CHANCE),
        new Column("standing", "Standing", Kind.TEXT));
  }

  private static List<Value> row(Trust trust, Swatches swatches) {
    Evidence evidence = trust.evidence();
    List<Value> looks =
        trust.colour().map(swatches::cells).orElse(List.of(Value.UNKNOWN, Value.UNKNOWN));
    return List.of(
        looks.get(0),
        looks.get(1),
        trust.colour().map(Name::text).map(Value::of).orElse(Value.UNKNOWN),
        trust.body().map(Name::text).map(Value::of).orElse(Value.UNKNOWN),
        Value.of(trust.lengthMm()),
        Value.of(evidence.days()),
        Value.of(evidence.daysWithTakes()),
        Value.of(Math.round(evidence.minutes())),
        Value.of(evidence.follows()),
        Value.of(evidence.takes()),
        Value.of(evidence.hooked()),
        Value.of(evidence.landed()),
        Value.of(evidence.lost()),
        Value.of(evidence.rawPerHour()),
        Value.of(trust.rateRatio()),
        Value.of(trust.low()),
        Value.of(trust.high()),
        Value.of(trust.trust()),
        Value.of(trust.standing().word()));
  }
}
