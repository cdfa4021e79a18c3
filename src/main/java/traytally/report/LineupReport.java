package traytally.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import traytally.ledger.Book;
import traytally.ledger.ClosedWaters;
import traytally.ledger.Palette;
import traytally.performance.Conditions;
import traytally.performance.LineUp;
import traytally.performance.LineUp.Candidate;
import traytally.performance.LineUp.Pick;
import traytally.performance.LineUp.Role;
import traytally.performance.StartingGuide;
import traytally.plastic.Look;
import traytally.plastic.Plastic;
import traytally.plastic.Tone;
import traytally.report.Column.Kind;
import traytally.report.Report.Single;
import traytally.restock.LowRule;
import traytally.restock.Outlook;
import traytally.restock.Prospect;
import traytally.restock.StandIns;
import traytally.trip.PlannedTrip;

/** What to tie on, on one trip, and how many of each to carry. */
public final class LineupReport {
  private static final List<Column> COLUMNS = columns();

  private final PlannedTrip trip;
  private final Outlook outlook;
  private final Palette palette;
  private final Swatches swatches;
  private final StandIns standIns;
  private final LineUp lineUp;

  private LineupReport(Book book, PlannedTrip trip, LocalDate asOf) {
    this.trip = trip;
    this.outlook = Outlook.of(book, asOf, trip);
    this.palette = Palette.of(book);
    this.swatches = new Swatches(palette);
    this.standIns = new StandIns(book, outlook.prospects().values(), LowRule.of(book.settings()));
    this.lineUp = LineUp.of(outlook.performance(), candidates(GuideReport.guide(book)));
  }

  private static List<Column> columns() {
    List<Column> columns = new ArrayList<>();
    columns.add(new Column("role", "When", Kind.TEXT));
    columns.addAll(Swatches.COLUMNS);
    columns.add(new Column("", "Plastic", Kind.TEXT));
    PlasticColumns.COLUMNS.forEach(c -> columns.add(new Column(c.key(), "", c.kind())));
    columns.add(new Column("tone", "Tone", Kind.TEXT));
    columns.add(new Column("pieces", "Pieces", Kind.WHOLE));
    columns.add(new Column("carry", "Carry", Kind.WHOLE));
    columns.add(new Column("standing", "", Kind.TEXT));
    columns.add(new Column("kept", "", Kind.YES_NO));
    columns.add(new Column("trust", "Trust", Kind.CHANCE));
    columns.add(new Column("rate_ratio", "", Kind.DECIMAL));
    columns.add(new Column("chance_best", "", Kind.CHANCE));
    columns.add(new Column("leaning", "", Kind.WHOLE));
    columns.add(new Column("stand_in", "", Kind.TEXT));
    columns.add(new Column("reason", "Why", Kind.SENTENCE));
    return List.copyOf(columns);
  }

  /** The line-up for a trip on {@code asOf} or later. */
  public static Report of(Book book, PlannedTrip trip, LocalDate asOf) {
    return new LineupReport(book, trip, asOf).report(book, asOf);
  }

  private List<Candidate> candidates(StartingGuide guide) {
    Conditions conditions = Conditions.of(trip);
    List<Candidate> candidates = new ArrayList<>();
    for (Prospect prospect : outlook.prospects().values()) {
      Plastic plastic = prospect.plastic();
      Optional<Tone> tone = palette.look(plastic.colour()).map(Look::tone);
      int leaning = tone.map(t -> guide.leaning(t, conditions)).orElse(0);
      int pieces = prospect.pieces().count();
      candidates.add(new Candidate(plastic, pieces, prospect.kept(), tone, leaning));
    }
    return candidates;
  }

  private Report report(Book book, LocalDate asOf) {
    List<Single> facts =
        List.of(
            single("date", "Trip", Kind.DATE, Value.of(trip.date())),
            single("water", "Water", Kind.TEXT, Words.orUnknown(trip.water())),
            single("species", "For", Kind.TEXT, Words.orUnknown(trip.species())),
            single("clarity", "In", Kind.TEXT, Words.orUnknown(trip.clarity())),
            single("hours", "Hours", Kind.DECIMAL, Value.of(trip.hours())),
            single("rods", "Rods", Kind.WHOLE, Value.of(trip.rods())));
    return new Report(
        "lineup",
        "Line-up",
        asOf,
        facts,
        COLUMNS,
        lineUp.picks().stream().map(this::row).toList(),
        List.of(),
        notes(book));
  }

  private static Single single(String key, String label, Kind kind, Value value) {
    return new Single(new Column(key, label, kind), value);
  }

  private List<Value> row(Pick pick) {
    Candidate candidate = pick.candidate();
    List<Value> row = new ArrayList<>();
    row.add(Value.of(pick.role().word()));
    row.addAll(swatches.cells(candidate.plastic().colour()));
    row.add(Value.of(candidate.plastic().toString()));
    row.addAll(PlasticColumns.cells(candidate.plastic()));
    row.add(Words.orUnknown(candidate.tone()));
    row.add(Value.of(candidate.pieces()));
    row.add(Value.of(carry(candidate.plastic())));
    row.add(Value.of(pick.trust().standing().word()));
    row.add(Value.of(candidate.kept()));
    row.add(Value.of(pick.trust().trust()));
    row.add(Value.of(pick.rateRatio()));
    row.add(Value.of(pick.best()));
    row.add(Value.of(candidate.leaning()));
    row.add(standIn(pick).map(Plastic::toString).map(Value::of).orElse(Value.UNKNOWN));
    row.add(Value.of(reason(pick)));
    return row;
  }

  /** One at least: what is not carried cannot be tied on. */
  private int carry(Plastic plastic) {
    return Math.max(1, outlook.carry(plastic));
  }

  private Optional<Plastic> standIn(Pick pick) {
    return pick.role() == Role.GONE ? standIns.of(pick.candidate().plastic()) : Optional.empty();
  }

  private String reason(Pick pick) {
    Candidate candidate = pick.candidate();
    String word = candidate.kept() ? "kept" : pick.trust().standing().word();
    String few =
        candidate.pieces() > 0 && candidate.pieces() < carry(candidate.plastic())
            ? "; only " + candidate.pieces() + " left"
            : "";
    return switch (pick.role()) {
      case FIRST ->
          (pick.proven() ? "the best you have; " + word : "the log is silent" + guided(pick)) + few;
      case NEXT ->
          candidate.tone().map(tone -> "a change to " + tone.word()).orElse("another colour")
              + "; "
              + word
              + few;
      case TRY ->
          Math.round(100 * pick.best().orElse(0))
              + " % likely the best of the unproven"
              + guided(pick);
      case GONE ->
          "none left; "
              + word
              + standIn(pick).map(other -> "; instead: " + other).orElse("; nothing stands in");
    };
  }

  private static String guided(Pick pick) {
    int leaning = pick.candidate().leaning();
    return leaning == 0
        ? ""
        : "; starting guide " + (leaning > 0 ? "for" : "against") + " its tone";
  }

  private List<String> notes(Book book) {
    List<String> notes = new ArrayList<>();
    if (lineUp.picks().isEmpty()) {
      notes.add("The tray is empty: there is nothing to tie on.");
    }
    if (lineUp.picks().stream().noneMatch(Pick::proven)) {
      notes.add(
          "Your log does not tell your colours apart yet. Where it is silent the starting guide"
              + " settles ties: "
              + GuideReport.words(GuideReport.guide(book), Conditions.of(trip))
              + ". It is common practice, not evidence; traytally guide changes it.");
    }
    List<String> assumed =
        lineUp.picks().stream()
            .map(pick -> pick.candidate().plastic().colour())
            .filter(palette::assumed)
            .map(Object::toString)
            .distinct()
            .toList();
    if (!assumed.isEmpty()) {
      notes.add(
          "Assumed from the words of the name, there being no swatch: the tone of "
              + String.join(", ", assumed)
              + ". See traytally colours.");
    }
    notes.add("Carry is enough for 95 trips of 100 like this one.");
    notes.addAll(ClosedWaters.of(book).notes(List.of(trip)));
    notes.add(Words.RULES);
    notes.add(Words.CARE);
    return notes;
  }
}
