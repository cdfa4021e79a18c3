package traytally.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import traytally.performance.Evidence;
import traytally.performance.Trust;
import traytally.plastic.Plastic;
import traytally.report.Column.Kind;
import traytally.report.Column.Room;
import traytally.report.Report.Single;
import traytally.restock.Outlook;
import traytally.restock.Prospect;
import traytally.restock.ShoppingLine;
import traytally.restock.TripUse;
import traytally.restock.Use;

/** Every number behind one line of the shopping list, a row for each coming trip. */
public final class WhyReport {
  private static final List<Column> COLUMNS =
      List.of(
          new Column("date", "Trip", Kind.DATE),
          new Column("water", "Water", Kind.TEXT),
          new Column("rod_hours", "Rod-hours", Kind.DECIMAL),
          new Column("loss_per_hour", "Use an hour", Kind.DECIMAL),
          new Column("share", "Share of the time", Kind.CHANCE),
          new Column("expected_use", "Use", Kind.DECIMAL),
          new Column("turns", "", Kind.DECIMAL),
          new Column("day_variance", "", Kind.DECIMAL),
          new Column("share_as_it_is", "Share as the trays are", Kind.CHANCE, Room.SPARE),
          new Column("expected_use_as_it_is", "Use as the trays are", Kind.DECIMAL, Room.SPARE));

  private WhyReport() {}

  /**
   * The numbers behind {@code prospect}.
   *
   * @param line its line on the shopping list, if it is on it
   */
  public static Report of(
      Prospect prospect, Optional<ShoppingLine> line, Outlook outlook, LocalDate asOf) {
    List<List<Value>> rows = new ArrayList<>();
    List<TripUse> endless = prospect.endless().trips();
    List<TripUse> asItIs = prospect.asItIs().trips();
    for (int i = 0; i < endless.size(); i++) {
      rows.add(row(endless.get(i), asItIs.get(i)));
    }
    List<Single> facts = new ArrayList<>(plastic(prospect));
    facts.addAll(trust(prospect.trust()));
    WhyEvidence evidence = new WhyEvidence(outlook.performance(), prospect.plastic().colour());
    facts.addAll(evidence.facts());
    facts.addAll(use(prospect));
    line.ifPresent(l -> facts.addAll(after(l)));
    return new Report(
        "why",
        "Why: " + prospect.plastic(),
        asOf,
        facts,
        COLUMNS,
        rows,
        List.of(),
        notes(prospect, line, outlook, evidence));
  }

  private static Single single(String key, String label, Kind kind, Value value) {
    return new Single(new Column(key, label, kind), value);
  }

  private static List<Single> plastic(Prospect prospect) {
    Plastic plastic = prospect.plastic();
    return List.of(
        single("maker", "", Kind.TEXT, Words.orUnknown(plastic.maker())),
        single("body", "", Kind.TEXT, Value.of(plastic.body().text())),
        single("colour", "", Kind.TEXT, Value.of(plastic.colour().text())),
        single("length_mm", "", Kind.LENGTH, Value.ofLength(plastic.lengthMm())),
        single("pieces", "Pieces left", Kind.WHOLE, Value.of(prospect.pieces().count())),
        single("kept", "Kept by hand", Kind.YES_NO, Value.of(prospect.kept())));
  }

  private static List<Single> trust(Trust trust) {
    Evidence evidence = trust.evidence();
    return List.of(
        single("standing", "Standing of the colour", Kind.TEXT, Value.of(trust.standing().word())),
        single("trust", "Trust", Kind.CHANCE, Value.of(trust.trust())),
        single("log_ratio_mean", "", Kind.DECIMAL, Value.of(trust.logRatioMean())),
        single("log_ratio_sd", "", Kind.DECIMAL, Value.of(trust.logRatioSd())),
        single(
            "rate_ratio", "Times the mean of its days", Kind.DECIMAL, Value.of(trust.rateRatio())),
        single("low", "  at least", Kind.DECIMAL, Value.of(trust.low())),
        single("high", "  at most", Kind.DECIMAL, Value.of(trust.high())),
        single("days", "Days fished", Kind.WHOLE, Value.of(evidence.days())),
        single("days_with_takes", "  with takes", Kind.WHOLE, Value.of(evidence.daysWithTakes())),
        single("minutes", "Minutes", Kind.WHOLE, Value.of(Math.round(evidence.minutes()))),
        single("takes", "Takes", Kind.WHOLE, Value.of(evidence.takes())),
        single(
            "raw_per_hour",
            "Takes an hour, as logged",
            Kind.DECIMAL,
            Value.of(evidence.rawPerHour())));
  }

  private static List<Single> use(Prospect prospect) {
    Use endless = prospect.endless();
    Use asItIs = prospect.asItIs();
    return List.of(
        single("expected_use", "Use to come", Kind.DECIMAL, Value.of(prospect.expectedUse())),
        single("use_variance", "", Kind.DECIMAL, Value.of(endless.variance())),
        single("use_p90", "  nine times in ten at most", Kind.WHOLE, Value.of(prospect.useP90())),
        single("dispersion", "", Kind.DECIMAL, dispersion(endless)),
        single("rate_variance", "", Kind.DECIMAL, Value.of(endless.rateVariance())),
        single("share_variance", "", Kind.DECIMAL, Value.of(endless.shareVariance())),
        single("expected_use_as_it_is", "", Kind.DECIMAL, Value.of(asItIs.mean())),
        single("use_variance_as_it_is", "", Kind.DECIMAL, Value.of(asItIs.variance())),
        single("run_out_chance", "Run-out chance", Kind.CHANCE, Value.of(prospect.runOutChance())));
  }

  private static Value dispersion(Use use) {
    return Double.isFinite(use.dispersion()) ? Value.of(use.dispersion()) : Value.UNKNOWN;
  }

  private static List<Single> after(ShoppingLine line) {
    int bought = line.purchase().map(p -> p.pieces().count()).orElse(0);
    return List.of(
        single("bought_pieces", "Pieces on the list", Kind.WHOLE, Value.of(bought)),
        single("expected_use_after", "", Kind.DECIMAL, Value.of(line.after().mean())),
        single("use_variance_after", "", Kind.DECIMAL, Value.of(line.after().variance())),
        single("run_out_after", "Run-out chance then", Kind.CHANCE, Value.of(line.runOutAfter())));
  }

  private static List<Value> row(TripUse endless, TripUse asItIs) {
    return List.of(
        Value.of(endless.date()),
        Words.orUnknown(endless.water()),
        Value.of(endless.rodHours()),
        Value.of(endless.loss().perHour()),
        Value.of(endless.share()),
        Value.of(endless.mean()),
        Value.of(endless.turns()),
        Value.of(endless.loss().dayVariance()),
        Value.of(asItIs.share()),
        Value.of(asItIs.mean()));
  }

  private static List<String> notes(
      Prospect prospect, Optional<ShoppingLine> line, Outlook outlook, WhyEvidence evidence) {
    List<String> notes = new ArrayList<>(evidence.notes());
    line.ifPresent(l -> notes.add("On the shopping list: " + l.reason() + "."));
    notes.add("Counted: " + outlook.horizon().words() + ".");
    notes.add(
        "Use on a trip is rod-hours, times the share of them that it is tied on, times the pieces"
            + " it loses in an hour. The share is worked out among the trays that have pieces"
            + " (and this one); \"as the trays are\" gives the hours of trays that may empty to the"
            + " rest.");
    if (outlook.useAssumed()) {
      notes.add("There is no log yet: the use in an hour is the assumption in your settings.");
    }
    if (prospect.kept()) {
      notes.add("Kept by hand: it counts as trusted; the number is the log's all the same.");
    }
    return notes;
  }
}
