package traytally.intake;

import java.util.List;
import java.util.Optional;
import traytally.intake.Problem.Severity;
import traytally.ledger.Entry;

/**
 * What an import comes to.
 *
 * @param readings one per table, in the order of files and sheets
 * @param problems in the order of files, sheets and rows
 * @param entry what is to be recorded; empty if nothing changes
 * @param notices what the person should know of the whole, in sentences
 */
public record Imported(
    List<SheetReading> readings, List<Problem> problems, Entry entry, List<String> notices) {
  public Imported {
    readings = List.copyOf(readings);
    problems = List.copyOf(problems);
    notices = List.copyOf(notices);
  }

  public int rowsRead() {
    return readings.stream().mapToInt(SheetReading::rowsRead).sum();
  }

  public int rowsTaken() {
    return readings.stream().mapToInt(SheetReading::rowsTaken).sum();
  }

  public int rowsSkipped() {
    return readings.stream().mapToInt(SheetReading::rowsSkipped).sum();
  }

  /** Whether a row could not be taken. */
  public boolean hasProblems() {
    return problems.stream().anyMatch(p -> p.severity() == Severity.PROBLEM);
  }

  /** The kind of all that was read; empty if there was more than one. */
  public Optional<ListKind> kind() {
    List<ListKind> kinds = readings.stream().flatMap(r -> r.kind().stream()).distinct().toList();
    return kinds.size() == 1 ? Optional.of(kinds.get(0)) : Optional.empty();
  }
}
