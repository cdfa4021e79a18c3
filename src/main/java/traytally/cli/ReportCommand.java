package traytally.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.performance.Conditions;
import traytally.performance.Grain;
import traytally.performance.Measure;
import traytally.render.Look;
import traytally.render.Rendering;
import traytally.report.AuditReport;
import traytally.report.BoxReport;
import traytally.report.ContentsReport;
import traytally.report.IdleReport;
import traytally.report.LineupReport;
import traytally.report.Report;
import traytally.report.RestockReport;
import traytally.report.Season;
import traytally.report.Sheet;
import traytally.report.Swatches;
import traytally.report.TripsReport;
import traytally.report.TrustReport;
import traytally.restock.Asked;
import traytally.restock.Audit;
import traytally.restock.Idle;
import traytally.restock.Outlook;
import traytally.restock.ShoppingList;
import traytally.store.Box;

/** {@code sheet report}: everything in one workbook. */
@Command(
    name = "report",
    description = "Writes everything as one workbook, a sheet for each list, with charts.",
    footer = {"", "Example: traytally sheet report --out season.xlsx"})
final class ReportCommand implements Callable<Integer> {
  /** What {@code idle} and {@code audit} look at when nothing is said. */
  private static final double IDLE_YEARS = 2;

  private static final int AUDITED_TRIPS = 100;

  @ParentCommand private SheetCommand parent;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "Where to write it; else report.xlsx here.")
  private Path out = Path.of("report.xlsx");

  @Override
  public Integer call() {
    Traytally root = parent.root();
    if (!out.toString().toLowerCase(Locale.ROOT).endsWith(".xlsx")) {
      throw new Refusal(Exit.USAGE, "the report is a .xlsx file: " + out);
    }
    try (Box box = root.openBox();
        Progress progress = new Progress(root.desk())) {
      List<Sheet> sheets = sheets(box.book(), root.today(), progress::replay);
      Report contents = ContentsReport.of(sheets, root.today());
      Look look = Looks.of(root.desk(), root.settings());
      Output.deliver(
          root.desk(), out, stream -> Rendering.workbook(contents, sheets, look, stream));
    }
    return Exit.OK;
  }

  private static List<Sheet> sheets(Book book, LocalDate today, Audit.Watcher progress) {
    ShoppingList list = ShoppingList.of(book, today, Asked.NOTHING);
    Outlook outlook = list.outlook();
    Report trust =
        TrustReport.of(
            outlook.performance(),
            Grain.COLOUR,
            Measure.TAKES,
            Conditions.ANY,
            Swatches.of(book),
            today);
    List<Sheet> sheets = new ArrayList<>();
    sheets.addAll(stockSheets(book, outlook, trust, today));
    sheets.add(
        Sheet.of(
            RestockReport.of(list, Swatches.of(book)), "What to buy before the coming trips."));
    outlook.horizon().trips().stream()
        .findFirst()
        .ifPresent(
            next ->
                sheets.add(
                    Sheet.of(
                        LineupReport.of(book, next, today),
                        "What to tie on, on the next trip, and how many of each to carry.")));
    sheets.addAll(pastSheets(book, today, progress));
    return List.copyOf(sheets);
  }

  private static List<Sheet> stockSheets(
      Book book, Outlook outlook, Report trust, LocalDate today) {
    return List.of(
        Sheet.of(
            BoxReport.of(book, outlook, one -> true, today),
            "What lies in the trays, and the chance that it runs out."),
        Sheet.of(
            Season.stock(outlook, today),
            "Pieces in the tray against the use to come, with a chart.",
            Season.stockChart()),
        Sheet.of(
            trust,
            "Which colours out-fish the rest on the same days, with a chart.",
            Season.trustChart(trust)));
  }

  private static List<Sheet> pastSheets(Book book, LocalDate today, Audit.Watcher progress) {
    return List.of(
        Sheet.of(
            TripsReport.of(book.facts(Fact.Fished.class), book.settings(), today),
            "Your log, a row for each plastic tied on."),
        Sheet.of(
            Season.months(book, today),
            "Takes an hour through the year, with a chart.",
            Season.monthsChart()),
        Sheet.of(
            Season.waters(book, today),
            "What each water costs you, with a chart.",
            Season.watersChart()),
        Sheet.of(
            IdleReport.of(Idle.of(book, today, IDLE_YEARS), Swatches.of(book)),
            "What will not be used up within two years."),
        Sheet.of(
            AuditReport.of(Audit.of(book, today, AUDITED_TRIPS, progress)),
            "How often past run-out chances came true."));
  }
}
