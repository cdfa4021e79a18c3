package traytally.intake;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import traytally.sheet.Address;
import traytally.sheet.Cell;

/**
 * What a whole column decides for each of its cells.
 *
 * @param bare the unit of bare lengths
 * @param order the order of day and month
 * @param bareTime what bare times are
 */
record ColumnHabits(Lengths.Bare bare, Optional<Dates.Order> order, Durations.Bare bareTime) {
  /** What stands behind the point where it is minutes: 15, 30 and 45. */
  private static final Set<BigDecimal> QUARTERS =
      Set.of(new BigDecimal("0.15"), new BigDecimal("0.3"), new BigDecimal("0.45"));

  /** Decides, and notes in the table what was decided. */
  static ColumnHabits of(Table table, ImportOptions options, LocalDate today) {
    return new ColumnHabits(
        bareLengths(table, options), dateOrder(table, options, today), bareTime(table));
  }

  private static Set<Cell> distinct(Table table, Field field) {
    Set<Cell> cells = new LinkedHashSet<>();
    table.rows().forEach(row -> cells.add(row.cell(field)));
    return cells;
  }

  private static Lengths.Bare bareLengths(Table table, ImportOptions options) {
    Optional<ColumnHeader> header = table.header(Field.LENGTH);
    Optional<Lengths.Unit> stated = header.flatMap(ColumnHeader::lengthUnit);
    if (stated.isPresent()) {
      return switch (stated.get()) {
        case MM -> Lengths.Bare.MM;
        case CM -> Lengths.Bare.CM;
        case INCH -> Lengths.Bare.INCHES;
      };
    }
    List<BigDecimal> bare = new ArrayList<>();
    for (Cell cell : distinct(table, Field.LENGTH)) {
      RowReader.writtenLength(cell)
          .filter(length -> length.unit().isEmpty() && length.number().signum() > 0)
          .ifPresent(length -> bare.add(length.number()));
    }
    if (bare.isEmpty()) {
      return Lengths.Bare.MM;
    }
    Lengths.Bare decided =
        options
            .lengthUnit()
            .map(
                unit ->
                    switch (unit) {
                      case MM -> Lengths.Bare.MM;
                      case CM -> Lengths.Bare.CM;
                      case IN -> Lengths.Bare.INCHES;
                    })
            .orElseGet(() -> Lengths.decide(bare));
    if (decided == Lengths.Bare.CANNOT_TELL) {
      throw new ListRefusedException(
          where(table, Field.LENGTH)
              + ": lengths such as "
              + bare.get(0).stripTrailingZeros().toPlainString()
              + " may be millimetres, centimetres or inches. Say which with --length-unit mm,"
              + " --length-unit cm or --length-unit in.");
    }
    table.assume(
        switch (decided) {
          case MM, CANNOT_TELL -> "Lengths without a unit were read as millimetres.";
          case CM -> "Lengths without a unit were read as centimetres.";
          case INCHES -> "Lengths without a unit were read as inches.";
          case EACH_BY_SIZE ->
              "Lengths without a unit were read as inches up to 12 and as millimetres from 25 on.";
        });
    return decided;
  }

  /** The place of a column, in words. */
  static String where(Table table, Field field) {
    return table.sheet().source()
        + ", column "
        + Address.columnLetters(table.guess().columns().getOrDefault(field, 0));
  }

  private static Optional<Dates.Order> dateOrder(
      Table table, ImportOptions options, LocalDate today) {
    if (options.dayFirst().isPresent()) {
      return options.dayFirst().map(d -> d ? Dates.Order.DAY_FIRST : Dates.Order.MONTH_FIRST);
    }
    List<Dates.Written> dates = new ArrayList<>();
    Optional<String> doubtful = Optional.empty();
    for (Cell cell : distinct(table, Field.DATE)) {
      if (cell instanceof Cell.Text text) {
        Told<Dates.Written> told = Dates.parse(text.text(), today, table.year());
        if (told.value().isPresent()) {
          dates.add(told.value().get());
          if (doubtful.isEmpty() && told.value().get().certain().isEmpty()) {
            doubtful = Optional.of(text.text().strip());
          }
        }
      }
    }
    Optional<Dates.Order> order = Dates.decide(dates);
    if (doubtful.isPresent() && order.isEmpty()) {
      throw new ListRefusedException(
          where(table, Field.DATE)
              + ": dates such as "
              + doubtful.get()
              + " may be read day first or month first. Say which with --date-order day or"
              + " --date-order month.");
    }
    order
        .filter(o -> dates.stream().anyMatch(d -> d.certain().isEmpty()))
        .ifPresent(
            o ->
                table.assume(
                    "Dates were read "
                        + (o == Dates.Order.DAY_FIRST ? "day" : "month")
                        + " first, as other dates of the column must be."));
    return order;
  }

  /** What bare times of the column are, noted in the table where the header does not say. */
  static Durations.Bare bareTime(Table table) {
    Field field = table.kind() == ListKind.PLAN ? Field.HOURS : Field.MINUTES;
    Optional<ColumnHeader> header = table.header(field);
    if (header.isEmpty() || header.get().saysMinutes()) {
      return Durations.Bare.MINUTES;
    }
    List<BigDecimal> bare = bareNumbers(table, field);
    if (areHoursPointMinutes(bare)) {
      table.assumeOnce("Times such as 1.30 were read as 1 hour and 30 minutes.");
      return Durations.Bare.HOURS_POINT_MINUTES;
    }
    if (header.get().saysHours() || field == Field.HOURS) {
      return Durations.Bare.HOURS;
    }
    // Nobody fishes a stint of 1.5 minutes, nor one of 13 hours (an assumption, and it is said).
    boolean hours =
        bare.stream().anyMatch(n -> !Numbers.isWhole(n))
            && bare.stream().allMatch(n -> n.compareTo(BigDecimal.valueOf(12)) <= 0);
    if (!bare.isEmpty()) {
      table.assumeOnce("Times without a unit were read as " + (hours ? "hours." : "minutes."));
    }
    return hours ? Durations.Bare.HOURS : Durations.Bare.MINUTES;
  }

  private static List<BigDecimal> bareNumbers(Table table, Field field) {
    List<BigDecimal> bare = new ArrayList<>();
    for (Cell cell : distinct(table, field)) {
      if (cell instanceof Cell.Numeric number) {
        bare.add(BigDecimal.valueOf(number.value()));
      } else if (cell instanceof Cell.Text text) {
        Numbers.parse(Numbers.plain(text.text()).toLowerCase(Locale.ROOT)).ifPresent(bare::add);
      }
    }
    return bare;
  }

  /**
   * Whether what stands behind the point is minutes: quarters and halves of an hour as minutes, and
   * none as a fraction (an assumption: nobody writes 1.3 hours and never 1.5).
   */
  private static boolean areHoursPointMinutes(List<BigDecimal> bare) {
    List<BigDecimal> broken = bare.stream().filter(n -> !Numbers.isWhole(n)).toList();
    return !broken.isEmpty()
        && broken.stream()
            .map(n -> n.remainder(BigDecimal.ONE).stripTrailingZeros())
            .allMatch(QUARTERS::contains)
        && bare.stream().allMatch(n -> n.compareTo(BigDecimal.valueOf(12)) <= 0);
  }
}
