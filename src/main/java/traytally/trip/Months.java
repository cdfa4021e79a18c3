package traytally.trip;

import java.time.LocalDate;
import java.time.Month;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Some months of the year, at least one. */
public record Months(Set<Month> months) {
  private static final Pattern RUN =
      Pattern.compile("(\\d{1,2}|[a-z]{3,9})(?:\\s*-\\s*(\\d{1,2}|[a-z]{3,9}))?");

  public Months {
    if (months.isEmpty()) {
      throw new IllegalArgumentException("no month");
    }
    months = Set.copyOf(months);
  }

  /**
   * The months that {@code text} names: numbers or names, runs with a hyphen, several with commas
   * or spaces between; a run may pass the new year: {@code 2-4}, {@code feb-apr, 11-1}.
   */
  public static Optional<Months> parse(String text) {
    Set<Month> months = EnumSet.noneOf(Month.class);
    String tidy = text.strip().toLowerCase(Locale.ROOT).replaceAll("\\s*-\\s*", "-");
    for (String part : tidy.split("[\\s,]+", -1)) {
      Matcher run = RUN.matcher(part);
      Optional<Month> first = run.matches() ? month(run.group(1)) : Optional.empty();
      Optional<Month> last = first.isEmpty() || run.group(2) == null ? first : month(run.group(2));
      if (last.isEmpty()) {
        return Optional.empty();
      }
      Month month = first.orElseThrow();
      months.add(month);
      while (month != last.get()) {
        month = month.plus(1);
        months.add(month);
      }
    }
    return Optional.of(new Months(months));
  }

  private static Optional<Month> month(String word) {
    for (Month month : Month.values()) {
      boolean named =
          word.length() >= 3 && english(month).toLowerCase(Locale.ROOT).startsWith(word);
      if (named || word.equals(String.valueOf(month.getValue()))) {
        return Optional.of(month);
      }
    }
    return Optional.empty();
  }

  private static String english(Month month) {
    return month.getDisplayName(TextStyle.FULL, Locale.ENGLISH);
  }

  /** Whether {@code date} falls into one of them. */
  public boolean contain(LocalDate date) {
    return months.contains(date.getMonth());
  }

  /** In words: {@code February to April, November}. */
  public String words() {
    return runs().stream()
        .map(
            run ->
                english(run.get(0))
                    + (run.size() > 1 ? " to " + english(run.get(run.size() - 1)) : ""))
        .collect(Collectors.joining(", "));
  }

  /** In numbers, as {@link #parse} reads them: {@code 2-4,11}. */
  public String text() {
    return runs().stream()
        .map(
            run ->
                run.get(0).getValue()
                    + (run.size() > 1 ? "-" + run.get(run.size() - 1).getValue() : ""))
        .collect(Collectors.joining(","));
  }

  /**
   * Months one after the other, in the order in which they begin; one run may pass the new year.
   */
  private List<List<Month>> runs() {
    List<List<Month>> runs = new ArrayList<>();
    for (Month month : Month.values()) {
      boolean begins = !months.contains(month.minus(1)) || months.size() == Month.values().length;
      if (months.contains(month) && begins) {
        List<Month> run = new ArrayList<>(List.of(month));
        while (months.contains(month.plus(run.size())) && run.size() < months.size()) {
          run.add(month.plus(run.size()));
        }
        runs.add(run);
        if (run.size() == Month.values().length) {
          break;
        }
      }
    }
    return runs;
  }
}
