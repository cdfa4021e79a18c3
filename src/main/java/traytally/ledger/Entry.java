package traytally.ledger;

import java.util.List;
import java.util.OptionalLong;

/**
 * What one command is about to record, all or nothing.
 *
 * @param command the command's name
 * @param summary in words, for {@code ledger} and {@code undo}
 * @param undoes the batch it reverses, if it is an undo
 * @param movements in the order they are to stand
 * @param added facts that hold from now on
 * @param withdrawn facts that hold no more
 */
public record Entry(
    String command,
    String summary,
    OptionalLong undoes,
    List<Movement> movements,
    List<Fact> added,
    List<Recorded<? extends Fact>> withdrawn) {
  public Entry {
    movements = List.copyOf(movements);
    added = List.copyOf(added);
    withdrawn = List.copyOf(withdrawn);
  }

  /** One that moves no pieces and undoes nothing. */
  public static Entry ofFacts(
      String command, String summary, List<Fact> added, List<Recorded<? extends Fact>> withdrawn) {
    return new Entry(command, summary, OptionalLong.empty(), List.of(), added, withdrawn);
  }

  /** Whether recording it would change nothing. */
  public boolean isEmpty() {
    return movements.isEmpty() && added.isEmpty() && withdrawn.isEmpty() && undoes.isEmpty();
  }
}
