package traytally.render;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import traytally.plastic.Money;
import traytally.report.Column;
import traytally.report.Column.Kind;
import traytally.report.Report;
import traytally.report.Value;

/** Reports of an invented box on an invented coast. */
final class Examples {
  static final LocalDate DAY = LocalDate.of(2026, 5, 1);
  static final Currency EUR = Currency.getInstance("EUR");

  private Examples() {}

  static Money euros(String amount) {
    return Money.of(new BigDecimal(amount), EUR);
  }

  static Value sum(String amount) {
    return Value.of(euros(amount));
  }

  static Column column(String key, String label, Kind kind) {
    return new Column(key, label, kind);
  }

  /** One row of one column for machines and people. */
  static Report single(Kind kind, Value value) {
    return table(List.of(column("it", "It", kind)), List.of(List.of(value)));
  }

  static Report table(List<Column> columns, List<List<Value>> rows) {
    return new Report("box", "Box", DAY, List.of(), columns, rows, List.of(), List.of());
  }

  /** A shopping list at two shops, with one plastic that no shop has. */
  static Report restock() {
    List<Column> columns =
        List.of(
            column("", "Got", Kind.TICK),
            column("shop", "", Kind.TEXT),
            column("maker", "", Kind.TEXT),
            column("body", "Body style", Kind.TEXT),
            column("colour", "Colour", Kind.TEXT),
            column("length_mm", "Length", Kind.LENGTH),
            column("pieces", "Pieces now", Kind.WHOLE),
            column("kept", "Kept", Kind.YES_NO),
            column("expected_use", "Use expected", Kind.DECIMAL),
            column("run_out_chance", "Run-out chance", Kind.CHANCE),
            column("packs", "Packs to buy", Kind.WHOLE),
            column("pack_price", "Pack price", Kind.MONEY),
            column("line_total", "Line total", Kind.MONEY),
            column("stand_in", "If the shop has none", Kind.TEXT),
            column("currency", "", Kind.TEXT));
    return new Report(
        "restock",
        "Shopping list",
        DAY,
        List.of(
            new Report.Single(column("horizon_from", "From", Kind.DATE), Value.of(DAY)),
            new Report.Single(
                column("horizon_to", "until", Kind.DATE), Value.of(LocalDate.of(2026, 6, 4))),
            new Report.Single(column("trips_counted", "Trips counted", Kind.WHOLE), Value.of(6)),
            new Report.Single(column("budget", "Budget", Kind.MONEY), sum("50")),
            new Report.Single(column("postage", "Postage", Kind.MONEY), sum("3.9")),
            new Report.Single(column("total", "Total", Kind.MONEY), sum("31.15")),
            new Report.Single(column("currency", "", Kind.TEXT), Value.of("EUR")),
            new Report.Single(
                column("takes_saved", "Takes saved", Kind.DECIMAL), Value.of(4.2499999))),
        columns,
        List.of(
            line("Harbour Tackle Loft", "Tern & Tide", "paddle tail", "motor oil", 75, 3, true)
                .use(7.4, 0.9321)
                .buy(1, "5.45", "5.45", "paddle tail, motor oil, 100 mm"),
            line(
                    "Harbour Tackle Loft",
                    "",
                    "slim minnow",
                    "smoked pearl with silver belly",
                    90,
                    0,
                    false)
                .use(2.1, 1)
                .buy(2, "6.20", "12.40", "slim minnow, smelt green, 90 mm"),
            line("Quay Street Bait", "Tern & Tide", "curl tail", "midnight plum", 65, 5, false)
                .use(5, 0.0832)
                .buy(2, "4.70", "9.40", "curl tail, black cherry, 65 mm"),
            line("", "", "creature", "rust crab", 0, 1, true)
                .use(1.25, 0.002)
                .none("no shop lists it")),
        List.of(
            new Report.Section(
                "Harbour Tackle Loft", 0, 2, "3 packs, 17.85 EUR; postage free over 15.00"),
            new Report.Section("Quay Street Bait", 2, 3, "2 packs, 9.40 EUR; postage 3.90"),
            new Report.Section("Bought nowhere", 3, 4, "")),
        List.of(
            "Use is reckoned from 41 trips since 2024-03; the list keeps the chance of running out"
                + " of a trusted colour below 5 %.",
            "Seasons, licences, bag limits and bans on lures or lead are local and change: ask the"
                + " authority for the water. Take used plastics home."));
  }

  private static Line line(
      String shop, String maker, String body, String colour, int mm, int pieces, boolean kept) {
    return new Line(shop, maker, body, colour, mm, pieces, kept);
  }

  private record Line(
      String shop, String maker, String body, String colour, int mm, int pieces, boolean kept) {
    Use use(double expected, double runOut) {
      return new Use(this, expected, runOut);
    }
  }

  private record Use(Line line, double expected, double runOut) {
    List<Value> buy(int packs, String price, String total, String standIn) {
      return row(packs, sum(price), sum(total), standIn);
    }

    List<Value> none(String reason) {
      return row(0, Value.UNKNOWN, sum("0"), reason);
    }

    private List<Value> row(int packs, Value price, Value total, String standIn) {
      return List.of(
          Value.UNKNOWN,
          Value.of(line.shop),
          Value.of(line.maker),
          Value.of(line.body),
          Value.of(line.colour),
          Value.ofLength(line.mm),
          Value.of(line.pieces),
          Value.of(line.kept),
          Value.of(expected),
          Value.of(runOut),
          Value.of(packs),
          price,
          total,
          Value.of(standIn),
          Value.of("EUR"));
    }
  }

  /** Names from around the world, in scripts of every width and direction. */
  static Report names() {
    List<Column> columns =
        List.of(
            column("body", "Body style", Kind.TEXT),
            column("colour", "Colour", Kind.TEXT),
            column("pieces", "Pieces", Kind.WHOLE));
    return table(
        columns,
        List.of(
            named("paddle tail", "motor oil", 3),
            named("シャッドテール", "モーターオイル", 12),
            named("슬림 미노우", "연기 진주", 1200),
            named("زعنفة", "أخضر داكن", 4),
            named("זנב", "ירוק", 5),
            named("cre\u0301ature", "e\u0301meraude fonce\u0301", 6),
            named("🐟 minnow", "👩🏽‍🚀 orange 🇮🇪 ❤️", 7)));
  }

  static List<Value> named(String body, String colour, int pieces) {
    return List.of(Value.of(body), Value.of(colour), Value.of(pieces));
  }
}
