package traytally.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import traytally.report.Column.Kind;
import traytally.report.Report.Single;
import traytally.restock.Audit;

/** How past forecasts, run-out chances and trust came true. */
public final class AuditReport {
  private static final List<Column> COLUMNS =
      List.of(
          new Column("from", "Run-out chance from", Kind.CHANCE),
          new Column("to", "To", Kind.CHANCE),
          new Column("trays", "Trays", Kind.WHOLE),
          new Column("said", "Said on average", Kind.CHANCE),
          new Column("came", "Ran out", Kind.CHANCE));

  private AuditReport() {}

  /** The audit, with a row for each tenth of run-out chance. */
  public static Report of(Audit audit) {
    List<List<Value>> rows = new ArrayList<>();
    for (Audit.Bin bin : audit.runOuts()) {
      rows.add(
          List.of(
              Value.of(bin.from()),
              Value.of(bin.to()),
              Value.of(bin.trays()),
              Value.of(bin.said()),
              Value.of(bin.came())));
    }
    return new Report(
        "audit",
        "Audit of past forecasts",
        audit.asOf(),
        facts(audit),
        COLUMNS,
        rows,
        List.of(),
        notes(audit));
  }

  private static List<Single> facts(Audit audit) {
    Audit.UseScore use = audit.use();
    Audit.Calls calls = audit.calls();
    boolean any = use.forecasts() > 0;
    return List.of(
        single("trips_replayed", "Trips replayed", Kind.WHOLE, Value.of(audit.trips())),
        single("horizon_days", "Days ahead", Kind.WHOLE, Value.of(audit.horizonDays())),
        single("forecasts", "Forecasts", Kind.WHOLE, Value.of(use.forecasts())),
        single("use_forecast", "", Kind.DECIMAL, Value.of(use.forecast())),
        single("use", "", Kind.WHOLE, Value.of(use.used())),
        single("bound_held", "", Kind.CHANCE, known(any, use.held())),
        single("bound_said", "", Kind.CHANCE, known(any, use.heldBySaying())),
        single("pinball_50", "", Kind.DECIMAL, known(any, use.own().half())),
        single("pinball_90", "", Kind.DECIMAL, known(any, use.own().nineTenths())),
        single("croston_50", "", Kind.DECIMAL, known(any, use.croston().half())),
        single("croston_90", "", Kind.DECIMAL, known(any, use.croston().nineTenths())),
        single("average_50", "", Kind.DECIMAL, known(any, use.average().half())),
        single("average_90", "", Kind.DECIMAL, known(any, use.average().nineTenths())),
        single(
            "run_out_error",
            "",
            Kind.CHANCE,
            known(!audit.runOuts().isEmpty(), audit.runOutError())),
        single("trusted_colours", "", Kind.WHOLE, Value.of(calls.colours())),
        single("trusted_compared", "", Kind.WHOLE, Value.of(calls.compared())),
        single("trusted_held", "", Kind.WHOLE, Value.of(calls.held())),
        single("trusted_now", "", Kind.WHOLE, Value.of(calls.trustedNow())),
        single("trusted_ratio", "", Kind.DECIMAL, Value.of(calls.ratio())));
  }

  private static Single single(String key, String label, Kind kind, Value value) {
    return new Single(new Column(key, label, kind), value);
  }

  private static Value known(boolean known, double number) {
    return known ? Value.of(number) : Value.UNKNOWN;
  }

  private static List<String> notes(Audit audit) {
    if (audit.trips() == 0) {
      return List.of(
          "There is nothing to replay yet: it takes six days of fishing, one of them at least "
              + Words.count(audit.horizonDays(), "day")
              + " ago.");
    }
    List<String> notes = new ArrayList<>();
    Audit.UseScore use = audit.use();
    notes.add(
        say(
            "Use: %.0f pieces were forecast and %d used. The bound for nine times in ten held in"
                + " %.0f %% of %d forecasts, and was to hold in %.0f %% (counts are whole).",
            use.forecast(),
            use.used(),
            100 * use.held(),
            use.forecasts(),
            100 * use.heldBySaying()));
    if (use.newcomers() > 0) {
      notes.add(
          say(
              "Beside these, %d pieces went of plastics that neither the counts nor the log knew on"
                  + " that eve; their hours had been forecast for the others, which makes those"
                  + " forecasts too high.",
              use.newcomers()));
    }
    notes.add(
        say(
            "Mean pinball loss at one half and nine tenths: %.2f and %.2f pieces; Croston's method"
                + " %.2f and %.2f; the average of 12 months %.2f and %.2f. Less is better.",
            use.own().half(),
            use.own().nineTenths(),
            use.croston().half(),
            use.croston().nineTenths(),
            use.average().half(),
            use.average().nineTenths()));
    notes.add(runOuts(audit));
    notes.add(trust(audit.calls()));
    notes.add(
        "Each trip was replayed with what the log and the counts said on its eve; the trips then"
            + " made stand for the plan. A tray that nobody had counted yet is taken to have held"
            + " pieces.");
    return notes;
  }

  private static String runOuts(Audit audit) {
    return audit.runOuts().isEmpty()
        ? "Run-out chances cannot be checked yet: no tray had been counted before those trips."
        : say(
            "Run-out chances were off by %.0f in a hundred on average, by the rows above.",
            100 * audit.runOutError());
  }

  private static String trust(Audit.Calls calls) {
    if (calls.colours() == 0) {
      return "Trust: no colour was trusted on any of those days.";
    }
    String times =
        calls.ratio().isPresent()
            ? say(
                "; all in all they had %.1f times the takes an hour of what was fished beside them",
                calls.ratio().getAsDouble())
            : "";
    return say(
        "Trust: %s trusted at some time, %d of them still. Of %d fished later beside others, %d had"
            + " more takes an hour on the same days%s.",
        calls.colours() == 1 ? "1 colour was" : calls.colours() + " colours were",
        calls.trustedNow(),
        calls.compared(),
        calls.held(),
        times);
  }

  private static String say(String words, Object... values) {
    return String.format(Locale.ROOT, words, values);
  }
}
